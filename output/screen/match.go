package screen

import (
	"cmp"
	"fmt"
	"io"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/book"
	"fencecard/setup/deck"
	"fencecard/setup/whatif"
)

// Matches writes what a setup book has for each setup of a deck.
func Matches(w io.Writer, d *deck.Deck, matches []book.Match) error {
	t := &textWriter{scale: d.Plan.Shop.Scale}
	for i, m := range matches {
		if i > 0 {
			t.line(0, "")
		}
		t.bit(fmt.Sprintf("SETUP %-4d", m.Setup.Number), m.Setup)
		switch {
		case m.Equal != nil:
			k := m.Equal.Kept(t.scale)
			t.wrapped("  equals  ", fmt.Sprintf("%q (%s)", k.Name, k.Code))
			t.said("          ", k)
		case len(m.Offers) == 0:
			t.line(0, "          nothing in the book is close")
		}
		for _, o := range m.Offers {
			t.offer(m.Setup, o)
		}
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// OfferLine says in one line that a close setup is kept, for those who did not ask.
func OfferLine(m book.Match, scale measure.Scale) string {
	o := m.Offers[0]
	line := fmt.Sprintf("setup %d: %q (%s) is close: %s", m.Setup.Number, o.Entry.Name, o.Entry.Code, Apart(m.Setup, o, scale))
	if stood := o.Entry.Kept(scale).FenceStood; stood != nil {
		line += "; after its test cut the fence stood at " + scale.Format(*stood)
		if k := m.Setup.Kept; k == nil || k.FenceStood == nil || *k.FenceStood != *stood {
			line += ", computed " + scale.Format(o.Entry.Setup.Fence.NearEdge)
		}
	}
	return line
}

// Apart says in what a kept setup differs from a planned one that is close.
func Apart(s *deck.Setup, o book.Offer, scale measure.Scale) string {
	by := scale.Fine(o.Shift.Abs()) + " " + scale.Unit.String()
	bit, fence := "the same bit", ""
	if o.Bit != 0 {
		bit = fmt.Sprintf("its bit %s wide, here %s", scale.Fine(o.Entry.Setup.Bit.True()), scale.Fine(s.Bit.True()))
	}
	switch {
	case o.Shift < 0:
		fence = ", its fence " + by + " nearer"
	case o.Shift > 0:
		fence = ", its fence " + by + " further away"
	case o.Bit == 0:
		return "the same bit and fence; " + wording.OtherRuns(&o.Entry.Setup, s, scale)
	}
	return bit + fence
}

func (t *textWriter) offer(s *deck.Setup, o book.Offer) {
	k := o.Entry.Kept(t.scale)
	t.wrapped("  close   ", fmt.Sprintf("%q (%s): %s", k.Name, k.Code, Apart(s, o, t.scale)))
	t.said("          ", k)
	if o.Use == nil {
		return
	}
	if len(o.Use.Changes) > 0 {
		t.line(10, "to use it as it stands, write in the plan:")
	}
	for _, c := range o.Use.Changes {
		t.wrapped("            ", t.change(c))
	}
	switch {
	case !o.Use.Allowed():
		t.line(10, "the joint does not allow it:")
	case len(o.Use.Beware) > 0:
		t.line(10, "the joint allows it, but:")
	default:
		t.line(10, "the joint allows it")
	}
	for _, why := range append(o.Use.Refused, o.Use.Beware...) {
		t.wrapped("            ", why)
	}
}

// change says what a value of the plan would have to be.
func (t *textWriter) change(c whatif.Change) string {
	from := ""
	if c.Side != joinery.NoSide {
		from = " from " + c.Side.String()
	}
	to, was := wording.WithUnit(t.scale, c.To), wording.WithUnit(t.scale, c.From)
	switch {
	case c.Key == "setback" && c.Word != c.Key && c.Side != joinery.NoSide: // a joint's place says it in words of its own
		toward := "nearer"
		if c.To > c.From {
			toward = "further from"
		}
		return fmt.Sprintf("%s, %s: %s %s %s the %s, so that its near wall is %s%s (now %s)", c.Piece, c.Cut, cmp.Or(c.Word, "move it"),
			wording.WithUnit(t.scale, (c.To-c.From).Abs()), toward, c.Side, to, from, was)
	case c.Word == "" || c.Word != c.Key && c.Key == "setback":
		return fmt.Sprintf("%s, %s: %s, so that its %s is %s%s (now %s)", c.Piece, c.Cut, cmp.Or(c.Word, "change it"), c.Key, to, from, was)
	}
	return fmt.Sprintf("%s, %s: %s %s%s (now %s)", c.Piece, c.Cut, c.Word, to, from, was)
}
