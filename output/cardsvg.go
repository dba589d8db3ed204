package output

import (
	"fmt"
	"io"

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
				return writeSVG(w, stack(betweenCards, s.card(u, &u.Runs[k])...))
			}
		}
	}
	return fmt.Errorf("there is no card %s; the deck has the setups 1 to %d", number, len(d.Setups))
}

// writeSVG draws a block with a small margin round it.
func writeSVG(w io.Writer, b block) error {
	const round = 5
	c := &svgCanvas{}
	g := &gate{to: c}
	g.Page(b.w+2*round, b.h+2*round)
	paint(g, b.at(round, round))
	if g.err != nil {
		return g.err
	}
	if _, err := w.Write(c.bytes()); err != nil {
		return fmt.Errorf("writing the drawing: %w", err)
	}
	return nil
}
