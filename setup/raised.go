package setup

import (
	"fencecard/joinery"
	"fencecard/setup/deck"
)

// steepest is the tilt in degrees over which work is not pivoted onto the bit
// where the bit can be raised into it (common practice, no source).
const steepest = 15

// raised reports whether the work is clamped and the turning bit raised into it:
// where the shop can do that, and pivoting would tilt the work steeply or bring
// its tail, where a hand would hold it, near the bit.
func raised(r *deck.Run, shop *joinery.Shop) bool {
	if !shop.Raises || r.Begin != deck.Drop || r.Hole != nil {
		return false
	}
	return r.Pivot.Tilt > steepest || r.Start.TailBeforeEdge-r.Step.Bit.True() < shop.Rules.HandDistance
}
