package main

import (
	"fmt"

	"fencecard/setup"
	"fencecard/setup/proof"
)

// prove refuses a deck whose cards would not cut what its plan asks for. No
// plan should bring that about: it is a mistake in this program.
func prove(deck *setup.Deck) error {
	claims := proof.Of(deck)
	report := proof.Check(deck.Plan, &claims)
	if err := report.Err(); err != nil {
		return fmt.Errorf("%w\nno card is printed; please report this plan as a mistake of fencecard", err)
	}
	return nil
}
