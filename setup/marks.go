package setup

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"

	"fencecard/setup/deck"
)

// ends returns the distances from the leading end of the work to the nearer
// and the farther end of the channel.
func ends(c joinery.Channel, leads joinery.Side, length measure.Length) (a, b measure.Length) {
	if leads.High() {
		return length - c.Hi, length - c.Lo
	}
	return c.Lo, c.Hi
}

// startMark is where the work is dropped on: line a meets the bit's trailing
// edge, the outfeed side.
func startMark(a, length, d measure.Length) *deck.Mark {
	return &deck.Mark{
		Line:             a,
		LeadPastEdge:     a,
		LeadPastCentre:   a + d/2,
		TailBeforeEdge:   length - a,
		TailBeforeCentre: length - a - d/2,
	}
}

// stopMark is where the work is lifted off: line b meets the bit's leading
// edge, the infeed side.
func stopMark(b, length, d measure.Length) *deck.Mark {
	return &deck.Mark{
		Line:             b,
		LeadPastEdge:     b,
		LeadPastCentre:   b - d/2,
		TailBeforeEdge:   length - b,
		TailBeforeCentre: length - b + d/2,
	}
}
