package deck

import "fencecard/joinery"

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
