package sheets

import (
	"bytes"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/output/views"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Screen draws the sheets of a deck in pieces, to stand under one another on a
// page on a screen: as on the smallest paper, so that a telephone shows them at
// their size and a tablet at twice that, but without an end of the page. Boxes to
// tick and lines to write on are left out: a page on a screen has its own.
type Screen struct {
	setting.Setter // as the drawings are set
	sheets         Setter
	deck           *deck.Deck
}

// screenWide is the width of a drawing for a screen, 4 in less than a card's
// margins.
const screenWide paper.Paper = 89.6

// screenHigh is more than any sheet takes.
const screenHigh paper.Paper = 20_000

// OnScreen returns what draws a deck. Of the options paper and parts are not used.
func OnScreen(d *deck.Deck, o Pages) *Screen {
	o.Paper = Index
	s := newSetter(d, o)
	s.Page = paper.Box{W: screenWide, H: screenHigh}
	s.Frame = s.Page
	s.bare = true
	shop := &d.Plan.Shop
	for i := range d.Setups {
		s.minds[d.Setups[i].Number] = wording.MindOf(&d.Setups[i], wording.MindIn{Scale: s.Scale, Push: shop.Cross.With, Block: s.Blocks, Own: true})
	}
	return &Screen{s.Setter, s, d}
}

// Mind is what is minded at a setup.
func (s *Screen) Mind(u *deck.Setup) wording.Mind { return s.sheets.minds[u.Number] }

// Push is what pushes work across its end.
func (s *Screen) Push() joinery.Push { return s.deck.Plan.Shop.Cross.With }

// Drawing is a piece of a sheet as SVG within HTML; nil where there is nothing to
// draw.
type Drawing []byte

func (s *Screen) draw(b paper.Block) (Drawing, error) { return drawBare(b) }

// drawBare draws a block with no more round it than its lines need.
func drawBare(b paper.Block) (Drawing, error) {
	if b.H == 0 {
		return nil, nil
	}
	const round = 0.5 // half the thickest line
	c := &paper.SvgCanvas{Inline: true}
	g := &paper.Gate{To: c}
	g.Page(b.W+2*round, b.H+2*round)
	paper.Paint(g, b.At(round, round))
	return bytes.TrimSpace(c.Bytes()), g.Err
}

// Sums counts what the deck is made of and what is set.
func (s *Screen) Sums() string { return sums(s.deck, false) }

// RunSheet is what the run sheet has besides its setups: what to lay out, the
// sizes, the warnings, and what holds everywhere.
func (s *Screen) RunSheet() (Drawing, error) {
	return s.draw(paper.Stack(0.5, s.sheets.underSetups(s.deck)...))
}

// Head is what is set once for a setup, and said once.
func (s *Screen) Head(i int) (Drawing, error) {
	first, more := s.sheets.head(s.deck, i, s.sheets.minds[s.deck.Setups[i].Number], 1)
	return s.draw(paper.Stack(headGap, append([]paper.Block{first}, more...)...))
}

// Marks is the pair of marks that some runs of a setup share.
func (s *Screen) Marks(u *deck.Setup, g wording.Group) (Drawing, error) {
	return s.draw(s.sheets.pairPanel(u, g.Pair, g.Runs, s.sheets.minds[u.Number], screenWide))
}

// Row is one run as the sheet of its setup has it, under the names of its columns:
// a row may be all that shows on a screen.
func (s *Screen) Row(u *deck.Setup, r *deck.Run) (Drawing, error) {
	row := s.sheets.runRow(u, []*deck.Run{r}, s.sheets.minds[u.Number], screenWide)
	return s.draw(paper.Stack(0.6, s.sheets.rowsHead(u, screenWide), row))
}

// Lies is a run's piece as it lies on the table.
func (s *Screen) Lies(r *deck.Run) (Drawing, error) { return s.draw(s.sheets.asLies(r)) }

// FromAbove is a run as it is seen from above, between its marks.
func (s *Screen) FromAbove(u *deck.Setup, r *deck.Run) (Drawing, error) {
	b, _ := views.FromAbove(s.Setter, u, r, screenWide, aboveHigh)
	return s.draw(b)
}

// Heights of the drawings of a run.
const (
	aboveHigh   paper.Paper = 62
	sectionHigh paper.Paper = 55
)

// Section is a run as it is seen from its infeed end.
func (s *Screen) Section(u *deck.Setup, r *deck.Run) (Drawing, error) {
	b, _ := views.InfeedEnd(s.Setter, u, r, screenWide, sectionHigh)
	return s.draw(b)
}

// Card is the card of a piece.
func (s *Screen) Card(c *deck.Card) (Drawing, error) {
	return s.draw(paper.Stack(betweenSheets, s.sheets.pieceCard(s.deck, c, screenWide, screenHigh)...))
}

// Shout is the name of a side of a run's piece as it is told, in capitals.
func Shout(r *deck.Run, side joinery.Side) string { return shout(r, side) }
