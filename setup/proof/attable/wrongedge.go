package attable

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// The classic slips at the bit: to measure from its other edge, which leaves all
// off by its diameter, and to drop the minus of an edge behind the fence face.

// edgeOf is the edge of the bit that a start or a stop is set from.
func edgeOf(stop bool) string {
	if stop {
		return "leading (right) edge"
	}
	return "trailing (left) edge"
}

// fromWrongEdge asks about a reading that the other edge of the bit would give.
// A pencil line is measured on the work alone.
func (b bench) fromWrongEdge(f Finding, guide deck.Guide, stop bool) string {
	would := f.Wants
	switch {
	case guide == deck.ByLine:
		return ""
	case (guide == deck.ByLead) == stop: // the other edge is nearer to that end
		would -= b.Bit
	default:
		would += b.Bit
	}
	if !b.right(f.Measured, would) {
		return ""
	}
	return fmt.Sprintf("%s is what it would be from the bit's %s. Did you measure from there?", b.text(f.Measured), edgeOf(!stop))
}

// droppedMinus asks about a reading that wants only its sign.
func (b bench) droppedMinus(f Finding) string {
	if f.Wants >= 0 || !b.right(f.Measured, -f.Wants) {
		return ""
	}
	return fmt.Sprintf("%s is what the sheet says, behind the fence face. Did you drop the minus?", b.text(f.Wants))
}

// markByWrongEdge asks about a cut whose begin or length is off as it would be
// had its mark been set from the other edge of the bit.
func (b bench) markByWrongEdge(c Correction, off measure.Length) string {
	if c.Move == "" || !b.right(c.Measured, c.Wants+off) {
		return ""
	}
	return fmt.Sprintf("off by the diameter of the bit. Was the %s set from the bit's %s?", c.What, edgeOf(c.What != "stop"))
}

// fenceByWrongEdge is the same for the fence, set to the far edge by the number
// of the near one.
func (b bench) fenceByWrongEdge(c Correction) string {
	if c.Move == "" || !b.right(c.Measured, c.Wants-b.Bit) {
		return ""
	}
	return "off by the diameter of the bit. Was the fence set to the bit's far edge?"
}
