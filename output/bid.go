package output

import (
	"fencecard/joinery"
	"fencecard/setup/deck"
)

// bid is what is set for a mark at each end of the work, and what to mind with
// a stop; an end for which nothing is set has none.
type bid struct {
	lead, tail step
	mind       string
}

// bids says what is set for a card's start or stop, which it must have. A
// stopped start is never made without a back stop, in no shop; the front stop
// is for shops that set stop blocks, others mark the fence for the end of the
// work that it reaches.
func bids(r *deck.Run, stop bool, fence joinery.FenceReach, blocks bool) bid {
	var b bid
	switch {
	case !stop:
		b.tail = step{"CLAMP BACK STOP", "BACK STOP"}
	case blocks:
		b.lead = step{"CLAMP FRONT STOP", "FRONT STOP"}
	}
	if b != (bid{}) && r.StopOffFence(stop, fence) {
		b.mind = "BEYOND THE FENCE: on a longer facing or the table"
	}
	if blocks {
		return b
	}
	mark := step{"MARK THE FENCE", "MARK"}
	switch guide := r.Reach(stop, fence).Guide; {
	case guide == deck.ByLead:
		b.lead = mark
	case guide == deck.ByTail && b.tail == (step{}):
		b.tail = mark
	}
	return b
}

// markOf returns the mark a card starts or stops at.
func markOf(r *deck.Run, stop bool) *deck.Mark {
	if stop {
		return r.Stop
	}
	return r.Start
}
