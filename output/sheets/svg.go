package sheets

import (
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"

	"fencecard/joinery/plantext"
	"fencecard/output/paper"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// betweenSheets parts what takes several sheets, in a drawing for a screen.
const betweenSheets paper.Paper = 8

// RunSVG draws one run, such as "3.6", for a screen.
func RunSVG(w io.Writer, d *deck.Deck, number string, o Pages) error {
	u, r, err := runOf(d, number)
	if err != nil {
		return err
	}
	s := newSetter(d, o)
	return s.writeSVG(w, s.runPage(u, r))
}

// SetupSVG draws the sheets of one setup, by its number, under each other.
func SetupSVG(w io.Writer, d *deck.Deck, number int, o Pages) error {
	s := newSetter(d, o)
	for i := range d.Setups {
		if d.Setups[i].Number == number {
			return s.writeSVG(w, s.setupSheet(d, i, s.body().H))
		}
	}
	return plantext.Faults{{Problem: fmt.Sprintf("the deck has no setup %d", number), Remedy: fmt.Sprintf("it has %d", len(d.Setups))}}
}

// PieceSVG draws the card of one piece, by its name.
func PieceSVG(w io.Writer, d *deck.Deck, name string, o Pages) error {
	s := newSetter(d, o)
	for _, c := range d.Cards() {
		if strings.EqualFold(c.Piece.Name, strings.TrimSpace(name)) {
			return s.writeSVG(w, s.pieceCard(d, &c, min(s.Frame.W, cardWidest), s.body().H))
		}
	}
	return plantext.Faults{{Problem: fmt.Sprintf("the plan has no piece %q", plantext.Brief(name, 60)), Remedy: "look at the names in the plan"}}
}

// writeSVG draws blocks under each other with a small margin round them, the
// deck's code below.
func (s Setter) writeSVG(w io.Writer, blocks []paper.Block) error {
	const round = 5
	b := paper.Stack(betweenSheets, blocks...)
	b.Below(s.deckCode(b.W), 3)
	b.Below(s.deference(b.W), 1)
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

// deference says what comes before anything that stands on the paper.
func (s Setter) deference(w paper.Paper) paper.Block {
	return paper.Phrase{}.Say(s.Letters(paper.Least), trade.Deference).Set(w)
}

// pagesOf puts blocks on a page each.
func pagesOf(s Setter, blocks []paper.Block) []iter.Seq[page] {
	var pages []page
	for _, b := range blocks {
		pages = append(pages, s.upright(b))
	}
	return []iter.Seq[page]{slices.Values(pages)}
}
