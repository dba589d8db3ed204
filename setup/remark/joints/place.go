package joints

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// reference is the end of the channel that the part is set against: the
// stopped end where one is open, else the side the maker measures the span
// from, else the top or the front.
func (c *jointCheck) reference() joinery.Side {
	run := c.channel.Run()
	low, high := run.Low(), run.High()
	span := c.joint.Into.Cut.Span
	switch {
	case c.stopped(low) && !c.stopped(high):
		return low
	case c.stopped(high) && !c.stopped(low):
		return high
	case !span.Whole():
		return span.Side
	case run == joinery.TopBottom:
		return joinery.Top
	}
	return low
}

// reveals works out where the part's faces come to lie: against the near wall
// of the channel, and against its reference end.
func (c *jointCheck) reveals() {
	into, part := c.joint.Into, c.joint.Part
	for _, from := range []joinery.Side{c.channel.Near, c.reference()} {
		d := from.Dimension()
		if part.Cut == nil && part.Piece.Size[d] > into.Piece.Size[d] {
			continue // a shelf that goes on past this piece
		}
		near := c.wall(from) - ShoulderOf(part, from)
		play := c.taken(from, near)
		near += play
		far := into.Piece.Size[d] - part.Piece.Size[d] - near
		c.joint.Reveals = append(c.joint.Reveals,
			deck.Reveal{Side: from, Distance: near, Play: play}, deck.Reveal{Side: from.Opposite(), Distance: far, Play: max(0, c.gap(d)-play)})
	}
	for _, r := range c.joint.Reveals {
		if r.Distance < 0 {
			c.warn(part, "stands-proud", "%q stands %s proud of the %s of %q",
				part.Piece.Name, c.text(-r.Distance), r.Side, into.Piece.Name)
		}
	}
}

// taken is how much of its play a tenon is off the wall at a side, which it would lie
// so near against: in the middle of it or all the way over, where that is what a maker
// writes or reads off a rule, and the other is not.
func (c *jointCheck) taken(from joinery.Side, near measure.Length) measure.Length {
	gap := c.gap(from.Dimension())
	middle, over := near+gap/2, near+gap
	switch {
	case gap <= 0:
		return 0
	case near < 0 && middle >= 0: // it lies flush, with room both ways
		return gap / 2
	case c.scale.On(near):
		return 0
	case c.scale.On(middle):
		return gap / 2
	case c.scale.On(over):
		return gap
	}
	return 0
}

// gap is how much room the channel leaves beside a tenon; none where it is open there,
// or where a whole piece goes in.
func (c *jointCheck) gap(d joinery.Dimension) measure.Length {
	if c.joint.Part.Cut == nil {
		return 0
	}
	room := c.channel.Width
	if run := c.channel.Run(); d == run {
		if !c.stopped(run.Low()) || !c.stopped(run.High()) {
			return 0
		}
		room = c.channel.Hi - c.channel.Lo
	}
	return max(0, room-acrossOf(c.joint.Part, d))
}

// wall is the distance from a side of the piece to the channel's wall there.
func (c *jointCheck) wall(side joinery.Side) measure.Length {
	ch, size := c.channel, c.joint.Into.Piece.Size
	switch {
	case side == ch.Near:
		return ch.Setback
	case side == ch.Near.Opposite():
		return size.Between(side) - ch.Setback - ch.Width
	case side.High():
		return size.Between(side) - ch.Hi
	}
	return ch.Lo
}

// RevealOf is the joint's reveal at a side.
func RevealOf(j *deck.Joint, side joinery.Side) (measure.Length, bool) {
	for _, r := range j.Reveals {
		if r.Side == side {
			return r.Distance, true
		}
	}
	return 0, false
}

// placesDiffer warns of a piece whose two ends would lie differently in the
// pieces they go into: a rail that is not parallel to them.
func placesDiffer(found []deck.Joint, s measure.Scale) []deck.Warning {
	var warnings []deck.Warning
	for i := range found {
		for k := range found[:i] {
			a, b := &found[k], &found[i]
			if !otherEnds(a, b) || oneOfSeveral(a, found) || oneOfSeveral(b, found) {
				continue
			}
			if side, ok := skewed(a, b); ok {
				one, _ := RevealOf(a, side)
				other, _ := RevealOf(b, side)
				warnings = append(warnings, deck.Warning{
					Code: "place-differs", Piece: a.Part.Piece.Name, Cut: b.Part.Cut.Name, Place: b.Part.Cut.Place,
					Text: fmt.Sprintf("%q lies %s from the %s of %q at one end, but %s from that of %q at the other",
						a.Part.Piece.Name, s.Say(one), side, a.Into.Piece.Name, s.Fine(other), b.Into.Piece.Name),
				})
			}
		}
	}
	return warnings
}

// otherEnds reports whether two joints are at the two ends of one kind of piece.
func otherEnds(a, b *deck.Joint) bool {
	return a.Part.Cut != nil && b.Part.Cut != nil && a.Part.Piece == b.Part.Piece && a.Part.Cut.At == b.Part.Cut.At.Opposite()
}

// oneOfSeveral reports whether the piece that a joint is at one end of is there
// more than once, and another joint at its other end lies as this one does: the
// two are of one of them, and what differs is of another.
func oneOfSeveral(j *deck.Joint, found []deck.Joint) bool {
	return j.Part.Piece.Count > 1 && slices.ContainsFunc(found, func(other deck.Joint) bool {
		_, skew := skewed(j, &other)
		return otherEnds(j, &other) && !skew
	})
}

// skewed finds a side at which two joints of one piece differ. Along a
// dimension the two pieces gone into must be of one size to be compared.
func skewed(a, b *deck.Joint) (joinery.Side, bool) {
	for _, r := range a.Reveals {
		other, ok := RevealOf(b, r.Side)
		d := r.Side.Dimension()
		if ok && other != r.Distance && a.Into.Piece.Size[d] == b.Into.Piece.Size[d] {
			return r.Side, true
		}
	}
	return joinery.NoSide, false
}
