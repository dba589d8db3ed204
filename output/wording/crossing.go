package wording

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// pushers are what pushes work across its end, in words.
var pushers = map[joinery.Push]string{joinery.Block: "a square block", joinery.Gauge: "the mitre gauge", joinery.Carriage: "the carriage"}

// Crossing says how work that is guided goes over the bit: what pushes it and, where
// the waste at its end is nibbled, how often and how far from the fence.
func Crossing(r *deck.Run, scale joinery.Scale, by joinery.Push) []Step {
	if !r.Guided {
		return nil
	}
	var steps []Step
	push := pushers[by]
	if base := r.Step.Carriage; base > 0 {
		above := make([]string, len(r.Heights))
		for i, h := range r.Heights {
			above[i] = scale.Format(h + base)
		}
		at := strings.Join(above, ", ")
		steps = append(steps, Step{
			fmt.Sprintf("The work stands on the carriage, whose base is %s: for these heights the bit stands %s above the table.", scale.Format(base), at),
			fmt.Sprintf("On the carriage (base %s): bit at %s above the table.", scale.Format(base), at)})
	}
	n := r.Nibble
	if n == nil {
		return append(steps, Step{
			fmt.Sprintf("Pushed by %s, with scrap behind it where the bit comes out.", push),
			fmt.Sprintf("Push with %s, scrap behind.", push)})
	}
	back := scale.Format(n.DrawBack)
	held := "held or clamped to it, since the bit pulls the end toward the fence"
	if r.Length >= deck.NarrowEnd(scale.Unit) {
		held = "its end at a straight strip before the fence, as thick as it is drawn back, since the bit pulls it that way"
	}
	short := "Held to " + push
	if r.Length >= deck.NarrowEnd(scale.Unit) {
		short = "Pushed by " + push + ", the end at a strip as thick as it is drawn back"
	}
	parallel := ""
	if by == joinery.Gauge {
		parallel = " The fence must stand parallel to its slot."
	}
	return append(steps, Step{
		fmt.Sprintf("%d passes side by side at every height: first with the end drawn back %s from the fence, then each time nearer by less than the bit is wide, last with the end at the fence. Never the other way: that is a climb cut. "+
			"Pushed by %s, %s; scrap behind where the bit comes out.%s", n.Passes, back, push, held, parallel),
		fmt.Sprintf("%d passes at each height: end first %s off the fence, then nearer by less than the bit, last at the fence; never the other way. %s.", n.Passes, back, short)})
}
