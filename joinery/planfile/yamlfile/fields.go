package yamlfile

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// Fields are the keys of one thing in the file: the plan, a piece, a cut, a
// bit. A key that was not written has no entry.
type Fields struct {
	File  *File
	What  string     // the thing in a message: `mortise "seat rail"`
	Node  *yaml.Node // where the thing begins
	known []string
	Kind  string   // a key known besides, the kind of a cut, or ""
	pairs []held   // of keys that are known
	meant []string // keys that unknown ones were taken for
	needs []string // keys that must be there

	outside *yaml.Node // a key whose inner keys stand beside it, or nil

	joint  bool // these are the keys of a joint
	listed bool // a list without brackets was faulted
}

// Example shows a key with a value.
func (f *Fields) Example(key string) string {
	if f.joint {
		return keys.ExampleInJoint(key)
	}
	return keys.ExampleIn(key, f.cut())
}

// cut is the kind of cut that this is; nil of anything else.
func (f *Fields) cut() *joinery.Kind {
	if f.joint || f.Kind == "" {
		return nil
	}
	return joinery.KindNamed(f.Kind)
}

// Mapping faults a node that is not keys and values. The problem and remedy
// are in the words of what should stand there.
func (r *File) Mapping(n *yaml.Node, problem, remedy string) bool {
	if n.Kind == yaml.MappingNode {
		return true
	}
	if n.Kind != yaml.AliasNode {
		r.Fault(n, remedy, "%s", problem)
	}
	return false
}

// Fields reads the keys of a mapping and faults those that are not known or
// are there twice.
func (r *File) Fields(n *yaml.Node, what string, known []string) *Fields {
	return r.FieldsOf(n, what, known, "")
}

// FieldsOf reads the keys of a cut, its kind among them.
func (r *File) FieldsOf(n *yaml.Node, what string, known []string, kind string) *Fields {
	f := &Fields{
		File: r, What: what, Node: n, known: known, Kind: kind,
		pairs: make([]held, 0, len(n.Content)/2),
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
func (f *Fields) notInside(before, key *yaml.Node) bool {
	if f.Knows(key.Value) {
		return false
	}
	if f.outside == nil && slices.Contains(holders, before.Value) && Null(f.Value(before.Value)) {
		f.outside = before
		f.File.Fault(key, fmt.Sprintf("begin it two spaces further in than %s, and so the keys below that belong with it", before.Value),
			"%s stands beside %s, not inside it", Quoted(key.Value), before.Value)
		f.Forget(before.Value) // nothing else is wrong with it
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
func (f *Fields) commaInNumber(key, before, after, value *yaml.Node) bool {
	if !Null(value) || !afterTheComma.MatchString(after.Value) || !wholeNumber.MatchString(before.Value) {
		return false
	}
	f.File.Fault(before, fmt.Sprintf("write %s: %s.%s", Short(key.Value), Short(before.Value), Short(after.Value)), "there is a comma where a point belongs")
	f.Forget(key.Value) // what stands before the comma is not the length
	return true
}

// Knows reports whether the thing has a key of that name.
func (f *Fields) Knows(key string) bool { return key == f.Kind || slices.Contains(f.known, key) }

func (f *Fields) add(key, value *yaml.Node) {
	first := f.Key(key.Value)
	switch {
	case f.File.Full:
	case key.Kind != yaml.ScalarNode:
		f.File.Fault(key, "write a word, a colon and a value", "a list or brace stands where a key belongs")
	case key.Tag == "!!merge": // refused with the tree
	case !f.Knows(key.Value):
		f.unknown(key, value)
	case first != nil:
		f.File.Add(plantext.Fault{
			Place:   f.File.Place(key),
			Problem: fmt.Sprintf("%s has %s twice", f.What, key.Value),
			Remedy:  "keep one of the two",
			Other:   f.File.Place(first),
			Clash:   "the first one",
		})
	default:
		f.pairs = append(f.pairs, held{Pair: Pair{key, value}})
	}
}

// unknown faults a key that the thing does not have.
func (f *Fields) unknown(key, value *yaml.Node) {
	if before, after, ok := strings.Cut(key.Value, ":"); ok && Null(value) {
		f.meant = append(f.meant, before)
		f.File.Fault(key, fmt.Sprintf("write %s: %s", Short(before), Short(after)), "there is no space after the colon")
		return
	}
	if f.joint && Null(value) && f.bracketed(key) || f.secondLine(key, value) {
		return
	}
	why := ""
	remedy := "its keys are " + plantext.List(f.known, "and")
	if kind := f.cut(); kind != nil && kind.Refuses[key.Value].Why != "" {
		refused := kind.Refuses[key.Value]
		why, remedy = ": "+refused.Why, cmp.Or(refused.Instead, "take "+key.Value+" out")
	} else if f.Kind != "" && key.Value == "name" {
		remedy = "its name stands behind its kind: " + f.Kind + ": NAME"
	} else if near := keys.MeantIn(key.Value, f.known, f.cut()); near != "" {
		f.meant = append(f.meant, near)
		remedy = "write " + near
	} else if whose := kindsWith(key.Value); whose != "" && slices.Contains(f.known, "depth") {
		remedy = fmt.Sprintf("that key belongs to a %s; the keys here are %s", whose, plantext.List(f.known, "and"))
	}
	f.File.Fault(key, remedy, "%s has no key %s%s", f.What, Quoted(key.Value), why)
}

// bracketed faults, once, a list of ends or places that stands in braces, where
// each comma begins a new key.
func (f *Fields) bracketed(key *yaml.Node) bool {
	_, side := joinery.ParseSide(key.Value)
	if !side && !strings.Contains(key.Value, "/") {
		return false
	}
	if !f.listed {
		f.listed = true
		f.File.Fault(key, "put brackets round the list, as in into: [front left leg / right, front right leg / left]; or write each word of the joint on a line of its own",
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
	return plantext.List(kinds, "or")
}

// Need faults every key that is missing, in one fault. A key that an unknown
// one was taken for is not missing.
func (f *Fields) Need(keys ...string) {
	f.Must(keys...)
	var missing, examples []string
	for _, key := range keys {
		if f.Lacks(key) {
			missing = append(missing, key)
			examples = append(examples, f.Example(key))
		}
	}
	if missing != nil {
		remedy := "add " + plantext.List(examples, "and")
		if strings.ContainsAny(remedy, "0123456789") {
			remedy += ", with your own figures"
		}
		f.File.Fault(f.Node, remedy, "%s has no %s", f.What, plantext.List(missing, "and no"))
	}
}

// Must tells that keys have to be there; whoever calls it faults one that is not.
func (f *Fields) Must(keys ...string) { f.needs = append(f.needs, keys...) }

// Lacks reports whether a key is missing, and none that was written was taken for
// it.
func (f *Fields) Lacks(key string) bool { return !f.Written(key) && !slices.Contains(f.meant, key) }

// Has reports whether the key was written with a value; one without is
// faulted.
func (f *Fields) Has(key string) bool {
	n := f.Value(key)
	if n == nil || n.Kind == yaml.AliasNode {
		return false
	}
	if Null(n) {
		remedy := "write " + f.Example(key)
		if !slices.Contains(f.needs, key) {
			remedy += ", or take " + key + " out"
		}
		if strings.Contains(f.File.line(f.Key(key).Line), "#") {
			remedy += "; what follows # is a remark unless quotes stand round it"
		}
		f.File.Fault(f.Key(key), remedy, "nothing stands after %s", key)
		return false
	}
	return true
}

// Scalar returns the value's text where the key was written with one text.
func (f *Fields) Scalar(key string) (string, *yaml.Node, bool) {
	if !f.Has(key) {
		return "", nil, false
	}
	n := f.Value(key)
	if n.Kind != yaml.ScalarNode {
		f.File.Fault(n, "write "+f.Example(key), "%s takes one value, not a list or keys", key)
		return "", nil, false
	}
	return strings.TrimSpace(n.Value), n, true
}

// OneOrMore returns the scalars of a value that is one text or a list of
// texts.
func (f *Fields) OneOrMore(key string) []*yaml.Node {
	if !f.Has(key) {
		return nil
	}
	n := f.Value(key)
	if n.Kind == yaml.ScalarNode {
		return []*yaml.Node{n}
	}
	if n.Kind != yaml.SequenceNode {
		f.File.Fault(n, "write "+f.Example(key), "%s has no keys of its own", key)
		return nil
	}
	var all []*yaml.Node
	for _, inner := range n.Content {
		switch inner.Kind {
		case yaml.ScalarNode:
			all = append(all, inner)
		case yaml.AliasNode: // refused with the tree
		default:
			f.File.Fault(inner, "write "+f.Example(key), "%s is one text or a plain list of them", key)
		}
	}
	return all
}

// Entries returns the entries of a list; what is an entry in a message.
func (f *Fields) Entries(key, what, example string) []*yaml.Node {
	if !f.Has(key) {
		return nil
	}
	n := f.Value(key)
	switch {
	case n.Kind != yaml.SequenceNode:
		f.File.Fault(n, "begin each "+what+" with a dash: "+example, "%s is not a list", key)
		return nil
	case len(n.Content) == 0:
		f.File.Fault(n, "write a "+what+": "+example, "the list of %s is empty", key)
	}
	return n.Content
}

// Places tells where each value was written.
func (f *Fields) Places() plantext.Places {
	places := plantext.PlacesIn(f.File.Text, len(f.pairs))
	for _, key := range f.known {
		if p := f.pair(key); p != nil && p.Value != nil {
			places.Add(key, p.Value.Line, p.Value.Column)
		}
	}
	return places
}

// secondLine faults the second distance of a slot's centre in braces, where it is
// taken for a key.
func (f *Fields) secondLine(key, value *yaml.Node) bool {
	if kind := f.cut(); kind == nil || !kind.Screwed || !Null(value) || f.Node.Style&yaml.FlowStyle == 0 || !saysWhere(key.Value) {
		return false
	}
	first := "4 from left"
	if n := f.Value("at"); n != nil && n.Kind == yaml.ScalarNode {
		first = Short(n.Value)
	}
	f.File.Fault(key, fmt.Sprintf("put brackets round the two, at: [%s, %s]", first, Short(key.Value)), "inside braces a comma begins a new key")
	f.Forget("at")
	f.meant = append(f.meant, "at")
	return true
}
