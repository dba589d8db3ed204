package setup

import (
	"fencecard/joinery"

	"fencecard/setup/deck"
)

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
	Steps []deck.Step
	Drops bool // some run drops the work onto the bit, which then must plunge
	// Passes counts how often a piece goes over the bit at one height.
	Passes int
}

// sideways counts how often a piece goes over the bit at one height and fence
// distance.
func (w *Way) sideways() int {
	if len(w.Steps) == 1 {
		return w.Passes
	}
	return 1
}
