package wording

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Bury says how a fence is set whose bit stands in it; "" where the bit stands off
// the fence. A bit that shapes edges is set by its pilot, not by a near edge that
// nobody can reach. The length is said by the caller's own rule.
func Bury(u *deck.Setup, say func(measure.Length) string) string {
	switch forward, shaped := Forward(u); {
	case u.SetTo().NearEdge >= 0:
		return ""
	case !shaped:
		return "the near edge stands behind the fence's face: bury the bit in the fence"
	case forward == 0:
		return "set it by the pilot, flush with the fence: a straightedge along the fence touches it"
	default:
		return "set it by the pilot: the fence stands " + say(forward) + " forward of it"
	}
}

// Forward is how far the fence stands forward of the pilot of a bit that shapes
// edges, which is then what the fence is set by.
func Forward(u *deck.Setup) (l measure.Length, shaped bool) {
	if u.Bit.Outline == nil {
		return 0, false
	}
	return -u.SetTo().Centre - u.Bit.Pilot/2, true
}

// HeightTo says to what a height is measured, where that is not the top of the bit;
// else it is "".
func HeightTo(u *deck.Setup) string {
	if u.Bit.Pilot == 0 {
		return ""
	}
	return HeightToPilot
}

// HeightToPilot is to what the heights of a bit with a pilot are measured,
// HeightUnder the same where room is short.
const (
	HeightToPilot = "to the pilot's underside"
	HeightUnder   = "under pilot"
)

// PassesTake says how much wood each pass of a shaped edge takes: "passes take
// 0.025, 0.028 sq in".
func PassesTake(areas []float64, scale measure.Scale) string {
	parts := make([]string, len(areas))
	for i, area := range areas {
		parts[i] = scale.SayArea(area)
		if i < len(areas)-1 {
			parts[i] = strings.Fields(parts[i])[0]
		}
	}
	if len(areas) == 1 {
		return "the pass takes " + parts[0]
	}
	return "passes take " + strings.Join(parts, ", ")
}

// Shape names the form of an outline: "a cove of 1/4". The length is said by the
// caller's own rule.
func Shape(o *joinery.Outline, say func(measure.Length) string) string {
	switch o.Shape {
	case joinery.Round:
		return "a round-over of " + say(o.Radius)
	case joinery.Hollowed:
		return "a cove of " + say(o.Radius)
	case joinery.Sloped:
		return "a chamfer of " + say(o.Radius)
	}
	return "as the outline of its bit"
}
