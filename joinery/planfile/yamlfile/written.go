package yamlfile

import (
	"fencecard/joinery/measure"

	"go.yaml.in/yaml/v4"
)

// Written is a value as it stands in a file: what it says, and which bytes of the
// file it takes. It is one of a text, keys with their values, and a list; a
// fourth is nothing at all, where a key has no value yet.
type Written struct {
	Kind  WrittenKind
	Text  string // of a text what it says, without its quotes
	Pairs []WrittenPair
	Items []WrittenItem

	Flow  bool // keys in braces, a list in brackets
	Quote byte // what a text begins with that is not its own: " or ' or | or >; else 0

	// From and To are the bytes it takes in the file. A block ends with its last
	// value, before any remark or line end behind it.
	From, To int
	Line     int // in which it begins, from 1
	Column   int // where in its line, in characters from 0
}

// WrittenKind tells what a value is.
type WrittenKind int

// The kinds of a value.
const (
	WrittenNothing WrittenKind = iota
	WrittenText
	WrittenKeys
	WrittenList
)

// WrittenPair is a key and its value.
type WrittenPair struct {
	Key, Value *Written
	Colon      int // behind the colon, in bytes; 0 where there is none
}

// WrittenItem is an entry of a list. Dash is where its dash stands, in bytes; in
// brackets it is where the entry begins.
type WrittenItem struct {
	*Written
	Dash int
}

// Pair finds the first pair of that key, or nil.
func (w *Written) Pair(key string) *WrittenPair {
	if w == nil {
		return nil
	}
	for i := range w.Pairs {
		if k := w.Pairs[i].Key; k.Kind == WrittenText && k.Text == key {
			return &w.Pairs[i]
		}
	}
	return nil
}

// Value finds the value of a key, nil where the key was not written.
func (w *Written) Value(key string) *Written {
	if p := w.Pair(key); p != nil {
		return p.Value
	}
	return nil
}

// ReadWritten reads a plan or a shop file as it is laid out, whatever its keys
// mean: it is nil where the file holds nothing but blank lines and remarks. The
// error is [plantext.Faults], where the text is none that a plan can be read from.
func ReadWritten(name string, data []byte) (*Written, error) {
	r := New(name, measure.Inches, measure.InchScale)
	root := r.document(data, "the plan")
	if root != nil {
		r.Mapping(root, "this is no plan", "begin with unit: in, then pieces: and below it - piece: NAME; "+BeginPlan)
	}
	if err := r.Err(); err != nil || root == nil {
		return nil, err
	}
	s := newSurveyor(data)
	return s.value(root), nil
}

// written makes a value of a node that was surveyed.
func written(n *yaml.Node) *Written {
	w := &Written{Line: n.Line, Column: n.Column - 1, Flow: n.Style&yaml.FlowStyle != 0}
	switch n.Kind {
	case yaml.MappingNode:
		w.Kind = WrittenKeys
	case yaml.SequenceNode:
		w.Kind = WrittenList
	default:
		w.Kind, w.Text = WrittenText, n.Value
		if Null(n) {
			w.Kind = WrittenNothing
		}
	}
	return w
}
