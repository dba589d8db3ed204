package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
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
	if b == nil || valueOf(b.f.node, "cuts") == nil {
		return joint.Raised{}
	}
	for _, n := range valueOf(b.f.node, "cuts").Content {
		name, in, leaves := valueOf(n, joinery.RaisedPanel.Name), valueOf(n, "in"), valueOf(n, "leaves")
		if name == nil || in == nil || leaves == nil {
			continue
		}
		side, ok := joinery.ParseSide(strings.ToLower(in.Value))
		thick, err := joinery.ParseLength(leaves.Value, r.unit)
		if !ok || err != nil || thick <= 0 || thick >= b.Size.Between(side) {
			continue
		}
		edges := joint.Raised{Leaves: joint.Line{Distance: thick, From: flipped(side.Opposite(), across)}}
		if bit := valueOf(n, "bit"); bit != nil {
			if known := r.plan.Shop.Bit(oneLine(bit.Value)); known != nil && known.Outline != nil {
				edges.Flat = known.Outline.Flat()
			}
		}
		return edges
	}
	return joint.Raised{}
}
