package planfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// wordsFor are the words of a joint at one meeting, with what is left of the
// entering piece where that is a raised panel.
func (r *planReader) wordsFor(m joint.Met, j *jointWish) joint.Words {
	words := m.Words(j.words)
	words.Raised = r.raisedEdges(r.named[m.Part.Name])
	return words
}

// raisedEdges finds the raised edges among the cuts of a piece, which are read
// later than the joints: faults in them are told then.
func (r *planReader) raisedEdges(b *blank) joint.Raised {
	across := joinery.Flips{}
	if b != nil && b.mirrors() {
		across = b.Across
		b = r.named[b.MirrorOf]
	}
	if b == nil || yamlfile.ValueOf(b.f.Node, "cuts") == nil {
		return joint.Raised{}
	}
	for _, n := range yamlfile.ValueOf(b.f.Node, "cuts").Content {
		name, in, leaves := yamlfile.ValueOf(n, joinery.RaisedPanel.Name), yamlfile.ValueOf(n, "in"), yamlfile.ValueOf(n, "leaves")
		if name == nil || in == nil || leaves == nil {
			continue
		}
		side, ok := joinery.ParseSide(strings.ToLower(in.Value))
		thick, err := measure.ParseLength(leaves.Value, r.Unit)
		if !ok || err != nil || thick <= 0 || thick >= b.Size.Between(side) {
			continue
		}
		edges := joint.Raised{Leaves: joint.Line{Distance: thick, From: flipped(side.Opposite(), across)}}
		if bit := yamlfile.ValueOf(n, "bit"); bit != nil {
			if known := r.plan.Shop.Bit(yamlfile.OneLine(bit.Value)); known != nil && known.Outline != nil {
				edges.Flat = known.Outline.Flat()
			}
		}
		return edges
	}
	return joint.Raised{}
}

// checkRaised faults panels whose raised edges do not go into the groove that they
// name, or that names them.
func (r *planReader) checkRaised() {
	for i := range r.plan.Pieces {
		p := &r.plan.Pieces[i]
		for k := range p.Cuts {
			panel := &p.Cuts[k]
			of, groove := r.plan.Mate(panel)
			if groove == nil {
				continue
			}
			name := p.Name
			if groove.Kind.Shapes {
				panel, groove, name, of = groove, panel, of.Name, p
			}
			if !panel.Kind.Shapes || panel.Moulding == nil || !groove.Kind.Receives || panel.Moulding.Leaves <= groove.Width {
				continue
			}
			scale := r.plan.Shop.Scale
			r.Add(plantext.Fault{
				Place: panel.Places.At(panel.Place, "leaves"),
				Problem: fmt.Sprintf("the raised edges of %s are left %s thick, and do not go into the %s %s of %s, which is %s wide",
					yamlfile.Quoted(name), scale.Say(panel.Moulding.Leaves), groove.Kind, yamlfile.Quoted(groove.Name), yamlfile.Quoted(of.Name), scale.Say(groove.Width)),
				Remedy: fmt.Sprintf("write leaves: %s, or width: %s in the groove", scale.Format(groove.Width), scale.Format(panel.Moulding.Leaves)),
			})
		}
	}
}
