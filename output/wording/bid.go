package wording

import (
	"fencecard/joinery"
	"fencecard/setup/deck"
)

// Bid is what is set for a mark at each end of the work, and what to mind with
// a stop; an end for which nothing is set has none.
type Bid struct {
	Lead, Tail Step
	Mind       string
}

// Bids says what is set for a card's start or stop, which it must have. A
// stopped start is never made without a back stop, in no shop; the front stop
// is for shops that set stop blocks, others mark the fence for the end of the
// work that it reaches.
func Bids(r *deck.Run, stop bool, fence joinery.FenceReach, blocks bool) Bid {
	var b Bid
	switch {
	case !stop:
		b.Tail = Step{"CLAMP BACK STOP", "BACK STOP"}
	case blocks:
		b.Lead = Step{"CLAMP FRONT STOP", "FRONT STOP"}
	}
	if b != (Bid{}) && r.StopOffFence(stop, fence) {
		b.Mind = "BEYOND THE FENCE: on a longer facing or the table"
	}
	if blocks {
		return b
	}
	mark := Step{"MARK THE FENCE", "MARK"}
	switch guide := r.Reach(stop, fence).Guide; {
	case guide == deck.ByLead:
		b.Lead = mark
	case guide == deck.ByTail && b.Tail == (Step{}):
		b.Tail = mark
	}
	return b
}

// MarkOf returns the mark a card starts or stops at.
func MarkOf(r *deck.Run, stop bool) *deck.Mark {
	if stop {
		return r.Stop
	}
	return r.Start
}
