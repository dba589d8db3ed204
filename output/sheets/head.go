package sheets

import (
	"fmt"
	"slices"
	"strconv"

	"fencecard/output/paper"
	"fencecard/output/sheets/tick"
	"fencecard/output/views"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Widths from which a head has its picture beside the settings, and its
// cautions in two columns.
const (
	besidePicture paper.Paper = 115
	twoColumns    paper.Paper = 115
	pictureShare              = 0.25
	narrowShare               = 0.34 // of paper too narrow for a run on one line

	headGap      paper.Paper = 0.8
	leastPicture paper.Paper = 30

	// headHigh is how high a head is at most, unless its cautions or what was
	// learnt need more.
	headHigh paper.Paper = 75
	// trialHigh is up to where a head also says where a trial begins and ends.
	trialHigh paper.Paper = 68
)

// arrangement is how the heights of a head are set: beside the fence or under it,
// in letters of a height and figures of fractions, and whether it is said that all
// runs come at one height where no pairs tempt to do otherwise.
type arrangement struct {
	beside          bool
	whole, fraction paper.Paper
	brief           bool
}

// arrangements are tried in their order, until a head is as low as it should be;
// else the lowest is taken.
var arrangements = []arrangement{{true, 5, 3.6, false}, {false, 5, 3.6, false}, {true, 5, 3.6, true},
	{true, 4, paper.Least, false}, {false, 4, paper.Least, false}, {true, 4, paper.Least, true}, {false, 4, paper.Least, true}}

// head is what is set once for a whole setup, and said once: on small paper it
// takes a card or two of its own, which come first.
func (s Setter) head(d *deck.Deck, i int, mind wording.Mind, of int) (first paper.Block, more []paper.Block) {
	u := &d.Setups[i]
	w := s.Frame.W
	if w >= besidePicture {
		minded, low := s.mindBox(mind, w), s.settings(d, i, of, arrangements[0])
		if all := paper.Stack(headGap, low, minded, s.checks(d, i, w, true)); all.H <= trialHigh {
			return all, nil // where a trial begins and ends has room
		}
		said := paper.Stack(headGap, minded, s.checks(d, i, w, false))
		for _, a := range arrangements[1:] {
			if low.H+headGap+said.H <= headHigh {
				break
			}
			if b := s.settings(d, i, of, a); b.H < low.H {
				low = b
			}
		}
		if all := paper.Stack(headGap, low, said); all.H <= s.body().H*0.6 {
			return all, nil
		}
	}
	// Small paper: the settings on one card, the words there or on as many more as
	// they take.
	rows := []paper.Block{s.settings(d, i, of, arrangements[0])}
	if rows[0].H > s.body().H {
		rows = append([]paper.Block{paper.Stack(headGap, s.named(d, i, of, w), s.fenceBox(u, w))}, s.ladderLines(u, w, arrangements[0])...)
	}
	var said paper.Phrase
	for _, p := range s.mindPhrases(mind) {
		said = append(said, p...)
	}
	for i, l := range said.Lines(w) {
		rows = append(rows, under(l.Block(), i == 0))
	}
	for _, l := range lined(s.checkItems(d, i, w, false), w, checkGap) {
		rows = append(rows, under(l, true))
	}
	cards := fill(rows, 0, s.body().H, func(n int) paper.Block {
		if n == 0 {
			return paper.Block{}
		}
		return s.goesOn(u, n+1, of, w)
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
func (s Setter) settings(d *deck.Deck, i, of int, a arrangement) paper.Block {
	u := &d.Setups[i]
	w := s.Frame.W
	if w < besidePicture {
		b := paper.Stack(2, s.named(d, i, of, w), s.fenceBox(u, w), s.ladderLine(u, w, a))
		room := s.body().H - b.H - 2
		if room >= leastPicture {
			b.Below(views.SetupSection(s.Setter, u, w, min(room, 38)), headGap)
		}
		return b
	}
	right := w * pictureShare
	if w < wideRow {
		right = w * narrowShare
	}
	left := w - right - 4
	b := paper.Stack(headGap, s.named(d, i, of, left), s.fenceAndLadder(u, left, a))
	picture := views.SetupSection(s.Setter, u, right, b.H)
	high := max(b.H, picture.H)
	b.Add(picture, w-picture.W, 0)
	b.H = high
	return b
}

// fenceAndLadder is where the fence stands and the heights, beside it where that
// is wanted and has room.
func (s Setter) fenceAndLadder(u *deck.Setup, w paper.Paper, a arrangement) paper.Block {
	box := s.fenceBox(u, w)
	if a.beside {
		room := w - box.W - 2.5
		beside := paper.Stack(1, append([]paper.Block{s.heightsCaption(u, "HEIGHTS", s.heightByHeight(u, a), room)}, lined(s.ladderItems(u, room, a), room, 2.5)...)...)
		if beside.W <= room+paper.Touching {
			var b paper.Block
			high := max(box.H, beside.H)
			b.Add(box, 0, (high-box.H)/2)
			b.Add(beside, box.W+2.5, (high-beside.H)/2)
			return b
		}
	}
	return paper.Stack(headGap, box, s.ladderLine(u, w, a))
}

// named is the number of the setup, its bit, what is done first, and where there
// is room who set it.
func (s Setter) named(d *deck.Deck, i, of int, w paper.Paper) paper.Block {
	u := &d.Setups[i]
	b := s.badge("SETUP", strconv.Itoa(u.Number))
	x, orderOf := b.W+3, paper.Paper(3.1)
	if w < besidePicture && s.Frame.W < besidePicture {
		x, orderOf = b.W+2, paper.Least
	}
	room := w - x
	sign := s.signed(w)
	if sign.W > 0 {
		room -= sign.W + 3
	}
	large := paper.Paper(5)
	if s.Bold(large).Width(u.Bit.Name) > room {
		large = 4
	}
	text := s.Strong(room, large, u.Bit.Name)
	text.Below(s.Strong(room, orderOf, doFirst(d, i)), 0.6)
	bitLine := func(collet bool) paper.Phrase {
		line := s.bitLine(u, collet)
		if of > 1 {
			line = line.Tie(s.Letters(paper.Least), ";").Say(s.Letters(paper.Least), "sheet").Keep(s.Letters(paper.Least), fmt.Sprintf("1 of %d", of))
		}
		return line
	}
	line := bitLine(!d.BitStays(i))
	if without := bitLine(false); len(without.Lines(room)) < len(line.Lines(room)) {
		line = without // the check of the collet has its size too
	}
	text.Below(line.Set(room), 0.6)
	b.Add(text, x, 0)
	b.Add(sign, w-sign.W, 0)
	return b
}

// doFirst says what is to be done before a setup's first run.
func doFirst(d *deck.Deck, i int) string {
	switch u := &d.Setups[i]; {
	case d.BitStays(i) && d.Setups[i-1].Fence == u.Fence:
		return "UNPLUG. Set the new HEIGHTS."
	case d.BitStays(i):
		return "UNPLUG. Bit stays. Move the FENCE."
	}
	return "UNPLUG. Fit the bit. Set the FENCE."
}

// bitLine gives the bit's kind, where its name does not tell it, its true diameter,
// where that comes from, the collet where it is fitted, and its speed.
func (s Setter) bitLine(u *deck.Setup, fitted bool) paper.Phrase {
	l := s.Letters(paper.Least)
	p := paper.Phrase{}
	if kind := wording.KindOf(u.Bit); kind != "" {
		p = p.Say(l, kind)
	}
	p = p.Say(s.Bold(paper.Least), s.Plain(u.Bit.True()))
	p = p.Say(l, wording.WidthFrom(u.Bit, s.Plain))
	p = p.Tie(l, ";")
	if u.Bit.Shank > 0 && fitted {
		p = p.Say(l, "collet").Keep(s.Bold(paper.Least), wording.ColletSize(u.Bit.Shank, s.Scale)).Tie(l, ";")
	}
	top := u.Bit.TopSpeed(s.Router) // by whose figure stands in the text
	switch {
	case top.RPM == 0:
		return p.Say(l, top.Rule)
	case top.Cautious > 0:
		return p.Say(l, fmt.Sprintf("up to %d rpm, better %d", top.RPM, top.Cautious))
	}
	return p.Say(l, fmt.Sprintf("up to %d rpm", top.RPM))
}

// ladderLine is the heights of a setup, climbing, each with the number that
// its tick boxes have.
func (s Setter) ladderLine(u *deck.Setup, w paper.Paper, a arrangement) paper.Block {
	return paper.Stack(1, s.ladderLines(u, w, a)...)
}

func (s Setter) ladderLines(u *deck.Setup, w paper.Paper, a arrangement) []paper.Block {
	return lined(append([]paper.Block{s.heightsCaption(u, "HEIGHTS", s.heightByHeight(u, a), w)}, s.ladderItems(u, w, a)...), w, 4)
}

// heightByHeight is in which order heights and runs are gone through; small paper and
// brief heads have room for it only where somebody would else go pair by pair.
func (s Setter) heightByHeight(u *deck.Setup, a arrangement) string {
	if (a.brief || s.Frame.W < besidePicture) && len(u.Marks) < 2 {
		return ""
	}
	return wording.HeightByHeight(u, s.Blocks)
}

// heightsCaption stands before heights, and says to what they are measured where
// that is not the top of the bit, and in which order they are gone through.
func (s Setter) heightsCaption(u *deck.Setup, name, order string, w paper.Paper) paper.Block {
	p := paper.Phrase{}.Say(s.Bold(3), name)
	to := wording.HeightTo(u)
	if to == "" {
		return p.Say(s.Letters(paper.Least), order).Set(w)
	}
	if order != "" {
		return p.Say(s.Letters(paper.Least), to+";").Say(s.Letters(paper.Least), order).Set(w)
	}
	if said := slices.Clone(p).Say(s.Letters(paper.Least), to); len(said.Lines(w)) < 3 {
		return said.Set(w)
	}
	return p.Say(s.Letters(paper.Least), wording.HeightUnder).Set(w)
}

func (s Setter) ladderItems(u *deck.Setup, w paper.Paper, a arrangement) []paper.Block {
	return s.rungItems(u, wording.AllRungs(u), w, a)
}

// runLadder is the heights of one run, by their numbers on the ladder of its
// setup: at another of that ladder the run would be cut too deep.
func (s Setter) runLadder(u *deck.Setup, r *deck.Run, w paper.Paper) paper.Block {
	rungs := wording.RungNames(u, r)
	caption := "HEIGHTS"
	if len(rungs) == 1 {
		caption = "HEIGHT"
	}
	items := append([]paper.Block{s.heightsCaption(u, caption, "", w)}, s.rungItems(u, rungs, w, arrangements[0])...)
	if len(rungs) < len(u.Heights) {
		only := len(rungs) + 1
		items = slices.Insert(items, only, s.Strong(w, 3, "only"))
	}
	return paper.Stack(1, lined(items, w, 4)...)
}

func (s Setter) rungItems(u *deck.Setup, rungs []int, w paper.Paper, a arrangement) []paper.Block {
	var items []paper.Block
	above := u.BitRungs()
	for _, rung := range rungs {
		h := above[rung-1]
		n := s.Number(s.Bold(a.whole), h)
		n.Fraction = a.fraction
		items = append(items, beside(ordinal(s, strconv.Itoa(rung)), s.Exactly(nil, n, h).Set(w), 1.5))
	}
	if full, ok := u.ComputedFull(); ok && slices.Contains(rungs, len(u.Heights)) {
		items = append(items, s.Say(w, "computed "+s.Plain(full+u.Carriage)))
	}
	if u.Carriage > 0 {
		items = append(items, s.Say(w, "above the table, the carriage's "+s.Plain(u.Carriage)+" included"))
	}
	return items
}

// ordinal is the number of a height in a thin ring, as it is named beside its
// tick boxes.
func ordinal(s Setter, n string) paper.Block {
	l := s.Letters(paper.Least)
	side := max(tick.Side, l.Width(n)+2)
	b := paper.Figure("text", side, tick.Side, func(c paper.Canvas, at paper.Point) {
		c.Stroke(paper.Thin, paper.Box{X: at.X, Y: at.Y, W: side, H: tick.Side}.Path()...)
		c.Text(at.Add((side-l.Width(n))/2, (tick.Side+l.Height)/2), l, n)
	})
	b.Parts[0].Says = n
	return b
}
