package joinery

import "fencecard/joinery/measure"

// Side is one of the six sides of a piece as it stands in the finished work,
// seen from the front. The zero value is no side.
type Side uint8

// The sides. Low and high sides of a dimension are neighbours.
const (
	NoSide Side = iota
	Left        // -X
	Right       // +X
	Front       // -Y
	Back        // +Y
	Bottom      // -Z
	Top         // +Z
)

// Sides lists the six sides.
var Sides = [6]Side{Left, Right, Front, Back, Bottom, Top}

var sideNames = [...]string{"", "left", "right", "front", "back", "bottom", "top"}

// ParseSide returns the side with that lower-case name.
func ParseSide(name string) (Side, bool) {
	for _, s := range Sides {
		if sideNames[s] == name {
			return s, true
		}
	}
	return NoSide, false
}

// String gives the side's name in lower case.
func (s Side) String() string { return sideNames[s] }

// Opposite returns the side across the piece.
func (s Side) Opposite() Side {
	if s == NoSide {
		return NoSide
	}
	return (s - 1) ^ 1 + 1
}

// High reports whether the side faces along its axis: right, back or top.
func (s Side) High() bool { return s != NoSide && s%2 == 0 }

// Dimension returns the dimension the side closes; the side must not be
// [NoSide].
func (s Side) Dimension() Dimension { return Dimension((s - 1) / 2) }

// Cross returns the side in whose direction the cross product s x t points, in
// the stock's right-handed axes, or [NoSide] when s and t share a dimension.
func (s Side) Cross(t Side) Side {
	if s == NoSide || t == NoSide || s.Dimension() == t.Dimension() {
		return NoSide
	}
	high := s.High() == t.High()
	if (s.Dimension()+1)%3 != t.Dimension() {
		high = !high
	}
	third := 3 - s.Dimension() - t.Dimension()
	if high {
		return third.High()
	}
	return third.Low()
}

// Dimension is one of the three dimensions of a piece.
type Dimension uint8

// The dimensions, in the order of the axes X, Y, Z.
const (
	LeftRight Dimension = iota
	FrontBack
	TopBottom
)

// Dimensions lists the three dimensions.
var Dimensions = [3]Dimension{LeftRight, FrontBack, TopBottom}

var dimensionNames = [...]string{"left-right", "front-back", "top-bottom"}

// ParseDimension returns the dimension with that name.
func ParseDimension(name string) (Dimension, bool) {
	for _, d := range Dimensions {
		if dimensionNames[d] == name {
			return d, true
		}
	}
	return 0, false
}

// String gives the name a plan uses, such as "left-right".
func (d Dimension) String() string { return dimensionNames[d] }

// Low returns the side at the zero end of the axis: left, front or bottom.
func (d Dimension) Low() Side { return Side(2*d + 1) }

// High returns the side at the far end of the axis: right, back or top.
func (d Dimension) High() Side { return Side(2*d + 2) }

// Third returns the dimension that is neither d nor e; d and e must differ.
func (d Dimension) Third(e Dimension) Dimension { return 3 - d - e }

// Size is the size of a blank by dimension.
type Size [3]measure.Length

// Between returns the distance from a side to the one opposite.
func (s Size) Between(side Side) measure.Length { return s[side.Dimension()] }

// Longest returns the longest dimension, of equals the first: the way the grain
// runs where a plan does not say.
func (s Size) Longest() Dimension {
	best := LeftRight
	for _, d := range Dimensions {
		if s[d] > s[best] {
			best = d
		}
	}
	return best
}
