package deck

import (
	"math"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// SectionAt is the section of a shaped edge as one step of its way leaves it: with
// a hollow in its outline the fence stands farther forward at all but the last. A
// rectangle's has no outline.
func SectionAt(step Step, ch joinery.Channel) joinery.Section {
	s := ch.Section
	if s.Shaped() {
		s.Forward = -step.NearEdge - (step.Bit.Pilot+step.Bit.Diameter)/2
	}
	return s
}

// Areas are the wood in mm2 that each pass of a shaped edge takes, at the heights
// of the run; none for a rectangle.
func (r *Run) Areas() []float64 {
	s := SectionAt(r.Step, r.Channel)
	if !s.Shaped() {
		return nil
	}
	before := 0.0
	if s.Outline.Undercut() && r.Step.Position > 1 {
		earlier := r.Step
		earlier.NearEdge = r.Step.Before
		before = SectionAt(earlier, r.Channel).Area(r.Channel.Depth)
	}
	areas := make([]float64, len(r.Heights))
	for i, h := range r.Heights {
		gone := s.Area(h)
		areas[i], before = gone-before, gone
	}
	return areas
}

// Along is how wide a step's bit is along the fence, where it cuts: its diameter, or
// of a shaped edge the chord of its circle at the fence face.
func Along(step Step, ch joinery.Channel) measure.Length {
	s := SectionAt(step, ch)
	if !s.Shaped() {
		return step.Bit.True()
	}
	centre := (step.NearEdge + step.Bit.True()/2).Millimetres()
	wide := s.Widest(ch.Depth) // from the fence; the radius is that less the centre
	return measure.FromMillimetres(2 * math.Sqrt(max(0, wide*(wide-2*centre))))
}

// Along is how wide the run's bit is along the fence, where it cuts.
func (r *Run) Along() measure.Length { return Along(r.Step, r.Channel) }

// Fades reports whether a shaped edge begins or ends short of an end of the work:
// there the bit leaves it step by step, as a circle does, and it is whole only half
// the chord further in.
func (r *Run) Fades() bool {
	return r.Channel.Section.Shaped() && (r.Start != nil || r.Stop != nil)
}
