package setup

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// mostPositions bounds the fence distances of one channel; nobody sets more.
const mostPositions = 64

// positions returns the fence distances to the near edge of a bit of diameter
// d that make a channel between two walls, nearest first: that order keeps the
// fresh wood on the operator's side of the bit, so that no pass is a climb
// cut. Neighbours overlap by a division of the scale at least, lest a sliver
// stand between them. It returns nil where the bit is too wide or far too narrow.
//
// A bit wider than a channel that is open beside the fence is buried in the
// fence; one wider than a channel open on the far side overhangs it.
func positions(c joinery.Channel, size joinery.Size, d measure.Length, scale measure.Scale) []measure.Length {
	first, last := c.Setback, c.Setback+c.Width-d
	switch {
	case d == c.Width:
		return []measure.Length{first}
	case d > c.Width && c.OpenBeside(c.Near, size):
		return []measure.Length{last}
	case d > c.Width && c.OpenBeside(c.Near.Opposite(), size):
		return []measure.Length{first}
	case d > c.Width || d <= scale.Division:
		return nil
	}
	gap, step := last-first, d-scale.Division
	moves := (gap + step - 1) / step
	if moves >= mostPositions {
		return nil
	}
	at := []measure.Length{first}
	for i := measure.Length(1); i < moves; i++ {
		at = append(at, between(at[i-1], last, moves-i+1, step, scale))
	}
	return append(at, last)
}

// between returns the first of n nearly even moves from one place to another,
// on the scale where that leaves every move no longer than step.
func between(from, to, n, step measure.Length, scale measure.Scale) measure.Length {
	even := from + (to-from)/n
	next := scale.Round(even)
	if next <= from || next-from > step || to-next > (n-1)*step {
		return from + min(step, (to-from+n-1)/n)
	}
	return next
}
