package deck

import (
	"fencecard/joinery"
)

// Step is one trip of the work over the bit.
type Step struct {
	Bit      *joinery.Bit
	NearEdge joinery.Length // fence face to the near edge of the bit
	Down     joinery.Side   // face down on the table
	Fence    joinery.Side   // against the fence
	Position int            // which of the way's runs this is, from 1
	Of       int            // how many runs the way has
	Turned   bool           // the way makes both its runs at one fence distance, turning the piece
}

// Key is what makes two runs share a setup.
type Key struct {
	Bit      *joinery.Bit
	NearEdge joinery.Length
}

// Key returns the bit and fence distance of the run.
func (r Step) Key() Key { return Key{r.Bit, r.NearEdge} }
