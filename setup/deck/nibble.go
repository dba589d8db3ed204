package deck

import (
	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
)

// Nibble is how the waste of a cut across an end is taken that is longer than
// the bit is wide: the fence stands once, at the shoulder, and at every height
// the work goes over the bit several times, first with its end drawn away from
// the fence, then nearer by less than the bit's width at a time, last with its
// end at the fence.
type Nibble struct {
	Passes   int            // sideways, at every height; 2 or more
	DrawBack measure.Length // how far the end is drawn away at first: to the near edge of the bit
}

// Nearer is how much nearer to the fence a nibbled end is brought from pass to
// pass: even moves that the scale shows, of which the last is what is left. It is 0
// where the second pass is at the fence.
func (r *Run) Nearer(scale measure.Scale) measure.Length {
	if r.Sideways() < 3 {
		return 0
	}
	return ladder.Moves(r.Nibble.DrawBack, measure.Length(r.Nibble.Passes-1), r.Step.Bit.True()-scale.Division, scale)
}

// Sideways counts how often the work goes over the bit at every height.
func (r *Run) Sideways() int {
	if r.Nibble == nil {
		return 1
	}
	return r.Nibble.Passes
}

// Passes counts how often one piece goes over the bit, all heights together.
func (r *Run) Passes() int { return len(r.Heights) * r.Sideways() }

// NarrowEnd is the length along the fence under which an end fed across alone
// can turn about the bit; from there on an end that is drawn back bears on a
// strip (common practice, no source).
func NarrowEnd(unit measure.Unit) measure.Length {
	if unit == measure.Millimetres {
		return 150 * measure.Millimetre
	}
	return 6 * measure.Inch
}
