package joinery

import (
	"math"
	"slices"

	"fencecard/joinery/measure"
)

// Shape is the form of an outline.
type Shape uint8

// The shapes: quarter rounds out and in, a slope of 45 degrees, and a maker's own
// row of corners.
const (
	Round Shape = iota
	Hollowed
	Sloped
	Drawn
)

// Outline is the form of a bit that shapes an edge, below its pilot: how far it
// reaches beyond the pilot at each distance below the pilot's lower edge. A row of
// corners is joined by straight lines; below the last the outline goes straight
// down.
type Outline struct {
	Shape   Shape
	Radius  measure.Length // of a round or a hollow; of a slope its height and its reach
	Corners []Corner       // of a drawn outline, from the pilot down
}

// MostCorners is more than any drawn outline needs.
const MostCorners = 100

// Corner is a corner of a drawn outline.
type Corner struct{ Below, Reach measure.Length }

// Deep is the height of the whole outline.
func (o *Outline) Deep() measure.Length {
	if o.Shape == Drawn {
		return o.Corners[len(o.Corners)-1].Below
	}
	return o.Radius
}

// Wide is the greatest reach beyond the pilot.
func (o *Outline) Wide() measure.Length {
	wide := o.Radius
	for _, c := range o.Corners {
		wide = max(wide, c.Reach)
	}
	return wide
}

// Across is the diameter of a bit with the outline and a pilot: the outline reaches
// beyond it on each side.
func (o *Outline) Across(pilot measure.Length) measure.Length { return pilot + 2*o.Wide() }

// Flat is the reach at the pilot itself: the flat that the outline begins with.
func (o *Outline) Flat() measure.Length {
	if o.Shape == Drawn {
		return o.Corners[0].Reach
	}
	return 0
}

// Undercut reports whether the reach somewhere shrinks downward, so that a lower
// pass would take wood that the shape keeps.
func (o *Outline) Undercut() bool {
	for i := 1; i < len(o.Corners); i++ {
		if o.Corners[i].Reach < o.Corners[i-1].Reach {
			return true
		}
	}
	return false
}

// Same reports whether two outlines have one form; none is like none.
func (o *Outline) Same(other *Outline) bool {
	if o == nil || other == nil {
		return o == other
	}
	return o.Shape == other.Shape && o.Radius == other.Radius && slices.Equal(o.Corners, other.Corners)
}

// Lengths lists the numbers of the corners in their order.
func (o *Outline) Lengths() []measure.Length {
	var all []measure.Length
	for _, c := range o.Corners {
		all = append(all, c.Below, c.Reach)
	}
	return all
}

// ReachAt gives the reach in mm at a distance in mm below the pilot.
func (o *Outline) ReachAt(below float64) float64 {
	r := o.Radius.Millimetres()
	if below < 0 {
		return 0
	}
	if o.Shape == Drawn {
		return o.drawnAt(below)
	}
	below = min(below, r)
	switch o.Shape {
	case Round:
		return r - math.Sqrt(r*r-below*below)
	case Hollowed:
		return math.Sqrt(r*r - (r-below)*(r-below))
	}
	return below
}

func (o *Outline) drawnAt(below float64) float64 {
	last := o.Corners[0]
	for _, c := range o.Corners[1:] {
		if to := c.Below.Millimetres(); below < to {
			from := last.Below.Millimetres()
			return last.Reach.Millimetres() + (c.Reach-last.Reach).Millimetres()*(below-from)/(to-from)
		}
		last = c
	}
	return last.Reach.Millimetres()
}

// area is the area in mm2 that the outline takes beyond a line that stands so far
// out of the pilot, down to a distance below it, both in mm.
func (o *Outline) area(below, out float64) float64 {
	if o.Shape == Drawn {
		return o.drawnArea(below, out)
	}
	r := o.Radius.Millimetres()
	if out >= r {
		return 0
	}
	from := 0.0 // where the reach comes out of the line
	switch o.Shape {
	case Round:
		from = math.Sqrt(r*r - (r-out)*(r-out))
	case Hollowed:
		from = r - math.Sqrt(r*r-out*out)
	default:
		from = out
	}
	if below <= from {
		return 0
	}
	to := min(below, r)
	return o.under(to) - o.under(from) - out*(to-from) + (r-out)*(below-to)
}

// under is the area under the outline down to a distance in mm, which is no more
// than the radius.
func (o *Outline) under(x float64) float64 {
	r := o.Radius.Millimetres()
	// quarter is the area under a quarter circle from its middle to u.
	quarter := func(u float64) float64 { return (u*math.Sqrt(r*r-u*u) + r*r*math.Asin(u/r)) / 2 }
	switch o.Shape {
	case Round:
		return r*x - quarter(x)
	case Hollowed:
		return quarter(r) - quarter(r-x)
	}
	return x * x / 2
}

func (o *Outline) drawnArea(below, out float64) float64 {
	sum, at := 0.0, 0.0
	reach := o.Corners[0].Reach.Millimetres() - out
	for _, c := range o.Corners[1:] {
		to, next := c.Below.Millimetres(), c.Reach.Millimetres()-out
		if to > below {
			next = reach + (next-reach)*(below-at)/(to-at)
			to = below
		}
		sum += trapezium(reach, next, to-at)
		if at, reach = to, next; at >= below {
			return sum
		}
	}
	return sum + max(0, reach)*(below-at)
}

// trapezium is the part above nothing of the area between two heights.
func trapezium(a, b, long float64) float64 {
	switch {
	case long <= 0 || a <= 0 && b <= 0:
		return 0
	case a >= 0 && b >= 0:
		return (a + b) / 2 * long
	}
	high := max(a, b)
	return high / 2 * long * high / (max(a, b) - min(a, b))
}
