package attable

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
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

// strayMinus asks about a minus where the sheet has none.
func (b bench) strayMinus(f Finding) string {
	if f.Wants <= 0 || f.Measured >= 0 {
		return ""
	}
	if b.right(-f.Measured, f.Wants) {
		return fmt.Sprintf("%s is what the sheet says, before the fence face. Is the minus a slip?", b.text(f.Wants))
	}
	return "a minus is behind the fence face, inside the fence. Is it a slip?"
}

// anotherBit faults distances of the fence that no bit of this width lies between: to
// move the fence by one of them would be wrong by the other.
func (b bench) anotherBit(s Settings) error {
	edges := []struct {
		name string
		at   *measure.Length
		of   measure.Length // from the near edge
	}{{"near edge", s.Near, 0}, {"centre", s.Centre, b.Bit / 2}, {"far edge", s.Far, b.Bit}}
	var faults plantext.Faults
	for i, from := range edges {
		for _, to := range edges[i+1:] {
			if from.at == nil || to.at == nil || faults != nil {
				continue
			}
			apart, wants := *to.at-*from.at, to.of-from.of
			if (apart - wants).Abs() <= b.Scale.Division {
				continue
			}
			half := map[bool]string{true: "", false: "half "}[wants == b.Bit]
			faults.Add(plantext.Fault{
				Problem: fmt.Sprintf("%s and %s as measured are %s apart, and %sthe bit is %s: is another bit in the collet?", from.name, to.name, b.text(apart.Abs()), half, b.text(wants)),
				Remedy:  fmt.Sprintf("look at the bit, which should be the %q; then measure both again, before the fence is moved", b.Tool.Name),
			})
		}
	}
	return faults.Err()
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
