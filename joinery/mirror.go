package joinery

import (
	"slices"

	"fencecard/joinery/measure"
)

// Flips tells for each dimension whether something was mirrored across it.
type Flips [3]bool

// Flipped returns the flips with one dimension turned.
func (f Flips) Flipped(d Dimension) Flips {
	f[d] = !f[d]
	return f
}

// Mirrored returns the piece as seen in a mirror across a dimension, under a
// new name, with its cuts laid again. Sizes, woods and cut names stay.
func (p *Piece) Mirrored(name string, across Dimension, s measure.Scale) Piece {
	m := *p
	m.Name, m.MirrorOf, m.Across = name, p.Name, p.Across.Flipped(across)
	m.Called = p.Called.Mirrored(across)
	m.Cuts = slices.Clone(p.Cuts)
	for i := range m.Cuts {
		m.Cuts[i] = p.Cuts[i].Mirrored(across)
		m.Cuts[i].Lay(&m, s)
	}
	return m
}

// Mirrored returns the cut as seen in a mirror, with the same name and not laid
// out anew.
func (c Cut) Mirrored(across Dimension) Cut {
	turn := func(s *Side) {
		if *s != NoSide && s.Dimension() == across {
			*s = s.Opposite()
		}
	}
	c.Mates.Across = c.Mates.Across.Flipped(across)
	c.Cheeks, c.Slot = slices.Clone(c.Cheeks), c.Slot.mirrored(turn)
	c.Moulding = c.Moulding.mirrored(turn)
	for i := range c.Cheeks {
		turn(&c.Cheeks[i].Side)
	}
	slices.SortFunc(c.Cheeks, func(a, b Cheek) int { return int(a.Side) - int(b.Side) })
	for _, s := range []*Side{&c.In, &c.At, &c.Along, &c.Start.From, &c.Span.Side, &c.Fence.Side} {
		turn(s)
	}
	return c
}
