package deck

import (
	"fencecard/joinery"
	"fencecard/setup/search"
)

// Deck is a whole plan as setups in running order.
type Deck struct {
	Plan     *joinery.Plan
	Setups   []Setup
	Changes  Changes
	Ended    search.Ended // why the search for the fewest changes ended
	Joints   []Joint
	Warnings []Warning
}

// Runs counts the cards of all setups.
func (d *Deck) Runs() int {
	n := 0
	for i := range d.Setups {
		n += len(d.Setups[i].Runs)
	}
	return n
}
