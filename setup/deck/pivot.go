package deck

import (
	"math"

	"fencecard/joinery"
	"fencecard/joinery/measure"
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
	Early measure.Length
}

// PivotAt returns the pivot of work whose tail lies that far before the bit's
// trailing edge, over a bit of that diameter and height. Early is rounded to a
// thousandth of a millimetre.
func PivotAt(tail, diameter, height measure.Length) Pivot {
	t, h := float64(tail), float64(height)
	p := Pivot{Tilt: 90}
	if u := float64(tail - diameter); u > 0 {
		p.Tilt = math.Atan2(h, u) * 180 / math.Pi
	}
	const grain = measure.Millimetre / 1000
	p.Early = measure.Length(math.Round((math.Hypot(t, h)-t)/float64(grain))) * grain
	return p
}

// Tilts in degrees (common practice and geometry, no source): over Steep a drop
// is hard, over TooSteep it is not done at all.
const (
	Steep    = 15.0
	TooSteep = 30.0
)

// Tail is how much of the work lies before the bit's near edge as it is dropped
// on, under 0 where it does not reach there; 0 where it is fed in.
func (r *Run) Tail() measure.Length {
	if r.Start == nil {
		return 0
	}
	return r.Start.TailBeforeEdge - r.Along()
}

// HardDrop reports whether the work would be tilted far to be pivoted onto the
// bit, or its tail would bring a hand nearer to it than the shop's rule allows.
func (r *Run) HardDrop(rules joinery.Rules) bool {
	return r.Start != nil && (r.Dropping().Tilt > Steep || r.Tail() < rules.HandDistance)
}

// Dropping is what dropping the work takes, worked out from its start mark,
// which it must have: what a deck says of it is rounded.
func (r *Run) Dropping() Pivot {
	return PivotAt(r.Start.TailBeforeEdge, r.Along(), r.Channel.Depth)
}

// Pivots reports whether the work is pivoted onto the bit: dropped on, and
// neither bored first nor clamped over a bit that is raised into it.
func (r *Run) Pivots() bool { return r.Start != nil && r.Hole == nil && !r.Raised }
