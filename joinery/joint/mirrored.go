package joint

import (
	"slices"

	"fencecard/joinery"
)

// flip turns a side seen in a mirror.
func flip(side joinery.Side, across joinery.Flips) joinery.Side {
	if side != joinery.NoSide && across[side.Dimension()] {
		return side.Opposite()
	}
	return side
}

// Mirrored returns the words as they are in a mirror.
func (w Words) Mirrored(across joinery.Flips) Words {
	w.Haunch.From, w.Tongue.From, w.Glue = flip(w.Haunch.From, across), flip(w.Tongue.From, across), flip(w.Glue, across)
	w.Shoulders, w.Stopped = slices.Clone(w.Shoulders), slices.Clone(w.Stopped)
	for i := range w.Shoulders {
		w.Shoulders[i].Side = flip(w.Shoulders[i].Side, across)
	}
	for i := range w.Stopped {
		w.Stopped[i].From = flip(w.Stopped[i].From, across)
	}
	return w
}

// differ are the dimensions in which two flips differ.
func differ(a, b joinery.Flips) joinery.Flips {
	for d := range a {
		a[d] = a[d] != b[d]
	}
	return a
}

// twins lists the mirrors of a piece that mirrors none itself.
func (w *pairer) twins(of *joinery.Piece) []*joinery.Piece {
	var twins []*joinery.Piece
	for _, p := range w.Pieces {
		if of.MirrorOf == "" && p.MirrorOf == of.Name && p != of {
			twins = append(twins, p)
		}
	}
	return twins
}

// exact adds the meetings in the mirrors of a place where it is sure which piece
// goes in: the entering piece's own mirror, or the same piece with its other end.
func (w *pairer) exact(end, spot int) {
	into := w.Into[spot]
	for _, twin := range w.twins(into.Piece) {
		place := Spot{twin, flip(into.Side, twin.Across)}
		if _, made := w.at[place]; made {
			continue
		}
		part, left := w.nearest(end, twin.Across)
		same := w.past(Meeting{Part: part, Into: twin, Side: place.Side})
		stays := left // less what turns the same piece end for end, or lies further on in it
		if side := w.Ends[end].Side; side != joinery.NoSide {
			stays[side.Dimension()] = false
		}
		counted := false
		for d := range stays {
			if same[d] && stays[d] {
				stays[d], counted = false, true
			}
		}
		if stays != (joinery.Flips{}) {
			continue
		}
		w.add(Met{FromEnd: end, FromSpot: spot, Mirrored: true, Meeting: Meeting{
			Part: part, End: flip(w.Ends[end].Side, twin.Across), Into: twin, Side: place.Side}}, counted)
	}
}

// nearest is the piece of the entering one's family that is mirrored most nearly
// in the way wanted, and what is left to mirror.
func (w *pairer) nearest(end int, wanted joinery.Flips) (*joinery.Piece, joinery.Flips) {
	part, side := w.Ends[end].Piece, w.Ends[end].Side
	family := append([]*joinery.Piece{part}, w.twins(part)...)
	left := func(p *joinery.Piece) joinery.Flips { return differ(wanted, differ(p.Across, part.Across)) }
	off := func(p *joinery.Piece) int {
		n := 0
		for d, by := range left(p) {
			switch {
			case by && side != joinery.NoSide && joinery.Dimension(d) == side.Dimension():
				n++ // the same piece, its other end
			case by:
				n += 10
			}
		}
		return n
	}
	best := slices.MinFunc(family, func(a, b *joinery.Piece) int { return off(a) - off(b) })
	return best, left(best)
}

// mirrors lists the meetings in mirrors of a place that has none yet: a like
// piece enters there.
func (w *pairer) mirrors(m Met) []Met {
	if m.Mirrored || m.Number > 0 {
		return nil
	}
	var all []Met
	for _, twin := range w.twins(m.Into) {
		if _, made := w.at[Spot{twin, flip(m.Side, twin.Across)}]; made {
			continue
		}
		part, left := w.nearest(m.FromEnd, twin.Across)
		all = append(all, Met{FromEnd: m.FromEnd, FromSpot: m.FromSpot, Mirrored: true, Like: true, Flips: left, Meeting: Meeting{
			Part: part, End: flip(m.End, twin.Across), Into: twin, Side: flip(m.Side, twin.Across)}})
	}
	return all
}

// turn adds a like piece. An end that has no half is the other end of a piece
// that was turned about.
func (w *pairer) turn(m Met) {
	if _, made := w.at[Spot{m.Into, m.Side}]; made {
		return
	}
	odd := false
	for _, by := range m.Flips {
		odd = odd != by
	}
	if !odd {
		m.Flips = joinery.Flips{} // mirrored twice is turned about
	}
	end := m.End
	if end != joinery.NoSide && w.used[Spot{m.Part, end}] == 0 && w.used[Spot{m.Part, end.Opposite()}] > 0 {
		m.End = end.Opposite()
	}
	w.add(m, false)
}
