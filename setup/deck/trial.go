package deck

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Trial is two settings that together give a channel its width: a pair of fence
// distances of one bit or, with the piece turned between two runs, one distance.
// It is tried in scrap once, however many channels it serves.
type Trial struct {
	Bit         *joinery.Bit
	First, Last measure.Length // fence face to the near edge
	Turned      bool
}

// TrialOf returns the trial for a channel that one step of its way helps to make. There
// is none where the bit gives the width, nor for a channel with one wall.
func TrialOf(ch joinery.Channel, size joinery.Size, step Step) (Trial, bool) {
	if step.Of < 2 || ch.OpenBeside(ch.Near, size) || ch.OpenBeside(ch.Near.Opposite(), size) {
		return Trial{}, false
	}
	if step.Turned {
		return Trial{step.Bit, step.NearEdge, step.NearEdge, true}, true
	}
	if ch.Near != step.Fence {
		ch = ch.Reversed(size)
	}
	return Trial{step.Bit, ch.Setback, ch.Setback + ch.Width - step.Bit.True(), false}, true
}
