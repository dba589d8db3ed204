package joinery

import "fencecard/joinery/measure"

// Section is what a channel looks like across its run: a rectangle, the zero
// value, or an edge shaped by a bit with an outline. An outline is one and the
// same for a shop's bit and all that it shapes.
type Section struct {
	Outline *Outline       // nil: a rectangle
	Forward measure.Length // how far the fence stands forward of the pilot
}

// Shaped reports whether the section is that of a shaped edge.
func (s Section) Shaped() bool { return s.Outline != nil }

// Reach is how far in mm the cut reaches over the face that lies on the table,
// from the fence face, with the bit raised so far. It is nothing where the bit
// does not come out of the fence.
func (s Section) Reach(raise measure.Length) float64 { return s.ReachAt(raise, 0) }

// ReachAt is the reach in mm at a height in mm above the table.
func (s Section) ReachAt(raise measure.Length, z float64) float64 {
	return max(0, s.Outline.ReachAt(raise.Millimetres()-z)-s.Forward.Millimetres())
}

// Widest is the greatest reach in mm at any height.
func (s Section) Widest(raise measure.Length) float64 {
	widest := s.Reach(raise)
	for _, c := range s.Outline.Corners {
		if c.Below <= raise {
			widest = max(widest, (c.Reach - s.Forward).Millimetres())
		}
	}
	return widest
}

// Area is the wood in mm2 that is gone across the run with the bit raised so far.
func (s Section) Area(raise measure.Length) float64 {
	return s.Outline.area(raise.Millimetres(), s.Forward.Millimetres())
}
