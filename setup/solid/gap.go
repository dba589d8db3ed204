package solid

import (
	"math"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// point is a place in the piece in millimetres, from the low sides.
type point [3]float64

// Contains reports whether a place lies in the hollow, its surface included.
// The place is in millimetres from the left, the front and the bottom; the
// blank's outside is not looked at.
func (h Hollow) Contains(p [3]float64, size joinery.Size) bool {
	const hair = 1e-9 // mm, far below a step of Length
	q := h.shape(size).nearest(p)
	return distance(p, q) <= hair
}

// Between returns the wood left between two cuts, each made in one or more
// runs. The blocks around two runs are never further apart than the runs, so
// most pairs of two cuts of many runs need no closer look.
func Between(a, b []Hollow, size joinery.Size) measure.Length {
	boxes := func(all []Hollow) []floatBox {
		around := make([]floatBox, len(all))
		for i, h := range all {
			around[i] = toBox(h.Box(size))
		}
		return around
	}
	as, bs := boxes(a), boxes(b)
	i, k := nearestBoxes(as, bs)
	if i < 0 {
		return measure.Length(math.MaxInt64)
	}
	least := Gap(a[i], b[k], size)
	for i := range as {
		for k := range bs {
			if least > 0 && measure.FromMillimetres(as[i].gap(&bs[k])) < least {
				least = min(least, Gap(a[i], b[k], size))
			}
		}
	}
	return least
}

// nearestBoxes finds the two that are nearest to each other; -1, -1 where there
// are none.
func nearestBoxes(as, bs []floatBox) (a, b int) {
	a, b = -1, -1
	nearest := math.Inf(1)
	for i := range as {
		for k := range bs {
			if gap := as[i].gap(&bs[k]); gap < nearest {
				nearest, a, b = gap, i, k
			}
		}
	}
	return a, b
}

// gap is the distance between two boxes.
func (b *floatBox) gap(c *floatBox) float64 {
	square := 0.0
	for d := range b {
		if off := max(b[d].lo-c[d].hi, c[d].lo-b[d].hi); off > 0 {
			square += off * off
		}
	}
	return math.Sqrt(square)
}

// Gap returns the wood left between two hollows of a piece, 0 where they meet
// or touch. Round ends count as round.
func Gap(a, b Hollow, size joinery.Size) measure.Length {
	sa, sb := a.clipped(size), b.clipped(size)
	p := sa.box.facing(sb.box)
	last := math.Inf(1)
	// Going to and fro between two convex bodies ends at their nearest points.
	for range 2000 {
		q := sb.nearest(p)
		p = sa.nearest(q)
		d := distance(p, q)
		if last-d < 1e-7 {
			last = d
			break
		}
		last = d
	}
	const touching = 1e-4 // mm; rounded ends are approached, never reached
	if last < touching {
		return 0
	}
	return measure.FromMillimetres(last)
}

// shape is a hollow in millimetres: a box, two opposite sides of which are
// rounded rectangles.
type shape struct {
	box  floatBox // the swept room
	core [2]span  // where the bit's centre goes, along axis[0] and axis[1]
	axis [2]joinery.Dimension
	r    float64
	clip *floatBox // the blank, or nil
}

type span struct{ lo, hi float64 }

func (s span) clamp(x float64) float64 { return math.Min(math.Max(x, s.lo), s.hi) }

type floatBox [3]span

func (b floatBox) nearest(p point) point {
	for i := range p {
		p[i] = b[i].clamp(p[i])
	}
	return p
}

// facing returns a place of a box that is nearest to another one: of all of
// them the middle, where a rounded corner is least in the way.
func (b floatBox) facing(other floatBox) point {
	var p point
	for i := range p {
		p[i] = b[i].clamp((math.Max(b[i].lo, other[i].lo) + math.Min(b[i].hi, other[i].hi)) / 2)
	}
	return p
}

func toSpan(r Range) span { return span{r.Lo.Millimetres(), r.Hi.Millimetres()} }

func toBox(b Box) floatBox { return floatBox{toSpan(b[0]), toSpan(b[1]), toSpan(b[2])} }

func (h Hollow) shape(size joinery.Size) shape {
	s := shape{axis: [2]joinery.Dimension{h.Across, h.Run()}, r: h.Radius.Millimetres()}
	for i, r := range []Range{h.Walls, h.Ends} {
		in := toSpan(r)
		s.box[s.axis[i]] = in
		s.core[i] = span{in.lo + s.r, in.hi - s.r}
	}
	down := h.Down.Dimension()
	s.box[down] = toSpan(h.Box(size)[down])
	return s
}

// clipped is the shape less what sticks out of the blank.
func (h Hollow) clipped(size joinery.Size) shape {
	s := h.shape(size)
	whole := toBox(Whole(size))
	s.clip = &whole
	return s
}

// nearest returns the point of the shape nearest to p.
func (s shape) nearest(p point) point {
	q := s.inRounded(p)
	if s.clip == nil || s.clip.nearest(q) == q {
		return q
	}
	return s.inBoth(p)
}

// inRounded projects p onto the swept room.
func (s shape) inRounded(p point) point {
	q := s.box.nearest(p)
	u, v := s.axis[0], s.axis[1]
	cu, cv := s.core[0].clamp(p[u]), s.core[1].clamp(p[v])
	du, dv := p[u]-cu, p[v]-cv
	if off := math.Hypot(du, dv); off > s.r {
		q[u], q[v] = cu+du*s.r/off, cv+dv*s.r/off
	} else {
		q[u], q[v] = p[u], p[v]
	}
	return q
}

// inBoth projects p onto the part of the swept room inside the blank, by
// Dykstra's alternating projections.
func (s shape) inBoth(p point) point {
	var fromRoom, fromBlank point
	x := p
	for range 200 {
		y := s.inRounded(plus(x, fromRoom, 1))
		fromRoom = plus(plus(x, fromRoom, 1), y, -1)
		z := s.clip.nearest(plus(y, fromBlank, 1))
		fromBlank = plus(plus(y, fromBlank, 1), z, -1)
		if distance(z, x) < 1e-9 && distance(z, y) < 1e-7 {
			return z
		}
		x = z
	}
	return x
}

func plus(a, b point, times float64) point {
	for i := range a {
		a[i] += times * b[i]
	}
	return a
}

func distance(a, b point) float64 {
	d := plus(a, b, -1)
	return math.Sqrt(d[0]*d[0] + d[1]*d[1] + d[2]*d[2])
}
