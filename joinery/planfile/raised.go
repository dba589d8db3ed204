package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile/yamlfile"
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
		thick, err := joinery.ParseLength(leaves.Value, r.Unit)
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
