package attable

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// askCut asks about a wrong measure of a test cut that would be right if it were
// another one; "" where it is none of them.
func (b bench) askCut(c Correction, others []number) string {
	for _, n := range others {
		if c.Move != "" && n.length > 0 && b.right(c.Measured, n.length) {
			return fmt.Sprintf("%s would be right %s. Did you measure that?", b.text(n.length), n.as)
		}
	}
	return ""
}

// farOff is more than a test cut is off at a table set by its sheet (common practice,
// no source).
const farOff = measure.Inch / 4

// askFar asks about a measure that is farther off than a table set by its sheet cuts.
func (b bench) askFar(c Correction) string {
	off := (c.Measured - c.Wants).Abs()
	if c.Move == "" || off <= farOff {
		return ""
	}
	if slip := b.askPoint(c.Measured, c.Wants); slip != "" {
		return slip
	}
	return fmt.Sprintf("%s off is more than a test cut is at a table set by its sheet. Was it another run than %s that you measured?", b.text(off), b.Claimed.Number)
}

// askFinished asks about the width of a cut that several runs cut, where it is that of
// the finished one: a bit's measure is taken of one run alone.
func (b bench) askFinished(width measure.Length) string {
	wide := b.Channel.Width
	if b.Claimed.Positions < 2 || !b.right(width, wide) || 2*(width-wide).Abs() >= (width-b.Bit).Abs() {
		return ""
	}
	return fmt.Sprintf("%s is how wide the finished %s is, which %d runs cut. Did you measure that, and not what run %s alone cut?",
		b.text(wide), b.Cut.Kind.Name, b.Claimed.Positions, b.Claimed.Number)
}

// askPoint asks about a measure that is ten times what it should be, or a tenth.
func (b bench) askPoint(measured, wants measure.Length) string {
	if !b.right(measured, 10*wants) && !b.right(10*measured, wants) {
		return ""
	}
	return fmt.Sprintf("%s would be right, with the point at another place. Did it slip?", b.text(wants))
}

// acrossTheFeed are the measures that a setback is mistaken for.
func (b bench) acrossTheFeed() []number {
	f, side := b.Setup.Fence, b.Claimed.Fence
	size := b.Size.Between(side)
	var all []number
	if whole := b.wholeFrom(side); b.Claimed.Positions > 1 && !b.right(whole, f.NearEdge) {
		all = append(all, number{fmt.Sprintf("from the %s to the near wall of the finished %s, which %d runs cut", side, b.Cut.Kind.Name, b.Claimed.Positions), whole})
	}
	return append(all, []number{
		{fmt.Sprintf("from the %s to the far wall", side), f.FarEdge},
		{fmt.Sprintf("from the %s to the far wall", side.Opposite()), size - f.FarEdge},
		{fmt.Sprintf("from the %s to the near wall", side.Opposite()), size - f.NearEdge},
	}...)
}

// wholeFrom is how far the channel that several runs cut lies from a side.
func (b bench) wholeFrom(side joinery.Side) measure.Length {
	c := b.Channel
	if side == c.Near {
		return c.Setback
	}
	// Turned here, not by Channel.Reversed, which the maker of the runs uses.
	return b.Size.Between(side) - c.Setback - c.Width
}

// alongTheFeed are the measures that the beginning of a cut is mistaken for.
func (b bench) alongTheFeed() []number {
	lead, tail := b.Claimed.Leads, b.Claimed.Leads.Opposite()
	all := []number{{fmt.Sprintf("from the %s end to where the cut begins", tail), b.Long - b.Claimed.Start.Line}}
	if stop := b.Claimed.Stop; stop != nil {
		all = append(all,
			number{fmt.Sprintf("from the %s end to where the cut ends", lead), stop.Line},
			number{fmt.Sprintf("from the %s end to where the cut ends", tail), b.Long - stop.Line})
	}
	return all
}

// lengths are the measures that a length with round ends is mistaken for.
func (b bench) lengths(c Correction) []number {
	return []number{
		{"without the round ends", c.Wants - b.Bit},
		{"with one round end", c.Wants - b.Bit/2},
	}
}
