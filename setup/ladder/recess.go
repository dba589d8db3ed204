package ladder

import (
	"fencecard/joinery/measure"
)

// past returns the rungs from one height up to the depth of the first of some
// demands, sorted by depth, where wood that begins on the way, above a recess, may
// take less at one pass than wood below.
func past(from measure.Length, byDepth []Demand, scale measure.Scale) []measure.Length {
	to := byDepth[0].Depth
	return fewest(from, to, scale, func(from, division measure.Length) measure.Length {
		next := to
		for _, d := range byDepth {
			next = min(next, max(from, d.From)+d.Cap)
		}
		if next < to {
			next = next / division * division
		}
		return next
	})
}
