package proof

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// narrow is the length along the fence under which an end fed across alone can
// turn about the bit.
var narrow = map[measure.Unit]measure.Length{measure.Inches: 6 * measure.Inch, measure.Millimetres: 150 * measure.Millimetre}

// crossing checks how the work is pushed, what it stands on, and how the waste
// at its end is nibbled.
func (p *prover) crossing(at int, t table, w *wanted, s *Setup) {
	c := t.claim
	if c.Nibble != nil {
		p.nibble(at, t, w, s)
	}
	guided := c.Nibble != nil || c.Begin == deck.FeedIn && c.Leads.Dimension() != w.piece.Grain && t.long < narrow[p.scale.Unit]
	if c.says(NoGuided) && c.Guided != guided {
		p.wrongRun(at, "guided", 0, "the run has the work pushed %s; it must be pushed %s", pushed(c.Guided), pushed(guided))
	}
	base := measure.Length(0)
	if cross := p.plan.Shop.Cross; guided && cross.With == joinery.Carriage {
		base = cross.Base
	}
	if off := s.Carriage - base; off.Abs() > hair {
		p.wrongRun(at, "carriage", off, "the work stands %s above the table at this setup; it must stand %s above it", p.text(s.Carriage), p.text(base))
	}
}

func pushed(guided bool) string {
	if guided {
		return "by a block, a gauge or a carriage"
	}
	return "by hand along the fence"
}

// nibble checks the passes side by side that clear an end of the piece: the
// first reaches the end, and no two of them are further apart than the bit is
// wide, less a division of the scale.
func (p *prover) nibble(at int, t table, w *wanted, s *Setup) {
	c, n := t.claim, t.claim.Nibble
	switch {
	case c.Fence.Dimension() != w.piece.Grain:
		p.wrongRun(at, "nibble", 0, "the work is drawn back from the fence, but the %s is no end of it", c.Fence)
		return
	case c.Begin != deck.FeedIn || c.End != deck.RunOut:
		p.wrongRun(at, "nibble", 0, "the work is drawn back from the fence, but the %s does not run from side to side", w.cut.Kind)
		return
	}
	if over := n.DrawBack - s.Fence.NearEdge; over > hair {
		p.wrongRun(at, "nibble, draw back", over, "the end is drawn back %s at first; %s is all it takes", p.text(n.DrawBack), p.text(s.Fence.NearEdge))
	}
	move := t.bit - p.scale.Division // at the most, from pass to pass
	if move <= 0 || n.DrawBack < 0 {
		p.wrongRun(at, "nibble", 0, "no number of passes takes the waste with a bit of %s", p.text(t.bit))
		return
	}
	switch need := 1 + int((n.DrawBack+move-1)/move); {
	case n.Passes < need:
		p.wrongRun(at, "nibble, passes", 0, "in %d passes side by side wood would be left standing; it takes %d", n.Passes, need)
	case n.Passes > need:
		p.wrongRun(at, "nibble, passes", 0, "the run asks for %d passes side by side; it takes %d", n.Passes, need)
	}
}

// bitHeights checks how high the bit stands where a carriage raises the work.
func (p *prover) bitHeights(s *Setup) {
	want := len(s.Heights)
	if s.Carriage == 0 {
		want = 0
	}
	if len(s.BitHeights) != want {
		p.wrong("bit heights", "setup %d gives %d heights of the bit above the table, not %d", s.Number, len(s.BitHeights), want)
		return
	}
	for i, h := range s.BitHeights {
		if off := h - s.Heights[i] - s.Carriage; off.Abs() > hair {
			p.wrong("bit heights", "setup %d: with the bit %s above the table the cut would not be %s deep in work that stands %s above it",
				s.Number, p.text(h), p.text(s.Heights[i]), p.text(s.Carriage))
		}
	}
}

// from is the near edge of what the run's passes take, from the fence: where
// the end of the work is drawn back, as far beyond the near edge of the bit.
func (c *Run) from(near measure.Length) measure.Length {
	if c.Nibble != nil {
		near -= c.Nibble.DrawBack
	}
	return near
}

// sideways counts how often the work goes over the bit at each height.
func (c *Run) sideways() int {
	if c.Nibble != nil {
		return c.Nibble.Passes
	}
	return 1
}
