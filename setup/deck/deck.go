package deck

import (
	"fencecard/joinery"
	"fencecard/setup/search/budget"
)

// Deck is a whole plan as setups in running order, or a part of one under the
// numbers of the whole.
type Deck struct {
	Plan     *joinery.Plan
	Code     string // four letters and digits from what the deck says; see package deckcode
	Setups   []Setup
	Changes  Changes
	Ended    budget.Ended // why the search for the fewest changes ended
	Joints   []Joint
	Warnings []Warning

	Part     bool  // some runs of a plan; the others are elsewhere
	FromBook bool  // out of a setup book, whose shop and climate are no longer known
	Numbers  []int // of a part: the card numbers of its pieces in the whole
}

// Runs counts the runs of all setups.
func (d *Deck) Runs() int {
	n := 0
	for i := range d.Setups {
		n += len(d.Setups[i].Runs)
	}
	return n
}

// BitStays reports whether a setup, by its place in the deck, has the bit of the one
// before it.
func (d *Deck) BitStays(i int) bool { return i > 0 && d.Setups[i-1].Bit == d.Setups[i].Bit }
