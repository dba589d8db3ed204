package setup

import "fencecard/joinery"

// Job is one channel of one kind of piece, and the ways to make it.
type Job struct {
	Piece   *joinery.Piece
	Cut     *joinery.Cut
	Channel joinery.Channel
	Ways    []Way // at least one, best first
	After   []int // jobs, by index, that must be cut in an earlier setup
}

// Way is one way to make a channel: with one bit, at one or more fence
// distances. Its runs must be made in their order, each in an earlier setup
// than the next unless they share the fence distance.
type Way struct {
	Bit   *joinery.Bit
	Runs  []Run
	Drops bool // some run drops the work onto the bit
}

// Run is one trip of the work over the bit.
type Run struct {
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
func (r Run) Key() Key { return Key{r.Bit, r.NearEdge} }
