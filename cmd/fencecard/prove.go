package main

import (
	"fmt"

	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// prove refuses a deck whose cards would not cut what its plan asks for. No
// plan should bring that about: it is a mistake in this program.
func prove(d *deck.Deck) error {
	claims := proof.Of(d)
	report := proof.Check(d.Plan, &claims)
	if err := report.Err(); err != nil {
		return fmt.Errorf("%w\nno card is printed; please report this plan as a mistake of fencecard", err)
	}
	return nil
}
