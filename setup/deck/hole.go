package deck

import (
	"fencecard/joinery/measure"
)

// Hole is a start hole, as wide as the bit and as deep as the cut, by its centre
// from two sides of the work. With it nothing is pivoted: the work is lowered
// straight down over the bit.
type Hole struct {
	FromLead, FromFence measure.Length
}
