package sheets

import (
	"fmt"
	"io"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// CardSVG writes the card of a number, such as "1.1", as an SVG drawing for a
// screen, as large as it is on a page. A card that needs two sheets has them
// under each other.
func CardSVG(w io.Writer, d *deck.Deck, number string, o Pages) error {
	o.PerPage = 1
	s, err := newSetter(d, o)
	if err != nil {
		return err
	}
	for i := range d.Setups {
		u := &d.Setups[i]
		for k := range u.Runs {
			if u.Runs[k].Number() == number {
				return writeSVG(w, paper.Stack(betweenCards, s.card(u, &u.Runs[k])...))
			}
		}
	}
	return fmt.Errorf("there is no card %s; the deck has the setups 1 to %d", number, len(d.Setups))
}

// writeSVG draws a block with a small margin round it.
func writeSVG(w io.Writer, b paper.Block) error {
	const round = 5
	c := &paper.SvgCanvas{}
	g := &paper.Gate{To: c}
	g.Page(b.W+2*round, b.H+2*round)
	paper.Paint(g, b.At(round, round))
	if g.Err != nil {
		return g.Err
	}
	if _, err := w.Write(c.Bytes()); err != nil {
		return fmt.Errorf("writing the drawing: %w", err)
	}
	return nil
}
