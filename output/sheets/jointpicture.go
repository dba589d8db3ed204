package sheets

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"fencecard/joinery/plantext"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// JointSVG draws a joint by its name, or by that of one of its cuts: both halves
// apart and together. Several that differ stand under each other.
func JointSVG(w io.Writer, d *deck.Deck, name string, o Pages) error {
	s := newSetter(d, o)
	named := strings.ToLower(strings.TrimSpace(name))
	var blocks []paper.Block
	for _, all := range alikeJoints(d.Joints) {
		all = slices.DeleteFunc(all, func(j *deck.Joint) bool { return !isNamed(j, named) })
		if len(all) > 0 {
			blocks = append(blocks, paper.Stack(2, s.jointRows(all, s.Frame.W)...))
		}
	}
	if len(blocks) == 0 {
		return noJoint(d, name)
	}
	return s.writeSVG(w, blocks)
}

// isNamed reports whether a joint goes by a name in small letters. The cuts of
// a joint that is made in several places have its name with the place behind.
func isNamed(j *deck.Joint, name string) bool {
	return slices.ContainsFunc(cutNames(j), func(cut string) bool {
		cut = strings.ToLower(cut)
		return name != "" && (cut == name || strings.HasPrefix(cut, name+" "))
	})
}

// cutNames are the names of a joint's cuts.
func cutNames(j *deck.Joint) []string {
	names := []string{j.Into.Cut.Name}
	if j.Part.Cut != nil {
		names = append(names, j.Part.Cut.Name)
	}
	return names
}

// noJoint is the fault of a name that no joint has.
func noJoint(d *deck.Deck, name string) error {
	var names []string
	for i := range d.Joints {
		for _, cut := range cutNames(&d.Joints[i]) {
			if !slices.Contains(names, cut) {
				names = append(names, cut)
			}
		}
	}
	remedy := "the plan has no joints: write joints, or mates at a cut"
	if near := plantext.Nearest(name, names); near != "" {
		remedy = fmt.Sprintf("did you mean %q?", near)
	} else if n := min(len(names), 12); n > 0 {
		remedy = "it has " + plantext.Brief(strings.Join(names[:n], ", "), 300)
	}
	return plantext.Faults{{Problem: fmt.Sprintf("the plan has no joint %q", plantext.Brief(name, 60)), Remedy: remedy}}
}
