package sheets

import (
	"fmt"
	"iter"
	"slices"
	"strconv"

	"fencecard/joinery"
	"fencecard/output/oblique"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// Measures of piece cards on a page.
const (
	cardPad    paper.Paper = 1.6
	cardsApart paper.Paper = 2.5
	cardWidest paper.Paper = 110 // two stand side by side on paper for two of nearly that
)

// pieceCards lays out the card of every piece, in columns where the paper is
// wide enough, to be cut out. A card goes where it fits, since they are cut apart;
// what goes on of a card stands where the others leave room, never on a page before
// it.
func (s Setter) pieceCards(d *deck.Deck) iter.Seq[page] {
	return func(yield func(page) bool) {
		body := s.body()
		columns := 1
		if body.W >= 170 {
			columns = 2
		}
		w := (body.W - paper.Paper(columns-1)*cardsApart) / paper.Paper(columns)
		var open []*cardPage
		var waiting []goingOn
		done := 0 // pages
		// placed puts a card on an open page that is not before one.
		placed := func(b paper.Block, from int) (page int, ok bool) {
			for i := max(0, from-done); i < len(open); i++ {
				if open[i].put(b, w, body.H) {
					return done + i, true
				}
			}
			return 0, false
		}
		fill := func(pages int) { // with what waits, of cards on the first pages
			waiting = slices.DeleteFunc(waiting, func(g goingOn) bool {
				if g.from >= done+pages {
					return false
				}
				_, ok := placed(g.card, g.from)
				return ok
			})
		}
		turn := func() bool {
			if len(open) == mostOpen {
				fill(1)
				if !yield(s.upright(open[0].all)) {
					return false
				}
				open, done = open[1:], done+1
			}
			open = append(open, newCardPage(columns))
			return true
		}
		for _, c := range d.Cards() {
			cards := s.pieceCard(d, &c, w, body.H)
			at, ok := placed(cards[0], 0)
			for !ok {
				if !turn() {
					return
				}
				at, ok = placed(cards[0], 0)
			}
			for _, b := range cards[1:] {
				waiting = append(waiting, goingOn{b, at})
			}
		}
		for fill(len(open)); len(waiting) > 0; fill(len(open)) {
			if !turn() {
				return
			}
		}
		for _, sheet := range open {
			if !yield(s.upright(sheet.all)) {
				return
			}
		}
	}
}

// goingOn is a further part of a card, and the page that the card begins on.
type goingOn struct {
	card paper.Block
	from int
}

// mostOpen is how many pages of cards are filled at once.
const mostOpen = 4

// cardPage is a page of cards that is filled, the lowest column first.
type cardPage struct {
	all  paper.Block
	high []paper.Paper // of the columns
}

func newCardPage(columns int) *cardPage { return &cardPage{high: make([]paper.Paper, columns)} }

// put puts a card where there is room for it, and reports whether there was.
func (p *cardPage) put(b paper.Block, w, h paper.Paper) bool {
	for i := range p.high {
		y := p.high[i]
		if y > 0 {
			y += cardsApart
		}
		if y == 0 || y+b.H <= h+paper.Touching {
			p.all.Add(b, paper.Paper(i)*(w+cardsApart), y)
			p.high[i] = y + b.H
			return true
		}
	}
	return false
}

// pieceCard lays out one card, on several where it is higher than h and a smaller
// picture does not help, nor that what stands at its foot goes into its key, whose last
// line may have room.
func (s Setter) pieceCard(d *deck.Deck, c *deck.Card, w, h paper.Paper) []paper.Block {
	var cards []paper.Block
	for _, first := range []bool{false, true} {
		rows := s.cardGroups(d, c, w-2*cardPad, first)
		of := func(picture paper.Paper) []paper.Block { return s.pieceCardWith(d, c, rows, w, h, picture) }
		all := of(s.body().H)
		if len(all) > 1 { // the smallest tells whether a smaller one helps
			if fewer := of(smallestPicture); len(fewer) < len(all) {
				if all = of(smallPicture); len(all) > len(fewer) {
					all = fewer
				}
			}
		}
		if cards == nil || len(all) < len(cards) {
			cards = all
		}
		if len(cards) == 1 {
			break
		}
		if !s.leastMinded() {
			break
		}
	}
	return cards
}

// smallPicture is a page so low that a piece is drawn small on it, smallestPicture one
// on which it is drawn as small as can be told apart.
const (
	smallPicture    paper.Paper = 100
	smallestPicture paper.Paper = 75
)

// pieceCardWith lays a card out with its picture as on a page so high.
func (s Setter) pieceCardWith(d *deck.Deck, c *deck.Card, rows []group, w, h, picture paper.Paper) []paper.Block {
	inner, high := w-2*cardPad, h-2*cardPad
	first := paper.Stack(s.cardGap(), s.cardHead(d, c, 0, inner), oblique.Picture(s.Setter, c, inner, picture))
	over := func(n int, _ rowsOn, _ paper.Paper) paper.Block {
		if n == 1 {
			return first
		}
		return s.cardHead(d, c, n-1, inner)
	}
	cards := poured(over, s.cardColumns(inner), rows, high, high, s.cardGap())
	for i, b := range cards {
		cards[i] = paper.Framed(wide(b, inner), cardPad, paper.Pen{Width: 0.35, Line: paper.Dashed})
	}
	return cards
}

// cardGap is the space before a row of a card.
func (s Setter) cardGap() paper.Paper {
	if s.Frame.W < besidePicture {
		return 0.3
	}
	return 0.7
}

// cardHead names the piece: its number, how many, its wood and size.
func (s Setter) cardHead(d *deck.Deck, c *deck.Card, n int, w paper.Paper) paper.Block {
	number := strconv.Itoa(c.Number)
	l, high := s.Bold(6), paper.Paper(10)
	if n > 0 {
		l, high = s.Bold(4.2), 7
	}
	b := black(number, l, max(high, l.Width(number)+4), high)
	code := s.deckCode(w)
	room := w - b.W - 2.5
	name := c.Piece.Name
	if n > 0 {
		name += fmt.Sprintf(", part %d", n+1)
	}
	large := s.Bold(4.2)
	if w < 90 {
		large = s.Bold(3.5)
	}
	words := paper.Phrase{}.Say(large, name)
	if n == 0 {
		words = words.Tie(large, ",").Say(s.Bold(3.2), "make").Keep(s.Bold(3.2), strconv.Itoa(c.Piece.Count))
	}
	title := words.Set(room - code.W - 2)
	if n == 0 {
		title.Below(s.finished(c.Piece).Set(room), 0.3)
	}
	b.Add(title, b.W+2.5, 0)
	b.Add(code, w-code.W, 0.5)
	return b
}

// dimensionWords are what the dimensions of a piece are called as one stands
// before it.
var dimensionWords = [...]string{joinery.LeftRight: "wide", joinery.FrontBack: "deep", joinery.TopBottom: "high"}

// finished is the wood and the finished size of a piece.
func (s Setter) finished(p *joinery.Piece) paper.Phrase {
	l := s.Letters(paper.Least)
	words := paper.Phrase{}.Say(l, p.Wood.String()).Tie(l, ",")
	for i := range p.Size {
		words = words.Say(s.Bold(paper.Least), s.Plain(p.Size[i])).Keep(l, dimensionWords[i])
		if i < len(p.Size)-1 {
			words = words.Keep(l, "×")
		}
	}
	if u := s.Unit(); u != "" && s.Frame.W >= besidePicture {
		words = words.Tie(l, ",").Say(l, u)
	}
	return words
}
