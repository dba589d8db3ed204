package joints

import (
	"cmp"
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/timber"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// movement compares what the part and the piece it goes into move along the
// channel.
func (c *jointCheck) movement() {
	into, part, run := c.joint.Into, c.joint.Part, c.channel.Run()
	width := acrossOf(part, run)
	climate := c.climate()
	dry, damp, err := climate.Moistures()
	if err != nil {
		c.warn(part, "movement-unknown", "%v", err)
		return
	}
	partMoves, err := part.Piece.Swells(climate, run, width)
	intoMoves, err2 := into.Piece.Swells(climate, run, min(width, into.Piece.Size[run]))
	if err = cmp.Or(err, err2); err != nil {
		c.warn(part, "movement-unknown", "how %s moves in %s is not known: %v", part, into, err)
		return
	}
	need := (partMoves - intoMoves).Abs()
	if c.scale.Round(need) == 0 {
		return
	}
	fixed := c.reference()
	m := &deck.Movement{
		Along: run, Width: width, Need: need, Fixed: fixed,
		Room: c.channel.Hi - c.channel.Lo - width,
		Open: !c.stopped(fixed.Opposite()),
		Glue: min(width, trade.GlueZone.Of(c.scale)),
		Wood: part.Piece.Wood.Reckoned(),
		Change: fmt.Sprintf("%g to %g %% humidity at %s, %.1f to %.1f %% moisture",
			climate.Dry, climate.Damp, climate.Temperature, dry, damp),
	}
	if part.Cut == nil && into.Cut.Kind.Common() == joinery.Groove.Common() {
		m.Glue = 0 // a panel, which a frame holds
	}
	c.joint.Movement = m
	if m.Short() > 0 {
		c.warn(into, "room-too-small", "%s is %s wide and moves %s against %s from season to season, but there is room for %s: %s",
			part, c.text(width), c.text(need), into, c.text(max(0, m.Room)), c.makeRoom(m))
	}
}

// climate is the plan's, or the usual one.
func (c *jointCheck) climate() timber.Climate {
	if c.deck.Plan.Climate == (timber.Climate{}) {
		return timber.DefaultClimate
	}
	return c.deck.Plan.Climate
}

// makeRoom says which number to change so that the part may move: the span of
// the channel at its free end where the part still covers it, else the part's
// own width.
func (c *jointCheck) makeRoom(m *deck.Movement) string {
	into, part, free := c.joint.Into, c.joint.Part, m.Fixed.Opposite()
	more := c.scale.Ceil(m.Short())
	tenon := part.Cut != nil && part.Cut.Kind.Has("cheeks")
	if tenon && ShoulderOf(part, free) < max(0, m.Room)+more {
		return fmt.Sprintf("take %s more off the %s edge of the tenon (cheeks: %s: %s)",
			c.text(more), free, free, c.scale.Format(ShoulderOf(part, free)+more))
	}
	if c.wall(free) < more {
		return fmt.Sprintf("make %q %s narrower", part.Piece.Name, c.text(more))
	}
	span := into.Cut.Span
	if span.Side == free {
		span.From -= more
	} else {
		span.To += more
	}
	among := "room: seasons"
	switch {
	case tenon:
	case into.Cut.Kind.Common() == joinery.Groove.Common():
		among = "of a panel room: seasons"
	default: // a housing has no room but where it stops
		among = fmt.Sprintf("stopped: %s from %s", c.scale.Format(c.wall(free)-more), free)
	}
	return fmt.Sprintf("write span: %s to %s from %s, or %s where it is a joint of the plan", c.scale.Format(span.From), c.scale.Format(span.To), span.Side, among)
}
