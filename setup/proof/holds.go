package proof

import (
	"fmt"

	"fencecard/setup/deck"
)

// Holds refuses a deck whose runs would not cut what its plan asks for. No plan
// should bring that about: it is a mistake in this program, or in one that
// changed the deck after it was made.
func Holds(d *deck.Deck) error {
	claims := Of(d)
	report := Check(d.Plan, &claims)
	if err := report.Err(); err != nil {
		return fmt.Errorf("%w\nnothing of it is printed; please report this plan as a mistake of fencecard", err)
	}
	return nil
}
