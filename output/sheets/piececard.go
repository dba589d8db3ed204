package sheets

import (
	"fmt"
	"iter"
	"strconv"

	"fencecard/joinery"
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
// wide enough, to be cut out.
func (s Setter) pieceCards(d *deck.Deck) iter.Seq[page] {
	return func(yield func(page) bool) {
		body := s.body()
		columns := 1
		if body.W >= 170 {
			columns = 2
		}
		w := (body.W - paper.Paper(columns-1)*cardsApart) / paper.Paper(columns)
		var open []*cardPage
		for _, c := range d.Cards() {
			begun := 0 // what goes on does not stand before what it goes on from
		cards:
			for _, b := range s.pieceCard(d, &c, w, body.H) {
				for i := begun; i < len(open); i++ {
					if open[i].put(b, w, body.H) {
						begun = i
						continue cards
					}
				}
				if len(open) == mostOpen {
					if !yield(s.upright(open[0].all)) {
						return
					}
					open = open[1:]
				}
				sheet := newCardPage(columns)
				sheet.put(b, w, body.H)
				open = append(open, sheet)
				begun = len(open) - 1
			}
		}
		for _, sheet := range open {
			if !yield(s.upright(sheet.all)) {
				return
			}
		}
	}
}

// mostOpen is how many pages of cards are filled at once: a card goes where it
// fits, since they are cut apart.
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

// pieceCard lays out one card, on several where it is higher than h.
func (s Setter) pieceCard(d *deck.Deck, c *deck.Card, w, h paper.Paper) []paper.Block {
	inner := w - 2*cardPad
	head := func(n int) paper.Block { return s.cardHead(d, c, n, inner) }
	rows := s.cardRows(d, c, inner)
	cards := fill(rows, 0.5, h-2*cardPad, head)
	for i, b := range cards {
		cards[i] = paper.Framed(wide(b, inner), cardPad, paper.Pen{Width: 0.35, Line: paper.Dashed})
	}
	return cards
}

// cardHead names the piece: its number, how many, its wood and size.
func (s Setter) cardHead(d *deck.Deck, c *deck.Card, n int, w paper.Paper) paper.Block {
	number := strconv.Itoa(c.Number)
	l := s.Bold(6)
	b := black(number, l, max(10, l.Width(number)+4), 10)
	code := s.deckCode(w)
	room := w - b.W - 2.5 - code.W - 2
	name := c.Piece.Name
	if n > 0 {
		name += ", continued"
	}
	title := s.Strong(room, 4.2, name)
	title.Below(s.Strong(room, 3.4, fmt.Sprintf("make %d", c.Piece.Count)), 0.3)
	b.Add(title, b.W+2.5, 0)
	b.Add(code, w-code.W, 0.5)
	if n > 0 {
		return b
	}
	b.Below(s.finished(c.Piece).Set(w), 0.8)
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
		if i > 0 {
			words = words.Keep(l, "×")
		}
		words = words.Keep(s.Bold(paper.Least), s.Plain(p.Size[i])).Keep(l, dimensionWords[i])
	}
	if u := s.Unit(); u != "" {
		words = words.Tie(l, ",").Say(l, u)
	}
	return words
}
