package output

import (
	"io"

	"fencecard/output/deckfile"
	"fencecard/output/page"
	"fencecard/output/screen"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// proved lets a deck be written that proves, and refuses any other, whoever
// changed it. Every writer of decks here goes through it.
func proved(d *deck.Deck, write func() error) error {
	if err := proof.Holds(d); err != nil {
		return err
	}
	return write()
}

// PDF writes a deck as pages to print. Like every writer of decks here it
// refuses one that does not prove.
func PDF(w io.Writer, d *deck.Deck, o sheets.Pages) error {
	return proved(d, func() error { return sheets.PDF(w, d, o) })
}

// RunPDF writes one run, such as "3.6", as large as the page.
func RunPDF(w io.Writer, d *deck.Deck, number string, o sheets.Pages) error {
	return proved(d, func() error { return sheets.RunPDF(w, d, number, o) })
}

// RunSVG draws one run, such as "3.6", for a screen.
func RunSVG(w io.Writer, d *deck.Deck, number string, o sheets.Pages) error {
	return proved(d, func() error { return sheets.RunSVG(w, d, number, o) })
}

// SetupSVG draws the sheets of one setup, by its number, for a screen.
func SetupSVG(w io.Writer, d *deck.Deck, number int, o sheets.Pages) error {
	return proved(d, func() error { return sheets.SetupSVG(w, d, number, o) })
}

// PieceSVG draws the card of one piece, by its name, for a screen.
func PieceSVG(w io.Writer, d *deck.Deck, name string, o sheets.Pages) error {
	return proved(d, func() error { return sheets.PieceSVG(w, d, name, o) })
}

// JointSVG draws a joint, by its name, for a screen.
func JointSVG(w io.Writer, d *deck.Deck, name string, o sheets.Pages) error {
	return proved(d, func() error { return sheets.JointSVG(w, d, name, o) })
}

// HTML writes a deck as a page for a screen, in a file by itself.
func HTML(w io.Writer, d *deck.Deck, o sheets.Pages) error { return Page(w, d, page.About{Pages: o}) }

// Page writes a deck as a page for a screen, to be served or not.
func Page(w io.Writer, d *deck.Deck, about page.About) error {
	return proved(d, func() error { return page.Write(w, d, about) })
}

// Beside writes the sheets of a deck as a part of a page, to stand beside the text of
// their plan.
func Beside(w io.Writer, d *deck.Deck, b page.Beside) error {
	return proved(d, func() error { return page.WriteBeside(w, d, b) })
}

// Text writes a deck to be read on a screen of 80 columns.
func Text(w io.Writer, d *deck.Deck) error {
	return proved(d, func() error { return screen.Text(w, d) })
}

// JSON writes a deck as one indented JSON document.
func JSON(w io.Writer, d *deck.Deck) error {
	return proved(d, func() error { return deckfile.Write(w, d) })
}
