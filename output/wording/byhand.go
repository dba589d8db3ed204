package wording

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// LayOut says where a channel that is made by hand lies, for a square and a pencil: each
// line so far from an end or a side, on which the square is laid. The words go to say, the
// lengths to length, in the order in which they are read.
func LayOut(p *joinery.Piece, ch joinery.Channel, say func(text string), length func(measure.Length)) {
	size := p.Size
	if far := ch.Reversed(size); ch.Setback > 0 && far.Setback == 0 {
		ch = far // the square lies on the side at which the cut is open
	}
	named := func(side joinery.Side) string { return "the " + sideOf(p, side) }
	switch end := ch.Setback + ch.Width; {
	case ch.Setback > 0:
		say("in " + named(ch.Down) + ": between lines")
		length(ch.Setback)
		say("and")
		length(end)
		say("from " + named(ch.Near) + ",")
		length(ch.Depth)
		say("deep,")
	case end == size.Between(ch.Near):
		say("all of " + named(ch.Down) + ",")
		length(ch.Depth)
		say("deep,")
	default:
		switch {
		case ch.Part != "":
			say(ch.Part + ":")
		case ch.Section.Shaped():
			say("off the corner:")
		default:
			say("cut out the corner:")
		}
		length(end)
		say("from " + named(ch.Near) + ",")
		length(ch.Depth)
		say("from " + named(ch.Down) + ",")
	}
	layAlong(p, ch, say, length)
}

// layAlong says from where to where a channel made by hand runs.
func layAlong(p *joinery.Piece, ch joinery.Channel, say func(text string), length func(measure.Length)) {
	run := ch.Run()
	low, high, full := run.Low(), run.High(), p.Size[run]
	from, lo, hi := low, ch.Lo, ch.Hi
	if full-ch.Hi < ch.Lo {
		from, lo, hi = high, full-ch.Hi, full-ch.Lo
	}
	switch {
	case lo == 0 && hi == full && run == p.Grain:
		say("end to end")
	case lo == 0 && hi == full:
		if run == joinery.TopBottom {
			low, high = high, low
		}
		say(fmt.Sprintf("%s to %s", low, high))
	case lo == 0:
		say("from the " + sideOf(p, from) + " to")
		length(hi)
	default:
		say("between")
		length(lo)
		say("and")
		length(hi)
		say("from the " + sideOf(p, from))
	}
}

// sideOf names a side of a piece, and says where it is an end.
func sideOf(p *joinery.Piece, side joinery.Side) string {
	if side.Dimension() == p.Grain {
		return side.String() + " end"
	}
	return side.String()
}
