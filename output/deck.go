package output

import (
	"io"

	"fencecard/output/deckfile"
	"fencecard/output/screen"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// PDF writes a deck as pages to print. Like every writer of decks here it
// refuses one that does not prove, whoever changed it.
func PDF(w io.Writer, d *deck.Deck, o sheets.Pages) error {
	if err := proof.Holds(d); err != nil {
		return err
	}
	return sheets.PDF(w, d, o)
}

// CardSVG writes the card of a number as a drawing for a screen.
func CardSVG(w io.Writer, d *deck.Deck, number string, o sheets.Pages) error {
	if err := proof.Holds(d); err != nil {
		return err
	}
	return sheets.CardSVG(w, d, number, o)
}

// Text writes a deck to be read on a screen of 80 columns.
func Text(w io.Writer, d *deck.Deck) error {
	if err := proof.Holds(d); err != nil {
		return err
	}
	return screen.Text(w, d)
}

// JSON writes a deck as one indented JSON document.
func JSON(w io.Writer, d *deck.Deck) error {
	if err := proof.Holds(d); err != nil {
		return err
	}
	return deckfile.Write(w, d)
}
