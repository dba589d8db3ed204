package sheets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/sheets/tick"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// cardGroups are what a piece card has under its picture: the runs in their order
// under their setups, with the work by hand that comes between and what is minded
// there, and what the piece is joined to. Small cards say first or last where the rest
// is minded.
func (s Setter) cardGroups(d *deck.Deck, c *deck.Card, w paper.Paper, first bool) []group {
	var groups []group
	hand := func(before *deck.Run) []paper.Block {
		var rows []paper.Block
		for _, h := range c.ByHand {
			if h.Before == before {
				rows = append(rows, s.handRow(c, h, w))
			}
		}
		return rows
	}
	if key := s.cardKey(d, c, first); key != "" {
		groups = append(groups, group{words: []paper.Block{s.Say(w, key)}, gap: s.cardGap()})
	}
	for i := 0; i < len(c.Runs); {
		k := i
		for k < len(c.Runs) && c.Runs[k].Setup == c.Runs[i].Setup {
			k++
		}
		runs := c.Runs[i:k]
		u := setupOf(d, runs[0])
		g := group{head: s.cardSetup(u, w), gap: s.cardGap()}
		for _, r := range runs {
			row, more := s.cardRow(u, r, w)
			g.rows = slices.Concat(g.rows, hand(r), []paper.Block{row}, more)
		}
		groups = append(groups, g)
		i = k
	}
	end := group{words: hand(nil), wide: w}
	if len(c.Runs) == 0 && len(c.ByHand) == 0 {
		text := "no cuts"
		if goes := wording.GoesInto(d.Joints, c.Piece.Name); goes != "" {
			text += "; " + goes
		}
		end.words = append(end.words, s.Say(w, text))
	}
	mind := wording.MindOfCard(c, wording.MindIn{Scale: s.Scale, Push: s.push, Block: true, Least: s.leastMinded()})
	l := s.Letters(paper.Least)
	var minded, foot paper.Phrase
	if mind.Least && !first {
		foot = foot.Say(l, wording.ElseOnSetups)
	}
	for _, words := range s.mindPhrases(mind) {
		minded = append(minded, words...)
	}
	if text := joined(d, c); text != "" && len(c.Runs)+len(c.ByHand) > 0 { // without cuts it says so above
		foot = foot.Say(l, text)
	}
	for _, p := range []paper.Phrase{minded, foot} {
		if p != nil {
			end.head = s.opening(w)
			end.said = append(end.said, p)
		}
	}
	return append(groups, end)
}

// leastMinded reports whether cards leave to the sheets of the setups what those say.
func (s Setter) leastMinded() bool { return s.Frame.W < besidePicture && !s.bare }

// cardKey is what is said before the runs of a card, for at its foot it would go
// astray on a further part: from where marks are measured, and on large paper that no
// run is taken to its full depth by itself; and where the rest is minded, if that is
// said first.
func (s Setter) cardKey(d *deck.Deck, c *deck.Card, first bool) string {
	var key []string
	if slices.ContainsFunc(c.Runs, func(r *deck.Run) bool { return r.Pair != "" }) {
		key = append(key, wording.FromEdges)
	}
	if s.Frame.W >= besidePicture && slices.ContainsFunc(c.Runs, func(r *deck.Run) bool {
		return len(r.Heights) > 1 && wording.HeightByHeight(setupOf(d, r), s.Blocks) != ""
	}) {
		key = append(key, wording.AllAtOneHeight)
	}
	if first && s.leastMinded() && len(c.Runs) > 0 {
		key = append(key, wording.ElseOnSetups)
	}
	return strings.Join(key, " ")
}

func setupOf(d *deck.Deck, r *deck.Run) *deck.Setup {
	for i := range d.Setups {
		if d.Setups[i].Number == r.Setup {
			return &d.Setups[i]
		}
	}
	return nil
}

// Columns of a run on a piece card.
const (
	cardOrder     paper.Paper = 3
	cardOrders    paper.Paper = 19
	cardOrderWide paper.Paper = 22
)

func (s Setter) cardColumns(w paper.Paper) paper.Block {
	var b paper.Block
	l := s.Letters(paper.Least)
	for i, name := range []string{"DOWN", "to FENCE", "LEADS"} {
		b.Add(paper.Phrase{}.Say(l, name).Set(w), s.cardColumn(i, w), 0)
	}
	return b
}

func (s Setter) cardColumn(i int, w paper.Paper) paper.Paper {
	return cardOrders + paper.Paper(i)*max(cardOrderWide, (w-cardOrders)/3)
}

// cardSetup names the bit and the fence of the runs under it.
func (s Setter) cardSetup(u *deck.Setup, w paper.Paper) paper.Block {
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	p := paper.Phrase{}.Say(bold, "SETUP "+strconv.Itoa(u.Number)+":")
	p = s.fenceSaid(u, p, paper.Least)
	b := s.opening(w)
	b.Add(p.Tie(l, ",").Say(l, u.Bit.Name).Set(w), 0, b.H)
	return b
}

// opening is the line before a part of a card, and the space that keeps it off the
// letters below.
func (s Setter) opening(w paper.Paper) paper.Block {
	pen, under := paper.Thick, paper.Paper(0.9)
	if s.Frame.W < besidePicture {
		pen, under = paper.Thin, 0.15
	}
	b := paper.Block{W: w, H: under}
	b.Add(rule(w, pen), 0, 0)
	return b
}

// tally is room to count pieces, where they are counted on this sheet.
func (s Setter) tally(count int, w paper.Paper) paper.Block {
	if s.bare {
		return paper.Block{}
	}
	return tick.Tally(s.Setter, count, w)
}

// cardRow is one run of a piece: a box to tick for every piece, the orders, and
// everything else that whoever runs it must know; of many words the last stand
// in rows of their own.
func (s Setter) cardRow(u *deck.Setup, r *deck.Run, w paper.Paper) (row paper.Block, more []paper.Block) {
	b := paper.Block{W: w}
	b.Add(rule(w, paper.Pen{Width: 0.18}), 0, 0)
	y := paper.Paper(0.8)
	x := paper.Paper(0)
	if r.Piece.Count == 1 && !s.bare {
		b.Add(tick.Boxes(1, tick.Side), 0, y)
		x = tick.Side + 1.2
	}
	number := s.Strong(w, 3.2, r.Number())
	b.Add(number, x, y+(tick.Side-number.H)/2)
	for i, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		word := s.order(r, side, cardOrder, cardOrderWide-1)
		b.Add(word, s.cardColumn(i, w), y+(tick.Side-word.H)/2)
	}
	x = 0
	var ticks paper.Block
	if n := r.Piece.Count; n > 1 && n <= mostAbreast {
		ticks = s.tally(n, w*0.4)
		x = ticks.W + 2
	} else if n > 1 {
		b.Below(s.tally(n, w), 0.6)
	}
	var words paper.Block
	for i, l := range s.cardWords(u, r).Lines(w - x) {
		if i < mostLines {
			words.Below(l.Block(), 0)
		} else {
			more = append(more, indented(l.Block(), x))
		}
	}
	y = b.H + 0.4
	b.Add(ticks, 0, y)
	b.Add(words, x, y)
	return b, more
}

// A few boxes stand beside the words of a run; a few lines of it stay together.
const (
	mostAbreast = 4
	mostLines   = 8
)

// cardWords are a run's cut, depth and marks, and what is peculiar to it.
func (s Setter) cardWords(u *deck.Setup, r *deck.Run) paper.Phrase {
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	p := paper.Phrase{}.Say(l, wording.CutName(r)).Tie(l, ",").Say(l, "to")
	p = p.Keep(bold, s.Plain(u.SetAt(r.Heights[len(r.Heights)-1])))
	if n := len(r.Heights); n > 1 {
		p = p.Tie(l, ",").Keep(l, fmt.Sprintf("%d passes", n)) // "to 2 in 7 passes" would read as inches
	}
	if pair := u.Pair(r.Pair); pair != nil {
		p = p.Tie(l, ";").Say(bold, pair.Letter+":")
		p = s.cardMark(p, "START", pair.Start, r, false)
		if pair.Start != nil && pair.Stop != nil {
			p = p.Tie(l, ";")
		}
		p = s.cardMark(p, "STOP", pair.Stop, r, true)
	}
	p = p.Tie(l, ".")
	if screw := wording.ScrewPlace(r, s.Scale); screw != "" {
		p = p.Say(l, screw)
	}
	return p
}

// cardMark is one mark of a run in running text.
func (s Setter) cardMark(p paper.Phrase, name string, m *deck.PairMark, r *deck.Run, stop bool) paper.Phrase {
	if m == nil {
		return p
	}
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	marking := wording.MarkingOf(r, stop, m.Guide, s.Blocks)
	p = p.Say(bold, name).Keep(bold, s.Plain(marking.Length(&m.Mark))).Say(l, strings.TrimPrefix(strings.ToLower(strings.ReplaceAll(marking.Set, ",", "")), "mark "))
	if line := marking.BackStopAt(m, s.Plain); line != "" {
		p = p.Tie(l, ",").Say(bold, line)
	}
	return p
}

// handRow is a cut made by hand, with its layout lines.
func (s Setter) handRow(c *deck.Card, h deck.HandWork, w paper.Paper) paper.Block {
	b := paper.Block{W: w}
	b.Add(rule(w, paper.Pen{Width: 0.18}), 0, 0)
	if !s.bare {
		b.Add(tick.Boxes(1, tick.Side), 0, 1)
	}
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	p := paper.Phrase{}.Say(bold, "by "+h.Cut.By+":").Say(l, h.Cut.Kind.Name+" "+h.Cut.Name)
	for _, ch := range h.Cut.Channels {
		p = p.Tie(l, ";")
		wording.LayOut(c.Piece, ch, func(text string) { p = p.Say(l, text) }, func(at measure.Length) { p = p.Say(bold, s.Plain(at)) })
		if ch.Section.Shaped() {
			p = p.Tie(l, ",").Say(l, wording.Shape(ch.Section.Outline, s.Plain))
		}
	}
	if h.Cut.Note != "" {
		p = p.Tie(l, ".").Say(bold, "Note:").Say(l, h.Cut.Note)
	}
	b.Add(p.Set(w-tick.Side-1.5), tick.Side+1.5, 1.4)
	return b
}

// joined names the pieces that a piece is joined to, by a cut of its own or by what
// goes into another whole.
func joined(d *deck.Deck, c *deck.Card) string {
	var all []string
	for _, j := range d.Joints {
		for _, half := range [2][2]deck.Half{{j.Into, j.Part}, {j.Part, j.Into}} {
			if other := half[1].Piece.Name; half[0].Piece.Name == c.Piece.Name && !slices.Contains(all, other) {
				all = append(all, other)
			}
		}
	}
	if all == nil {
		return ""
	}
	return "Joined to " + strings.Join(all, ", ") + "."
}
