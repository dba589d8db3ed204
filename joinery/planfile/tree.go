package planfile

import (
	"errors"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
	"go.yaml.in/yaml/v4/plugin/loaderlimits"
)

// depthLimit is far above the four levels of a plan and far below the
// library's own, so that a file of brackets is refused at once.
var depthLimit = loaderlimits.New(loaderlimits.DepthValue(50))

// part is a part of the file that is made a tree at once.
type part struct {
	stretch
	entries bool   // of a list; else it is the file
	flow    bool   // of a list in brackets, without these
	what    string // in messages: "this cut"
	list    string // the list in it that may be read by itself, or ""
}

// tree parses the file and returns its outermost node, or nil with a fault.
func (r *reader) tree(data []byte, what, begin string) *yaml.Node {
	if !r.clean(data, what) {
		return nil
	}
	text := r.text.String()
	if word(text, 0) == len(text) {
		r.empty(what, begin)
		return nil
	}
	root := r.load(part{stretch: stretch{0, len(text)}, what: what, list: innerList[""]})
	if root == nil && !r.broken || null(root) {
		r.empty(what, begin)
		return nil
	}
	return root
}

func (r *reader) empty(what, begin string) {
	r.add(joinery.Fault{Place: joinery.Place{File: r.name}, Problem: what + " is empty", Remedy: begin})
}

// null reports whether nothing was written for a value.
func null(n *yaml.Node) bool {
	return n != nil && n.Kind == yaml.ScalarNode && n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) == 0 && n.Value == ""
}

// load parses a part of the file, without the list in it where the part is too
// heavy with it. It returns nil where the part is broken, or nothing but dashes.
// What is YAML but not ours is refused here, once for the whole file.
func (r *reader) load(p part) *yaml.Node {
	text := r.text.String()
	var lists []listing
	weight, passed := weigh(text[p.from:p.to], r.most)
	if weight > r.most && p.list != "" {
		lists = outline(text, p.stretch, p.list)
	}
	written := blanked(text, p.stretch, lists)
	if lists != nil {
		weight, passed = weigh(written, r.most)
	}
	line, column := r.text.Position(p.from)
	if weight > r.most {
		r.tooHeavy(p, further(written[:passed], line, column), lists != nil)
		return nil
	}
	column--
	if p.flow {
		written = "[" + written + "]"
		column--
	}
	var document yaml.Node
	if err := yaml.Load([]byte(written), &document, yaml.WithPlugin(depthLimit)); err != nil {
		r.unreadable(err, line-1, column, p)
		return nil
	}
	if len(document.Content) == 0 {
		return nil
	}
	root := document.Content[0]
	r.settle(root, line-1, column)
	for _, l := range lists {
		r.setAside(root, l)
	}
	return root
}

// settle moves the nodes of a part to where they stand in the file: all down,
// those of its first line to the right. It faults the parts of YAML that a plan
// does without.
func (r *reader) settle(n *yaml.Node, down, right int) {
	if n.Line == 1 {
		n.Column += right
	}
	n.Line += down
	switch {
	case n.Kind == yaml.AliasNode:
		r.fault(n, "write the value out here; if it is a name that begins with *, put quotes round it", "*%s is taken from elsewhere in the file, which a plan does not do", n.Value)
	case n.Anchor != "":
		r.fault(n, "take it out; if it is a name that begins with &, put quotes round it", "&%s gives the value a name for use elsewhere, which a plan does not do", n.Anchor)
	case n.Style&yaml.TaggedStyle != 0 || n.Tag == "!":
		r.fault(n, "take it out; if it is a name that begins with !, put quotes round it", "%s gives a value a type, which a plan does not have", n.Tag)
	case n.Tag == "!!merge":
		r.fault(n, "write the keys out here", "<< copies keys from elsewhere in the file, which a plan does not do")
	}
	for _, inner := range n.Content {
		r.settle(inner, down, right)
	}
}

// unreadable puts the library's error about a part in a maker's words.
func (r *reader) unreadable(err error, down, right int, p part) {
	var load *yaml.LoadError
	if errors.As(err, &load) && strings.Contains(load.Message, "no documents") {
		return
	}
	r.broken = true
	if load == nil {
		r.add(joinery.Fault{Place: joinery.Place{File: r.name}, Problem: "the file cannot be read: " + err.Error()})
		return
	}
	for _, m := range []*yaml.Mark{&load.Mark, &load.ContextMark} {
		if m.Line == 1 {
			m.Column += right
		}
		if m.Line > 0 {
			m.Line += down
		}
	}
	if p.entries && strings.Contains(load.Message, "document start") {
		load.Message = "expected '-'" // the part ends there, but not the list
	}
	r.add(r.syntax(load))
}
