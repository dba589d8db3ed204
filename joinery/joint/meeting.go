package joint

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Meeting is one piece that goes into another.
type Meeting struct {
	Part, Into *joinery.Piece // only their names, sizes, grain and wood count
	End        joinery.Side   // the end or edge of Part that goes in; NoSide for a piece that crosses
	Side       joinery.Side   // the side of Into that it meets
	Place      Place
}

// Place is how the entering piece lies against the other: by like-named sides of
// both, and centred in some dimensions.
type Place struct {
	Sides   []Inset
	Centred [3]bool
}

// Inset is how far a side of the entering piece lies inside the like-named side
// of the other; 0 is flush, and what stands proud is below 0.
type Inset struct {
	Side joinery.Side
	By   measure.Length
}

// Mirrored returns the place as seen in a mirror.
func (p Place) Mirrored(across joinery.Flips) Place {
	sides := make([]Inset, len(p.Sides))
	for i, s := range p.Sides {
		if across[s.Side.Dimension()] {
			s.Side = s.Side.Opposite()
		}
		sides[i] = s
	}
	p.Sides = sides
	return p
}

// Offsets returns, for each dimension that the place speaks of, the distance from the
// low side of the receiving piece to that of the entering one.
func (m Meeting) Offsets() map[joinery.Dimension]measure.Length {
	all := map[joinery.Dimension]measure.Length{}
	for _, d := range joinery.Dimensions {
		if m.Place.Centred[d] {
			all[d] = m.spare(d) / 2
		}
	}
	for _, s := range m.Place.Sides {
		all[s.Side.Dimension()] = m.offset(s)
	}
	return all
}

// settled is the meeting with what goes without saying: an end that lies on the
// other piece ends at its far side.
func (m Meeting) settled(k *Kind) Meeting {
	if !k.Flat || m.End == joinery.NoSide {
		return m
	}
	d := m.End.Dimension()
	said := m.Place.Centred[d]
	for _, s := range m.Place.Sides {
		said = said || s.Side.Dimension() == d
	}
	if !said {
		m.Place.Sides = append(slices.Clone(m.Place.Sides), Inset{Side: m.End})
	}
	return m
}

// spare is how much larger the receiving piece is.
func (m Meeting) spare(d joinery.Dimension) measure.Length { return m.Into.Size[d] - m.Part.Size[d] }

func (m Meeting) offset(s Inset) measure.Length {
	if s.Side.High() {
		return m.spare(s.Side.Dimension()) - s.By
	}
	return s.By
}

// apart is the fault of an end that does not face the side.
func (m Meeting) apart(k *Kind) Fault {
	if k.Flat {
		return Fault{
			Words: []string{"into"},
			Problem: fmt.Sprintf("the %s of %q points into the %s of %q or away from it, and a halving lies on that face",
				m.End, m.Part.Name, m.Side, m.Into.Name),
			Remedy: fmt.Sprintf("name the face it lies on, beside the %s: into: %s / %s", m.End, m.Into.Name, ((m.End.Dimension() + 1) % 3).Low()),
		}
	}
	return Fault{
		Words: []string{"into"},
		Problem: fmt.Sprintf("the %s of %q points to the %s, so it meets the %s of a piece and not its %s",
			m.End, m.Part.Name, m.End, m.End.Opposite(), m.Side),
		Remedy: fmt.Sprintf("write %s / %s, or the other end: %s: %s / %s", m.Into.Name, m.End.Opposite(), k.Half, m.Part.Name, m.Side.Opposite()),
	}
}

// lie is where the entering piece lies in one dimension.
type lie struct {
	at   measure.Length // from the low side of the receiving piece to its own
	from joinery.Side   // the side that was named; NoSide where it is centred, or from both
}

// Inward is the word for the way into a piece from a side.
func Inward(side joinery.Side) string { return inward[side] }

// From says the way into a piece from a side, as behind a distance: "up from the
// bottom".
func From(side joinery.Side) string {
	way := Inward(side)
	if side.Dimension() == joinery.LeftRight {
		way = "in" // "right from the left" is read twice
	}
	return way + " from the " + side.String()
}

var inward = map[joinery.Side]string{
	joinery.Left: "right", joinery.Right: "left", joinery.Front: "back",
	joinery.Back: "forward", joinery.Bottom: "up", joinery.Top: "down",
}

// lie finds where the entering piece lies in each of the dimensions; a place
// speaks of these and of no other.
func (w *work) lie(dimensions []joinery.Dimension) {
	var speaks [3]bool
	for _, d := range dimensions {
		speaks[d] = true
		w.lies[d] = w.lieIn(d)
	}
	for _, s := range w.Place.Sides {
		if d := s.Side.Dimension(); !speaks[d] {
			w.fault("take "+s.Side.String()+" out", []string{"place " + s.Side.String(), "place"},
				"where %q lies %s follows from the joint itself", w.Part.Name, d)
		}
	}
}

func (w *work) lieIn(d joinery.Dimension) lie {
	var found []lie
	if w.Place.Centred[d] {
		found = append(found, lie{at: w.spare(d) / 2})
	}
	for _, s := range w.Place.Sides {
		if s.Side.Dimension() == d {
			found = append(found, lie{w.offset(s), s.Side})
		}
	}
	switch {
	case len(found) == 0:
		low, high := d.Low(), d.High()
		w.fault(fmt.Sprintf("add %s: flush or %s: flush to place, or centred: %s", low, high, d), []string{"place", w.kind.Half},
			"place does not say how %q lies %s", w.Part.Name, d)
		return lie{}
	case len(found) == 1:
		return found[0]
	case found[0].at != found[1].at:
		w.fault("keep one of the two", []string{"place " + found[1].from.String(), "place"},
			"place says %s twice, and the two differ by %s", d, w.text((found[0].at - found[1].at).Abs()))
	}
	return lie{at: found[0].at}
}
