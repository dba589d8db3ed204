package sheets

import (
	"fmt"
	"strconv"

	"fencecard/output/paper"
	"fencecard/output/views"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Widths from which a head has its picture beside the settings, and its
// cautions in two columns.
const (
	besidePicture paper.Paper = 115
	twoColumns    paper.Paper = 115
	pictureShare              = 0.34

	headGap      paper.Paper = 1.2
	leastPicture paper.Paper = 30
)

// head is what is set once for a whole setup, and said once: on small paper it
// takes a card or two of its own, which come first.
func (s Setter) head(d *deck.Deck, i int, mind wording.Mind, of int) (first paper.Block, more []paper.Block) {
	u := &d.Setups[i]
	w := s.Frame.W
	settings := s.settings(d, i, of)
	if all := paper.Stack(headGap, settings, s.mindBox(mind, w), s.checks(u, w)); s.Frame.W >= besidePicture && all.H <= s.body().H*0.6 {
		return all, nil
	}
	// Small paper: the settings on one card, the words there or on as many more as
	// they take.
	rows := []paper.Block{settings}
	if settings.H > s.body().H {
		rows = append([]paper.Block{paper.Stack(headGap, s.named(d, i, of, w), s.fenceBox(u, w))}, s.ladderLines(u, w)...)
	}
	var said paper.Phrase
	for _, p := range s.mindPhrases(mind) {
		said = append(said, p...)
	}
	for i, l := range said.Lines(w) {
		rows = append(rows, under(l.Block(), i == 0))
	}
	for _, l := range lined(s.checkItems(u, w), w, checkGap) {
		rows = append(rows, under(l, true))
	}
	cards := fill(rows, 0, s.body().H, func(n int) paper.Block {
		if n == 0 {
			return paper.Block{}
		}
		return s.again(u, n+1, of, w)
	})
	return cards[0], cards[1:]
}

// under puts a little space over a block, where it is to stand off what is over
// it.
func under(b paper.Block, off bool) paper.Block {
	if !off {
		return b
	}
	return paper.Stack(0, paper.Block{H: headGap}, b)
}

// settings are the bit, the fence, the heights, and the section.
func (s Setter) settings(d *deck.Deck, i, of int) paper.Block {
	u := &d.Setups[i]
	w := s.Frame.W
	if w < besidePicture {
		b := paper.Stack(2, s.named(d, i, of, w), s.fenceBox(u, w), s.ladderLine(u, w))
		room := s.body().H - b.H - 2
		if room >= leastPicture {
			b.Below(views.SetupSection(s.Setter, u, w, min(room, 38)), headGap)
		}
		return b
	}
	right := w * pictureShare
	left := w - right - 4
	b := paper.Stack(headGap, s.named(d, i, of, left), s.fenceBox(u, left), s.ladderLine(u, left))
	picture := views.SetupSection(s.Setter, u, right, b.H)
	high := max(b.H, picture.H)
	b.Add(picture, w-picture.W, 0)
	b.H = high
	return b
}

// named is the number of the setup, its bit, and what is done first.
func (s Setter) named(d *deck.Deck, i, of int, w paper.Paper) paper.Block {
	u := &d.Setups[i]
	b := s.badge("SETUP", strconv.Itoa(u.Number))
	room := w - b.W - 3
	large := paper.Paper(5)
	if s.Bold(large).Width(u.Bit.Name) > room {
		large = 4
	}
	text := s.Strong(room, large, u.Bit.Name)
	text.Below(s.Strong(room, 3.2, doFirst(d, i)), 0.6)
	line := s.bitLine(u)
	if of > 1 {
		line = line.Tie(s.Letters(paper.Least), ";").Say(s.Letters(paper.Least), fmt.Sprintf("sheet 1 of %d", of))
	}
	text.Below(line.Set(room), 0.6)
	b.Add(text, b.W+3, 0)
	return b
}

// doFirst says what is to be done before a setup's first run.
func doFirst(d *deck.Deck, i int) string {
	switch u := &d.Setups[i]; {
	case i > 0 && d.Setups[i-1].Bit == u.Bit && d.Setups[i-1].Fence == u.Fence:
		return "UNPLUG. Bit and FENCE stay; only the HEIGHTS are new."
	case i > 0 && d.Setups[i-1].Bit == u.Bit:
		return "UNPLUG. The bit stays. Move the FENCE."
	}
	return "UNPLUG. Fit the bit. Set the FENCE."
}

// bitLine gives the bit's true diameter, where that comes from, and its speed.
func (s Setter) bitLine(u *deck.Setup) paper.Phrase {
	l := s.Letters(paper.Least)
	p := paper.Phrase{}.Say(l, "diameter").Keep(s.Bold(paper.Least), s.Plain(u.Bit.True()))
	if u.Bit.Measured > 0 {
		p = p.Say(l, "measured")
	} else {
		p = p.Say(l, "as labelled")
	}
	p = p.Tie(l, ";")
	return p.Say(l, u.Bit.TopSpeed(s.Router).String())
}

// ladderLine is the heights of a setup, climbing, each with the number that
// its tick boxes have.
func (s Setter) ladderLine(u *deck.Setup, w paper.Paper) paper.Block {
	return paper.Stack(1, s.ladderLines(u, w)...)
}

func (s Setter) ladderLines(u *deck.Setup, w paper.Paper) []paper.Block {
	items := []paper.Block{s.Strong(w, 3.2, "HEIGHTS")}
	for i, h := range u.BitHeights() {
		n := s.Number(s.Bold(5), h)
		n.Fraction = 3.6
		item := ordinal(s, strconv.Itoa(i+1))
		number := s.Exactly(nil, n, h).Set(w)
		high := max(item.H, number.H)
		var b paper.Block
		b.Add(item, 0, (high-item.H)/2)
		b.Add(number, item.W+1.5, (high-number.H)/2)
		items = append(items, b)
	}
	if u.Carriage > 0 {
		items = append(items, s.Say(w, "above the table, the carriage's "+s.Plain(u.Carriage)+" included"))
	}
	return lined(items, w, 4)
}

// ordinal is the number of a height in a thin ring, as it is named beside its
// tick boxes.
func ordinal(s Setter, n string) paper.Block {
	l := s.Letters(paper.Least)
	side := max(tickSide, l.Width(n)+2)
	b := paper.Figure("text", side, tickSide, func(c paper.Canvas, at paper.Point) {
		c.Stroke(paper.Thin, paper.Box{X: at.X, Y: at.Y, W: side, H: tickSide}.Path()...)
		c.Text(at.Add((side-l.Width(n))/2, (tickSide+l.Height)/2), l, n)
	})
	b.Parts[0].Says = n
	return b
}
