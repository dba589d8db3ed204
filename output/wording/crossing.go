package wording

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Crossing says how the waste at an end is nibbled: how often, how far from the fence
// the end is drawn at first, how much nearer each time, and by what. It is "" for other runs;
// what pushes the work is said by the cautions.
func Crossing(r *deck.Run, scale measure.Scale, by joinery.Push) string {
	n := r.Nibble
	if n == nil {
		return ""
	}
	between := ""
	if nearer := r.Nearer(scale); nearer > 0 {
		between = fmt.Sprintf("then %s nearer each time, ", scale.Format(nearer))
	}
	text := fmt.Sprintf("NIBBLE in %d passes at every height: the end first drawn back %s by a spacer (fixed, or taken away), %slast at the fence.",
		n.Passes, scale.Format(n.DrawBack), between)
	if r.Length >= deck.NarrowEnd(scale.Unit) {
		text += " The end bears on the spacer."
	}
	if by == joinery.Gauge {
		text += " The fence stands parallel to the gauge's slot."
	}
	return text
}
