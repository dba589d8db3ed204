package setup

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// crossing returns a channel that lies at an end of the piece as a maker crosses
// it: measured from that end, which goes to the fence. An end is a side that the
// grain runs out of. It returns false for what lies elsewhere, for what is
// stopped, and where the maker wants the other end at the fence.
func crossing(p *joinery.Piece, c *joinery.Cut, ch joinery.Channel) (joinery.Channel, bool) {
	if ch.Near.Dimension() != p.Grain || !ch.EndToEnd(p.Size) {
		return ch, false
	}
	for _, at := range []joinery.Channel{ch, ch.Reversed(p.Size)} {
		if at.OpenBeside(at.Near, p.Size) && (c == nil || c.Fence.Side == joinery.NoSide || c.Fence.Side == at.Near) {
			return at, true
		}
	}
	return ch, false
}

// cross makes a channel at an end with the fence set once, at the shoulder. The
// channel is measured from the end.
func (m maker) cross(bit *joinery.Bit, p *joinery.Piece, ch joinery.Channel) (Way, reason) {
	d, scale := bit.True(), m.shop.Scale
	near := ch.Width - d
	switch {
	case d <= scale.Division:
		return Way{}, tooNarrow
	case near > mostPositions*(d-scale.Division):
		return Way{}, tooNarrow
	case !m.within(bit, near):
		return Way{}, beyondReach
	}
	step := deck.Step{Bit: bit, NearEdge: near, Down: ch.Down, Fence: ch.Near, Position: 1, Of: 1}
	return Way{Bit: bit, Steps: []deck.Step{step}}, fits
}

// widestAcross is the diameter of the widest bit that crosses an end unless the
// plan names it: a wide bit at full height takes too much wood (common practice,
// no source).
func widestAcross(unit measure.Unit) measure.Length {
	if unit == measure.Millimetres {
		return 20 * measure.Millimetre
	}
	return 3 * measure.Inch / 4
}

// nibbled tells how a step takes the waste at an end of the piece, nil where it
// crosses none or the bit is as wide as the waste is long. Neighbouring passes
// overlap by a division of the scale.
func nibbled(p *joinery.Piece, c *joinery.Cut, ch joinery.Channel, step deck.Step, scale measure.Scale) *deck.Nibble {
	at, ok := crossing(p, c, ch)
	d, overlap := step.Bit.True(), scale.Division
	if !ok || step.Fence != at.Near || step.Of != 1 || d >= at.Width || d <= overlap {
		return nil
	}
	passes := (at.Width - overlap + d - overlap - 1) / (d - overlap)
	return &deck.Nibble{Passes: int(passes), DrawBack: at.Width - d}
}

// guided reports whether a block, a gauge or a carriage pushes the work: where it
// is drawn back from the fence, and where a narrow end of it is fed in across the
// grain.
func guided(p *joinery.Piece, c *joinery.Cut, ch joinery.Channel, step deck.Step, scale measure.Scale) bool {
	if nibbled(p, c, ch, step, scale) != nil {
		return true
	}
	leads := Leads(step.Fence, step.Down)
	return leads.Dimension() != p.Grain && ch.OpenAt(leads, p.Size) && p.Size.Between(leads) < deck.NarrowEnd(scale.Unit)
}
