package joinery

import "fencecard/joinery/timber"

// Mortise is a slot for a tenon, stopped at both ends as a rule.
var Mortise = Kind{
	Name:     "mortise",
	Says:     "a hole for a tenon, in a side",
	Also:     []string{"mortice"},
	Required: trenchKeys,
	Optional: []string{"span"},
	Example:  "in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1",
	Gauged:   true,
	Walled:   true,
	Receives: true,
	Encloses: true,
	Deepest:  timber.Share{Num: 7, Den: 8}, // Handwork in Wood, ch. VII
	Through:  true,
	lay:      layTrench,
}

// Groove is a channel along the grain.
var Groove = Kind{
	Name:     "groove",
	Says:     "a channel along the grain",
	Also:     []string{"plough", "plow"},
	Required: trenchKeys,
	Optional: []string{"span"},
	Example:  "in: back, width: 1/4, setback: 1/4 from bottom, span: 1/2 to 36 from left, depth: 1/4",
	Grained:  true,
	Gauged:   true,
	Walled:   true,
	Receives: true,
	Deepest:  timber.Share{Num: 1, Den: 2}, // common practice, no source
	lay:      layTrench,
}

// Dado is a channel across the grain.
var Dado = Kind{
	Name:     "dado",
	Says:     "a channel across the grain",
	Also:     []string{"housing", "trench"},
	Required: trenchKeys,
	Optional: []string{"span"},
	Example:  "in: right, width: 3/4, setback: 4 from bottom, span: 0 to 9 1/2 from back, depth: 1/4",
	Across:   true,
	Grained:  true,
	Walled:   true,
	Receives: true,
	Deepest:  timber.Share{Num: 1, Den: 2}, // common practice, no source
	lay:      layTrench,
}

var trenchKeys = []string{"in", "width", "setback", "depth"}

// layTrench lays a channel with a wall on either side.
func layTrench(l *layout) {
	c, size := l.cut, l.piece.Size
	near := c.Start.From
	if near == NoSide {
		var ok bool
		if near, ok = l.centredFrom(); !ok {
			return
		}
	}
	if !l.crosswise("setback", near, c.In) {
		return
	}
	channel := Channel{Down: c.In, Near: near, Setback: c.Start.Distance, Width: c.Width, Depth: c.Depth}
	if c.Start.Centred {
		channel.Setback = max(0, (size.Between(near)-c.Width)/2)
	}
	lo, hi, spanOK := l.reach(channel.Run())
	channel.Lo, channel.Hi = lo, hi
	wideOK := l.wide("width", channel.Setback, c.Width, near)
	if l.deep("depth", c.Depth, c.In) && wideOK && spanOK {
		l.channels = append(l.channels, channel)
	}
}

// centredFrom chooses the side a centred channel is measured from: the side
// named for the fence, else the low side of the dimension the channel does not
// run along.
func (l *layout) centredFrom() (Side, bool) {
	c := l.cut
	if c.Fence.Side != NoSide {
		return c.Fence.Side, true
	}
	if c.In == NoSide {
		return NoSide, false
	}
	var run Dimension
	switch {
	case !c.Span.Whole():
		run = c.Span.Side.Dimension()
	case c.In.Dimension() == l.piece.Grain:
		l.fault("add the side it is centred from, such as setback: centred from "+besideOne(c.In).String(), []string{"setback"},
			"the bit enters the end grain, so it is not clear which way the cut runs")
		return NoSide, false
	case c.Kind.Across:
		run = c.In.Dimension().Third(l.piece.Grain)
	default:
		run = l.piece.Grain
	}
	if run == c.In.Dimension() {
		l.fault("measure the span from one of: "+besides(c.In), []string{"span"},
			"the span is measured from the %s, but the bit enters the %s", c.Span.Side, c.In)
		return NoSide, false
	}
	return c.In.Dimension().Third(run).Low(), true
}

// besideOne returns one side that meets the given one.
func besideOne(side Side) Side {
	return ((side.Dimension() + 1) % 3).Low()
}
