package attable

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// moveFence says where to move the fence that leaves a wall off, positive for
// too far from the fence.
func (b bench) moveFence(off measure.Length) string {
	if off > 0 {
		return "move the fence " + b.text(off) + " toward the bit"
	}
	return "move the fence " + b.text(-off) + " away from the bit"
}

// moveMark says what to do with what sets the start or the stop and leaves the
// line off, positive for too far from the leading end: then the work went too far
// to the left. The back stop goes with the start mark, unless it was measured itself.
func (b bench) moveMark(stop bool, guide deck.Guide, off measure.Length, stopMeasured bool) string {
	which, with := map[bool]string{false: "start mark", true: "stop mark"}[stop], ""
	if !stop && guide != deck.ByTail && b.Claimed.Begin == deck.Drop && !stopMeasured {
		with = ", and the back stop with it"
		if guide == deck.ByLine {
			with = ", and bring the back stop up anew"
		}
	}
	switch {
	case guide == deck.ByLine && off > 0:
		return "draw the line " + b.text(off) + " nearer the " + b.Claimed.Leads.String() + " end" + with
	case guide == deck.ByLine:
		return "draw the line " + b.text(-off) + " farther from the " + b.Claimed.Leads.String() + " end" + with
	case guide == deck.ByTail && !stop:
		which = "back stop"
	case guide == deck.ByLead && stop && b.Shop.Stops == joinery.Blocks:
		which = "front stop"
	}
	if off > 0 {
		return "move the " + which + " " + b.text(off) + " to the right, the infeed" + with
	}
	return "move the " + which + " " + b.text(-off) + " to the left, the outfeed" + with
}

// moveBit says where to move the bit that leaves a depth off.
func (b bench) moveBit(off measure.Length) string {
	if off > 0 {
		return "lower the bit " + b.text(off)
	}
	return "raise the bit " + b.text(-off)
}
