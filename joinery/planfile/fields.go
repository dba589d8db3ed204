package planfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// fields are the keys of one thing in the file: the plan, a piece, a cut, a
// bit. A key that was not written has no entry.
type fields struct {
	r     *reader
	what  string     // the thing in a message: `mortise "seat rail"`
	node  *yaml.Node // where the thing begins
	known []string
	keys  map[string]*yaml.Node
	value map[string]*yaml.Node
}

// mapping faults a node that is not keys and values.
func (r *reader) mapping(n *yaml.Node, what, example string) bool {
	if n.Kind == yaml.MappingNode {
		return true
	}
	if n.Kind != yaml.AliasNode {
		r.fault(n, "write "+example, "%s needs keys with values", what)
	}
	return false
}

// fields reads the keys of a mapping and faults those that are not known or
// are there twice.
func (r *reader) fields(n *yaml.Node, what string, known []string) *fields {
	f := &fields{r: r, what: what, node: n, known: known, keys: map[string]*yaml.Node{}, value: map[string]*yaml.Node{}}
	for i := 0; i+1 < len(n.Content); i += 2 {
		f.add(n.Content[i], n.Content[i+1])
	}
	return f
}

func (f *fields) add(key, value *yaml.Node) {
	first, again := f.keys[key.Value]
	switch {
	case key.Kind != yaml.ScalarNode:
		f.r.fault(key, "write a word, a colon and a value", "a list or brace stands where a key belongs")
	case key.Tag == "!!merge": // refused with the tree
	case !slices.Contains(f.known, key.Value):
		f.unknown(key, value)
	case again:
		f.r.add(joinery.Fault{
			Place:   f.r.place(key),
			Problem: fmt.Sprintf("%s has %s twice", f.what, key.Value),
			Remedy:  "keep one of the two",
			Other:   f.r.place(first),
			Clash:   "the first one",
		})
	default:
		f.keys[key.Value], f.value[key.Value] = key, value
	}
}

// unknown faults a key that the thing does not have.
func (f *fields) unknown(key, value *yaml.Node) {
	name := short(key.Value)
	remedy := "its keys are " + list(f.known, "and")
	near := meant(key.Value, f.known)
	switch {
	case near != "":
		remedy = "write " + near
	case value.Kind == yaml.ScalarNode && null(value) && strings.Contains(key.Value, ":"):
		before, after, _ := strings.Cut(key.Value, ":")
		f.r.fault(key, fmt.Sprintf("write %s: %s", short(before), short(after)), "there is no space after the colon")
		return
	}
	f.r.fault(key, remedy, "%s has no key %q", f.what, name)
}

// need faults every key that is missing, in one fault.
func (f *fields) need(keys ...string) bool {
	var missing, examples []string
	for _, key := range keys {
		if _, ok := f.keys[key]; !ok {
			missing = append(missing, key)
			examples = append(examples, examplesOf[key])
		}
	}
	if missing == nil {
		return true
	}
	f.r.fault(f.node, "add "+list(examples, "and"), "%s has no %s", f.what, list(missing, "and no"))
	return false
}

// has reports whether the key was written with a value; one without is
// faulted.
func (f *fields) has(key string) bool {
	n, ok := f.value[key]
	if !ok || n.Kind == yaml.AliasNode {
		return false
	}
	if null(n) {
		f.r.fault(f.keys[key], "write "+examplesOf[key]+", or take the key out", "nothing stands after %s", key)
		return false
	}
	return true
}

// scalar returns the value's text where the key was written with one text.
func (f *fields) scalar(key string) (string, *yaml.Node, bool) {
	if !f.has(key) {
		return "", nil, false
	}
	n := f.value[key]
	if n.Kind != yaml.ScalarNode {
		f.r.fault(n, "write "+examplesOf[key], "%s takes one value, not a list or keys", key)
		return "", nil, false
	}
	return strings.TrimSpace(n.Value), n, true
}

// entries returns the entries of a list; what is an entry in a message.
func (f *fields) entries(key, what, example string) []*yaml.Node {
	if !f.has(key) {
		return nil
	}
	n := f.value[key]
	switch {
	case n.Kind != yaml.SequenceNode:
		f.r.fault(n, "begin each "+what+" with a dash: "+example, "%s is not a list", key)
	case len(n.Content) == 0:
		f.r.fault(n, "write a "+what+": "+example, "the list of %s is empty", key)
	}
	if n.Kind != yaml.SequenceNode {
		return nil
	}
	return n.Content
}

// places tells where each value was written.
func (f *fields) places() joinery.Places {
	places := make(joinery.Places, len(f.value))
	for key, n := range f.value {
		places[key] = f.r.place(n)
	}
	return places
}

// list joins words as "a, b and c".
func list(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	end := len(words) - 1
	return strings.Join(words[:end], ", ") + " " + last + " " + words[end]
}

// longestQuote is how much of a maker's text a message repeats, in characters.
const longestQuote = 60

// short cuts a text that is too long for a message.
func short(s string) string {
	if letters := []rune(s); len(letters) > longestQuote {
		return string(letters[:longestQuote]) + "..."
	}
	return s
}

func quoted(s string) string { return strconv.Quote(short(s)) }
