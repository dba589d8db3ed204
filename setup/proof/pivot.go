package proof

import (
	"math"

	"fencecard/joinery/measure"
)

// steepest is the furthest that work is tilted to be lowered onto a bit (common
// practice and geometry, no source).
const steepest = math.Pi / 6

// pivot checks what a drop says it takes, by turning the work back: tilted so
// far, its underside just clears the bit's near edge, and the bit's far corner
// is as far from the tail as the mouth of the cut.
func (p *prover) pivot(at int, t table, w *wanted) {
	c := t.claim
	if c.Start != nil && !w.cut.Bored && !p.plan.Shop.Raises {
		clear := (c.Start.TailBeforeEdge - t.along).Millimetres()
		if w.channel.Depth.Millimetres() > clear*math.Tan(steepest)+1e-6 {
			p.wrongRun(at, "begin", 0, "the work would be tilted by more than 30 degrees to be lowered onto the bit")
		}
	}
	switch {
	case !c.says(NoPivot):
		return
	case c.Pivot == nil && c.Start != nil:
		p.wrongRun(at, "pivot", 0, "the work is dropped on, but the run does not say how far it is tilted")
		return
	case c.Pivot == nil || c.Start == nil:
		if c.Pivot != nil {
			p.wrongRun(at, "pivot", 0, "the work is fed in, but the run says how far it is tilted")
		}
		return
	}
	tail, bit, high := c.Start.TailBeforeEdge.Millimetres(), t.along.Millimetres(), w.channel.Depth.Millimetres()
	const tenth = 0.05 + 1e-9 // an angle is written in tenths of a degree
	angle := c.Pivot.Tilt * math.Pi / 180
	slack := tenth * math.Pi / 180 * math.Hypot(tail-bit, high)
	off := (tail-bit)*math.Sin(angle) - high*math.Cos(angle)
	if tail <= bit {
		off = c.Pivot.Tilt - 90
	}
	if math.Abs(off) > slack {
		p.wrongRun(at, "pivot", 0, "tilted by %.1f degrees the work would not just clear the bit", c.Pivot.Tilt)
	}
	mouth := tail + c.Pivot.Early.Millimetres()
	if early := measure.FromMillimetres(math.Sqrt(tail*tail+high*high) - mouth); early.Abs() > hair {
		p.wrongRun(at, "pivot", early, "the mouth of the cut begins %s elsewhere than the run says", p.text(early.Abs()))
	}
}
