package output

import (
	"fmt"
	"strings"

	"fencecard/setup"
)

// card lays out one card.
func (s setter) card(u *setup.Setup, c *setup.Card) block {
	big, body := Letters{Face: Bold, Height: 10}, Letters{Height: 3.5}
	w := s.frame.W
	b := phrase{}.say(big, c.Number()).say(Letters{Face: Bold, Height: 5}, c.Piece.Name).set(w)
	b.below(phrase{}.say(body, fmt.Sprintf("%d of them; %s %s %s", c.Piece.Count, c.Cut.Kind, c.Cut.Name, c.Channel.Part)).set(w), 2)
	for _, order := range orders(c) {
		b.below(phrase{}.say(big, order).set(w), 0)
	}
	fence := s.length(phrase{}.say(body, "Fence to near edge"), big, u.Fence.NearEdge)
	fence = s.length(fence.say(body, "centre"), big, u.Fence.Centre)
	fence = s.length(fence.say(body, "far edge"), big, u.Fence.FarEdge)
	b.below(fence.set(w), 4)
	b.below(s.lengths(phrase{}.say(body, "Heights"), big, c.Heights).set(w), 2)
	b.below(s.mark("Start: drop on with the line", "trailing", c.Start).set(w), 4)
	b.below(s.mark("Stop: lift off with the line", "leading", c.Stop).set(w), 4)
	return b
}

func (s setter) mark(what, edge string, m *setup.Mark) phrase {
	if m == nil {
		return nil
	}
	big, body := Letters{Face: Bold, Height: 10}, Letters{Height: 3.5}
	p := s.length(phrase{}.say(body, what), big, m.Line)
	p = s.length(p.say(body, "at the "+edge+" edge: leading end past it"), big, m.LeadPastEdge)
	p = s.length(p.say(body, "tail before it"), big, m.TailBeforeEdge)
	p = s.length(p.say(body, "from the centre: leading end"), body, m.LeadPastCentre)
	return s.length(p.say(body, "tail"), body, m.TailBeforeCentre)
}

// orders are the three orders that say how the work lies on the table.
func orders(c *setup.Card) [3]string {
	return [3]string{
		strings.ToUpper(c.Run.Down.String()) + " side down",
		strings.ToUpper(c.Run.Fence.String()) + " to the fence",
		strings.ToUpper(c.Leads.String()) + " end leads",
	}
}
