package deck

import (
	"math"

	"fencecard/joinery"
)

// Pivot is what it takes to drop the work by pivoting it on its tail, the lower
// corner against a stop.
type Pivot struct {
	// Tilt is the angle in degrees at which the work clears the bit: atan(h/u),
	// h the bit's height and u the tail before its near edge; 90 where the tail
	// does not reach before the bit.
	Tilt float64
	// Early is how far beyond its line the mouth of the cut begins, toward the
	// leading end: sqrt(t^2 + h^2) - t, t the tail before the bit's far edge.
	Early joinery.Length
}

// PivotAt returns the pivot of work whose tail lies that far before the bit's
// trailing edge, over a bit of that diameter and height. Early is rounded to a
// thousandth of a millimetre.
func PivotAt(tail, diameter, height joinery.Length) Pivot {
	t, h := float64(tail), float64(height)
	p := Pivot{Tilt: 90}
	if u := float64(tail - diameter); u > 0 {
		p.Tilt = math.Atan2(h, u) * 180 / math.Pi
	}
	const grain = joinery.Millimetre / 1000
	p.Early = joinery.Length(math.Round((math.Hypot(t, h)-t)/float64(grain))) * grain
	return p
}
