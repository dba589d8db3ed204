package yamlfile

import (
	"errors"
	"strings"

	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
	"go.yaml.in/yaml/v4/plugin/loaderlimits"
)

// depthLimit is far above the four levels of a plan and far below the
// library's own, so that a file of brackets is refused at once.
var depthLimit = loaderlimits.New(loaderlimits.DepthValue(50))

// Tree parses the file and returns its outermost node, or nil with a fault.
func (r *File) Tree(data []byte, what, begin string) *yaml.Node {
	before := len(r.Faults)
	root := r.document(data, what)
	if root == nil && len(r.Faults) == before {
		r.Add(plantext.Fault{Place: plantext.Place{File: r.Name}, Problem: what + " is empty", Remedy: begin})
	}
	return root
}

// document parses the file and returns its outermost node: nil with a fault, or
// where nothing is written in it.
func (r *File) document(data []byte, what string) *yaml.Node {
	if !r.clean(data, what) {
		return nil
	}
	var document yaml.Node
	err := yaml.Load([]byte(r.Text.String()), &document, yaml.WithPlugin(depthLimit))
	var load *yaml.LoadError
	switch {
	case errors.As(err, &load) && strings.Contains(load.Message, "no documents"):
	case load != nil:
		r.Add(r.syntax(load))
		return nil
	case err != nil:
		r.Add(plantext.Fault{Place: plantext.Place{File: r.Name}, Problem: "the file cannot be read: " + err.Error()})
		return nil
	}
	if len(document.Content) == 0 || Null(document.Content[0]) {
		return nil
	}
	root := document.Content[0]
	r.refuse(root)
	return root
}

// Null reports whether nothing was written for a value.
func Null(n *yaml.Node) bool {
	return n != nil && n.Kind == yaml.ScalarNode && n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) == 0 && n.Value == ""
}

// refuse faults the parts of YAML that a plan does without, once for the whole
// tree.
func (r *File) refuse(n *yaml.Node) {
	switch {
	case r.Full:
		return
	case n.Kind == yaml.AliasNode:
		r.Fault(n, "write the value out here; if it is a name that begins with *, put quotes round it", "*%s is taken from elsewhere in the file, which a plan does not do", n.Value)
	case n.Anchor != "":
		r.Fault(n, "take it out; if it is a name that begins with &, put quotes round it", "&%s gives the value a name for use elsewhere, which a plan does not do", n.Anchor)
	case n.Style&yaml.TaggedStyle != 0 || n.Tag == "!":
		r.Fault(n, "take it out; if it is a name that begins with !, put quotes round it", "%s gives a value a type, which a plan does not have", n.Tag)
	case n.Tag == "!!merge":
		r.Fault(n, "write the keys out here", "<< copies keys from elsewhere in the file, which a plan does not do")
	}
	for _, inner := range n.Content {
		r.refuse(inner)
	}
}
