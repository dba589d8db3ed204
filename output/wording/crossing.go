package wording

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// pushers are what pushes work across its end, in words.
var pushers = map[joinery.Push]string{joinery.Block: "a square block", joinery.Gauge: "the mitre gauge", joinery.Carriage: "the carriage"}

// Crossing says how work that is guided goes over the bit: what pushes it and,
// where the waste at its end is nibbled, how often and how far from the fence.
// It is "" for other work.
func Crossing(r *deck.Run, scale joinery.Scale, by joinery.Push) string {
	if !r.Guided {
		return ""
	}
	push := pushers[by]
	if r.Step.Carriage > 0 {
		push = fmt.Sprintf("%s (base %s)", push, scale.Format(r.Step.Carriage))
	}
	n := r.Nibble
	if n == nil {
		return fmt.Sprintf("GUIDED: push with %s, scrap behind.", push)
	}
	held := "Clamp or hold it to " + push
	if r.Length >= deck.NarrowEnd(scale.Unit) {
		held = "Push with " + push + ", the end at a strip as thick as it is drawn back"
	}
	text := fmt.Sprintf("NIBBLE in %d passes side by side at every height: first with the end drawn back %s, then nearer by less than the bit, last at the fence; "+
		"never the other way, a climb cut. %s; scrap behind.", n.Passes, scale.Format(n.DrawBack), held)
	if by == joinery.Gauge {
		text += " The fence stands parallel to its slot."
	}
	return text
}
