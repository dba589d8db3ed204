package setup

import (
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// screwOf is where the screw of a slot goes at assembly, for the runs that its
// shank passes through.
func screwOf(r *deck.Run, scale measure.Scale) *deck.Screw {
	if r.Cut.Slot == nil || r.Channel.Recess.Depth == 0 {
		return nil
	}
	from, known := r.Cut.Slot.Move.Place(r.Piece.Wood)
	if !known {
		return nil
	}
	return &deck.Screw{FromMiddle: scale.Round(from)}
}
