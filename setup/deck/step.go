package deck

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Step is one trip of the work over the bit.
type Step struct {
	Bit      *joinery.Bit
	NearEdge measure.Length // fence face to the near edge of the bit
	Down     joinery.Side   // face down on the table
	Fence    joinery.Side   // against the fence
	Position int            // which of the way's runs this is, from 1
	Of       int            // how many runs the way has
	Turned   bool           // the way makes both its runs at one fence distance, turning the piece
	Before   measure.Length // where the near edge was at the step before it, of a shaped edge that takes its passes by the fence
	Carriage measure.Length // thickness of the carriage's base that the work stands on; 0 without one
}

// Key is what makes two runs share a setup.
type Key struct {
	Bit      *joinery.Bit
	NearEdge measure.Length
	Carriage measure.Length
}

// Key returns what the table is set to for the run.
func (r Step) Key() Key { return Key{r.Bit, r.NearEdge, r.Carriage} }
