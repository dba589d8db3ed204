package solid

import (
	"cmp"
	"math"
	"slices"

	"fencecard/joinery"
)

// Removed returns the volume that hollows take out of a blank together, in
// cubic millimetres, room that several of them share counted once. The error
// is under one part in 100,000.
func Removed(hollows []Hollow, size joinery.Size) float64 {
	sum := 0.0
	for _, together := range clusters(hollows, size) {
		sum += removed(together, size)
	}
	return sum
}

// clusters parts hollows into those that may share room.
func clusters(hollows []Hollow, size joinery.Size) [][]Hollow {
	var parts [][]Hollow
	for _, h := range hollows {
		joined := []Hollow{h}
		parts = slices.DeleteFunc(parts, func(part []Hollow) bool {
			meets := slices.ContainsFunc(part, func(other Hollow) bool { return !h.Box(size).And(other.Box(size)).Empty() })
			if meets {
				joined = append(joined, part...)
			}
			return meets
		})
		parts = append(parts, joined)
	}
	return parts
}

// removed sums the length of wood gone along lines parallel to the first
// dimension over the other two, by Gauss's rule between all the places where a
// wall, an end or a round begins.
func removed(hollows []Hollow, size joinery.Size) float64 {
	shapes := make([]carved, 0, len(hollows))
	var z cuts
	whole := toBox(Whole(size))
	for _, h := range hollows {
		shapes = append(shapes, h.carved(size)...)
	}
	for _, s := range shapes {
		z.add(s.steps(2)...)
	}
	return z.integrate(whole[2], func(z float64) float64 {
		var y cuts
		for _, s := range shapes {
			y.add(s.stepsAt(z)...)
		}
		return y.integrate(whole[1], func(y float64) float64 { return gone(shapes, y, z, whole[0]) })
	})
}

// carved is a shape and the dimension the bit enters along.
type carved struct {
	shape
	down joinery.Dimension
}

// steps returns the stretches of one dimension at whose ends the shape
// changes its form.
func (s carved) steps(d joinery.Dimension) []span {
	steps := []span{s.box[d]}
	if i := slices.Index(s.axis[:], d); i >= 0 {
		steps = append(steps, s.core[i])
	}
	return steps
}

// stepsAt does the same for the second dimension, at a place of the third.
func (s carved) stepsAt(z float64) []span {
	steps := s.steps(1)
	if s.down == 0 {
		if chord, ok := s.chord(1, 2, z); ok {
			steps = append(steps, chord)
		}
	}
	return steps
}

// chord returns the stretch of one of the two rounded dimensions that lies in
// the shape at a place of the other.
func (s carved) chord(along, at joinery.Dimension, x float64) (span, bool) {
	if x < s.box[at].lo || x > s.box[at].hi {
		return span{}, false
	}
	i := slices.Index(s.axis[:], along)
	off := x - s.core[1-i].clamp(x)
	inset := s.r - math.Sqrt(math.Max(0, s.r*s.r-off*off))
	return span{s.box[along].lo + inset, s.box[along].hi - inset}, true
}

// line returns the stretch of the first dimension that lies in the shape at a
// place of the other two.
func (s carved) line(y, z float64) (span, bool) {
	switch s.down {
	case 0:
		in, ok := s.chord(1, 2, z)
		return s.box[0], ok && y >= in.lo && y <= in.hi
	case 1:
		in, ok := s.chord(0, 2, z)
		return in, ok && y >= s.box[1].lo && y <= s.box[1].hi
	}
	in, ok := s.chord(0, 1, y)
	return in, ok && z >= s.box[2].lo && z <= s.box[2].hi
}

// gone returns how much of one line parallel to the first dimension is gone.
func gone(shapes []carved, y, z float64, whole span) float64 {
	var lines []span
	for _, s := range shapes {
		if l, ok := s.line(y, z); ok {
			lines = append(lines, span{whole.clamp(l.lo), whole.clamp(l.hi)})
		}
	}
	slices.SortFunc(lines, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	sum, reached := 0.0, whole.lo
	for _, l := range lines {
		if from := math.Max(l.lo, reached); l.hi > from {
			sum += l.hi - from
			reached = l.hi
		}
	}
	return sum
}

// cuts are the places between which a function is smooth.
type cuts []float64

func (c *cuts) add(spans ...span) {
	for _, s := range spans {
		*c = append(*c, s.lo, s.hi)
	}
}

// Gauss's rule of eight points for -1 to 1, the positive half (Abramowitz and
// Stegun, table 25.4; memory, held by the tests to integrate x^14 exactly).
var (
	gaussAt     = [4]float64{0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363}
	gaussWeight = [4]float64{0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763}
)

// integrate sums f over a stretch, piece by piece between the cuts. The sine
// in place of the variable tames the steep beginnings of round ends.
func (c cuts) integrate(whole span, f func(float64) float64) float64 {
	slices.Sort(c)
	if len(c) == 0 {
		return 0
	}
	sum, from := 0.0, whole.clamp(c[0])
	for _, to := range c {
		to = whole.clamp(to)
		if to-from < 1e-9 {
			continue
		}
		sum += smooth(span{from, to}, f)
		from = to
	}
	return sum
}

func smooth(s span, f func(float64) float64) float64 {
	middle, half := (s.lo+s.hi)/2, (s.hi-s.lo)/2
	at := func(t float64) float64 {
		sin, cos := math.Sincos(t * math.Pi / 2)
		return f(middle+half*sin) * cos
	}
	sum := 0.0
	for i, x := range gaussAt {
		sum += gaussWeight[i] * (at(x) + at(-x))
	}
	return sum * half * math.Pi / 2
}
