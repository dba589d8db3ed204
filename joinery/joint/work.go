package joint

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// work is one joint while its cuts are worked out.
type work struct {
	Meeting
	Words
	kind    *Kind
	scale   measure.Scale
	climate timber.Climate
	lies    [3]lie
	halves  Halves
	faults  []Fault
}

// fault adds a fault at the first of the words that was written.
func (w *work) fault(remedy string, words []string, problem string, args ...any) {
	w.faults = append(w.faults, Fault{Words: words, Problem: fmt.Sprintf(problem, args...), Remedy: remedy})
}

// text is a length with its unit, for messages.
func (w *work) text(l measure.Length) string { return w.scale.Say(l) }

// across lists the two dimensions across the joint.
func across(m Meeting) []joinery.Dimension {
	var two []joinery.Dimension
	for _, d := range joinery.Dimensions {
		if d != m.Side.Dimension() {
			two = append(two, d)
		}
	}
	return two
}

// stretch is a part of the receiving piece in one dimension, from its low side.
type stretch struct{ lo, hi measure.Length }

func (s stretch) long() measure.Length { return s.hi - s.lo }

// stretch is where a part of the entering piece comes to lie, which stands back
// so far from its two sides.
func (w *work) stretch(d joinery.Dimension, low, high measure.Length) stretch {
	at := w.lies[d].at
	return stretch{at + low, at + w.Part.Size[d] - high}
}

// within faults a stretch that does not lie inside the receiving piece.
func (w *work) within(d joinery.Dimension, s stretch, what string) bool {
	side, out := d.Low(), -s.lo
	if over := s.hi - w.Into.Size[d]; over > out {
		side, out = d.High(), over
	}
	if out <= 0 {
		return true
	}
	w.fault(fmt.Sprintf("move %q %s by %s or more", w.Part.Name, Inward(side), w.text(out)),
		[]string{"place " + side.String(), "place " + side.Opposite().String(), "place"},
		"the %s would lie %s outside the %s of %q", what, w.text(out), side, w.Into.Name)
	return false
}

// setback puts the near wall of a channel at a stretch, measured from the side
// that place names; where it names none, either side may go to the fence.
func (w *work) setback(c *joinery.Cut, d joinery.Dimension, s stretch) {
	c.Width = s.long()
	c.Start.From = w.lies[d].from
	if c.Start.From == joinery.NoSide {
		c.Start.From, c.Fence.Either = d.Low(), true
	}
	c.Start.Distance = s.lo
	if c.Start.From.High() {
		c.Start.Distance = w.Into.Size[d] - s.hi
	}
}

// span says where a channel runs, measured from a side; from end to end is not
// said.
func (w *work) span(c *joinery.Cut, d joinery.Dimension, s stretch, from joinery.Side) {
	size := w.Into.Size[d]
	s = stretch{max(0, s.lo), min(size, s.hi)}
	if s.lo == 0 && s.hi == size {
		return
	}
	if from == joinery.NoSide {
		from = d.Low()
		if d == joinery.TopBottom {
			from = joinery.Top
		}
	}
	c.Span = joinery.Span{From: s.lo, To: s.hi, Side: from}
	if from.High() {
		c.Span.From, c.Span.To = size-s.hi, size-s.lo
	}
}

// into and part add a cut to a half.
func (w *work) into(c joinery.Cut) { w.halves.Into = append(w.halves.Into, c) }
func (w *work) part(c joinery.Cut) { w.halves.Part = append(w.halves.Part, c) }

// trench is a groove where the channel runs with the grain of the piece, else a
// dado.
func trench(p *joinery.Piece, run joinery.Dimension) *joinery.Kind {
	if p.Grain == run {
		return &joinery.Groove
	}
	return &joinery.Dado
}
