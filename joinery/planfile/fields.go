package planfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"

	"go.yaml.in/yaml/v4"
)

// fields are the keys of one thing in the file: the plan, a piece, a cut, a
// bit. A key that was not written has no entry.
type fields struct {
	r     *reader
	what  string     // the thing in a message: `mortise "seat rail"`
	node  *yaml.Node // where the thing begins
	known []string
	kind  string   // a key known besides, the kind of a cut, or ""
	pairs []pair   // of keys that are known
	meant []string // keys that unknown ones were taken for
	needs []string // keys that must be there

	outside *yaml.Node // a key whose inner keys stand beside it, or nil

	joint  bool // these are the keys of a joint
	listed bool // a list without brackets was faulted
}

// example shows a key with a value.
func (f *fields) example(key string) string {
	return exampleIn(key, f.joint, f.knows("screw"))
}

// mapping faults a node that is not keys and values. The problem and remedy
// are in the words of what should stand there.
func (r *reader) mapping(n *yaml.Node, problem, remedy string) bool {
	if n.Kind == yaml.MappingNode {
		return true
	}
	if n.Kind != yaml.AliasNode {
		r.fault(n, remedy, "%s", problem)
	}
	return false
}

// fields reads the keys of a mapping and faults those that are not known or
// are there twice.
func (r *reader) fields(n *yaml.Node, what string, known []string) *fields {
	return r.fieldsOf(n, what, known, "")
}

// fieldsOf reads the keys of a cut, its kind among them.
func (r *reader) fieldsOf(n *yaml.Node, what string, known []string, kind string) *fields {
	f := &fields{
		r: r, what: what, node: n, known: known, kind: kind,
		pairs: make([]pair, 0, len(n.Content)/2),
		joint: slices.Contains(known, "into"),
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if i > 0 && (f.commaInNumber(n.Content[i-2], n.Content[i-1], key, value) || f.notInside(n.Content[i-2], key)) {
			continue
		}
		f.add(key, value)
	}
	return f
}

// holders are the keys that have keys inside.
var holders = []string{"mirror", "size", "cheeks", "shop", "fence", "minutes", "climate", "clearances", "rules", "shrinkage", "place", "shoulders", "repeat", "sides", "crossing"}

// notInside faults, once, keys that stand straight below the key they belong
// inside.
func (f *fields) notInside(before, key *yaml.Node) bool {
	if f.knows(key.Value) {
		return false
	}
	if f.outside == nil && slices.Contains(holders, before.Value) && null(f.value(before.Value)) {
		f.outside = before
		f.r.fault(key, fmt.Sprintf("begin it two spaces further in than %s, and so the keys below that belong with it", before.Value),
			"%s stands beside %s, not inside it", quoted(key.Value), before.Value)
		f.forget(before.Value) // nothing else is wrong with it
		return true
	}
	return f.outside != nil && f.outside.Line < key.Line
}

var (
	wholeNumber   = pattern.New(`^\d+$`)
	afterTheComma = pattern.New(`^\d+(?:\s*(?:mm|cm|in|"))?$`)
)

// commaInNumber faults a decimal comma in braces, where {front-back: 1,5} is a
// 1 and a key 5.
func (f *fields) commaInNumber(key, before, after, value *yaml.Node) bool {
	if !null(value) || !afterTheComma.MatchString(after.Value) || !wholeNumber.MatchString(before.Value) {
		return false
	}
	f.r.fault(before, fmt.Sprintf("write %s: %s.%s", short(key.Value), short(before.Value), short(after.Value)), "there is a comma where a point belongs")
	f.forget(key.Value) // what stands before the comma is not the length
	return true
}

// knows reports whether the thing has a key of that name.
func (f *fields) knows(key string) bool { return key == f.kind || slices.Contains(f.known, key) }

func (f *fields) add(key, value *yaml.Node) {
	first := f.key(key.Value)
	switch {
	case f.r.full:
	case key.Kind != yaml.ScalarNode:
		f.r.fault(key, "write a word, a colon and a value", "a list or brace stands where a key belongs")
	case key.Tag == "!!merge": // refused with the tree
	case !f.knows(key.Value):
		f.unknown(key, value)
	case first != nil:
		f.r.add(joinery.Fault{
			Place:   f.r.place(key),
			Problem: fmt.Sprintf("%s has %s twice", f.what, key.Value),
			Remedy:  "keep one of the two",
			Other:   f.r.place(first),
			Clash:   "the first one",
		})
	default:
		f.pairs = append(f.pairs, pair{key, value})
	}
}

// unknown faults a key that the thing does not have.
func (f *fields) unknown(key, value *yaml.Node) {
	if before, after, ok := strings.Cut(key.Value, ":"); ok && null(value) {
		f.meant = append(f.meant, before)
		f.r.fault(key, fmt.Sprintf("write %s: %s", short(before), short(after)), "there is no space after the colon")
		return
	}
	if f.joint && null(value) && f.bracketed(key) || f.secondLine(key, value) {
		return
	}
	remedy := "its keys are " + joinery.List(f.known, "and")
	if f.kind != "" && key.Value == "name" {
		remedy = "its name stands behind its kind: " + f.kind + ": NAME"
	} else if near := meant(key.Value, f.known); near != "" {
		f.meant = append(f.meant, near)
		remedy = "write " + near
	} else if whose := kindsWith(key.Value); whose != "" && slices.Contains(f.known, "depth") {
		remedy = fmt.Sprintf("that key belongs to a %s; the keys here are %s", whose, joinery.List(f.known, "and"))
	}
	f.r.fault(key, remedy, "%s has no key %s", f.what, quoted(key.Value))
}

// bracketed faults, once, a list of ends or places that stands in braces, where
// each comma begins a new key.
func (f *fields) bracketed(key *yaml.Node) bool {
	_, side := joinery.ParseSide(key.Value)
	if !side && !strings.Contains(key.Value, "/") {
		return false
	}
	if !f.listed {
		f.listed = true
		f.r.fault(key, "put brackets round the list, as in into: [front left leg / right, front right leg / left]; or write each word of the joint on a line of its own",
			"inside braces a comma begins a new key")
	}
	return true
}

// kindsWith lists the kinds of cut that take a key.
func kindsWith(key string) string {
	var kinds []string
	for _, k := range joinery.Kinds {
		if slices.Contains(k.Keys(), key) {
			kinds = append(kinds, k.Name)
		}
	}
	return joinery.List(kinds, "or a")
}

// need faults every key that is missing, in one fault. A key that an unknown
// one was taken for is not missing.
func (f *fields) need(keys ...string) {
	f.must(keys...)
	var missing, examples []string
	for _, key := range keys {
		if f.lacks(key) {
			missing = append(missing, key)
			examples = append(examples, f.example(key))
		}
	}
	if missing != nil {
		remedy := "add " + joinery.List(examples, "and")
		if strings.ContainsAny(remedy, "0123456789") {
			remedy += ", with your own figures"
		}
		f.r.fault(f.node, remedy, "%s has no %s", f.what, joinery.List(missing, "and no"))
	}
}

// must tells that keys have to be there; whoever calls it faults one that is not.
func (f *fields) must(keys ...string) { f.needs = append(f.needs, keys...) }

// lacks reports whether a key is missing, and none that was written was taken for
// it.
func (f *fields) lacks(key string) bool { return !f.written(key) && !slices.Contains(f.meant, key) }

// has reports whether the key was written with a value; one without is
// faulted.
func (f *fields) has(key string) bool {
	n := f.value(key)
	if n == nil || n.Kind == yaml.AliasNode {
		return false
	}
	if null(n) {
		remedy := "write " + f.example(key)
		if !slices.Contains(f.needs, key) {
			remedy += ", or take " + key + " out"
		}
		if strings.Contains(f.r.line(f.key(key).Line), "#") {
			remedy += "; what follows # is a remark unless quotes stand round it"
		}
		f.r.fault(f.key(key), remedy, "nothing stands after %s", key)
		return false
	}
	return true
}

// scalar returns the value's text where the key was written with one text.
func (f *fields) scalar(key string) (string, *yaml.Node, bool) {
	if !f.has(key) {
		return "", nil, false
	}
	n := f.value(key)
	if n.Kind != yaml.ScalarNode {
		f.r.fault(n, "write "+f.example(key), "%s takes one value, not a list or keys", key)
		return "", nil, false
	}
	return strings.TrimSpace(n.Value), n, true
}

// oneOrMore returns the scalars of a value that is one text or a list of
// texts.
func (f *fields) oneOrMore(key string) []*yaml.Node {
	if !f.has(key) {
		return nil
	}
	n := f.value(key)
	if n.Kind == yaml.ScalarNode {
		return []*yaml.Node{n}
	}
	if n.Kind != yaml.SequenceNode {
		f.r.fault(n, "write "+f.example(key), "%s takes a name or a list of names", key)
		return nil
	}
	var all []*yaml.Node
	for _, inner := range n.Content {
		switch inner.Kind {
		case yaml.ScalarNode:
			all = append(all, inner)
		case yaml.AliasNode: // refused with the tree
		default:
			f.r.fault(inner, "write "+f.example(key), "%s takes a name or a list of names", key)
		}
	}
	return all
}

// entries returns the entries of a list; what is an entry in a message.
func (f *fields) entries(key, what, example string) []*yaml.Node {
	if !f.has(key) {
		return nil
	}
	n := f.value(key)
	switch {
	case n.Kind != yaml.SequenceNode:
		f.r.fault(n, "begin each "+what+" with a dash: "+example, "%s is not a list", key)
		return nil
	case len(n.Content) == 0:
		f.r.fault(n, "write a "+what+": "+example, "the list of %s is empty", key)
	}
	return n.Content
}

// places tells where each value was written.
func (f *fields) places() joinery.Places {
	places := joinery.PlacesIn(f.r.text, len(f.pairs))
	for _, key := range f.known {
		if n := f.value(key); n != nil {
			places.Add(key, n.Line, n.Column)
		}
	}
	return places
}

// secondLine faults the second distance of a slot's centre in braces, where it is
// taken for a key.
func (f *fields) secondLine(key, value *yaml.Node) bool {
	if !f.knows("screw") || !null(value) || f.node.Style&yaml.FlowStyle == 0 || !saysWhere(key.Value) {
		return false
	}
	first := "4 from left"
	if n := f.value("at"); n != nil && n.Kind == yaml.ScalarNode {
		first = short(n.Value)
	}
	f.r.fault(key, fmt.Sprintf("put brackets round the two, at: [%s, %s]", first, short(key.Value)), "inside braces a comma begins a new key")
	f.forget("at")
	f.meant = append(f.meant, "at")
	return true
}
