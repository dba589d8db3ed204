package sheets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// cardRows are what a piece card has under its head: the picture, the runs in
// their order with the work by hand that comes between, and what it is joined
// to.
func (s Setter) cardRows(d *deck.Deck, c *deck.Card, w paper.Paper) []paper.Block {
	rows := []paper.Block{s.piecePicture(c, w)}
	if slices.ContainsFunc(c.Runs, func(r *deck.Run) bool { return r.Pair != "" }) {
		rows = append(rows, s.inLines(paper.Phrase{}.Say(s.Letters(paper.Least), wording.FromEdges), w)...)
	}
	columns := true
	last := 0
	hand := func(before *deck.Run) {
		for _, h := range c.ByHand {
			if h.Before == before {
				rows = append(rows, s.handRow(c, h, w))
			}
		}
	}
	for _, r := range c.Runs {
		hand(r)
		u := setupOf(d, r)
		row, more := s.cardRow(u, r, w)
		if r.Setup != last {
			row = paper.Stack(0.6, s.cardSetup(u, w), row)
			last = r.Setup
		}
		if columns {
			row = paper.Stack(0.8, s.cardColumns(w), row)
			columns = false
		}
		rows = append(append(rows, row), more...)
	}
	hand(nil)
	if len(c.Runs) == 0 && len(c.ByHand) == 0 {
		rows = append(rows, s.Say(w, "no cuts"))
	}
	if slices.ContainsFunc(c.Runs, wording.SquaredEnds) {
		rows = append(rows, s.inLines(paper.Phrase{}.Say(s.Bold(paper.Least), squaredCuts(c)), w)...)
	}
	if text := s.joined(c); text != "" {
		rows = append(rows, s.inLines(paper.Phrase{}.Say(s.Letters(paper.Least), text), w)...)
	}
	return rows
}

// squaredCuts says which cuts have their round ends chiselled square.
func squaredCuts(c *deck.Card) string {
	var names []string
	for _, r := range c.Runs {
		if wording.SquaredEnds(r) && !slices.Contains(names, r.Cut.Name) {
			names = append(names, r.Cut.Name)
		}
	}
	return "Chisel the round ends square: " + strings.Join(names, ", ") + "."
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
	words := paper.Phrase{}.Say(bold, "SETUP "+strconv.Itoa(u.Number)+":").Say(l, "near edge").Keep(bold, s.Plain(u.Fence.NearEdge)).Tie(l, ",").Say(l, u.Bit.Name)
	return paper.Stack(0.9, rule(w, paper.Thick), words.Set(w))
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
		b.Add(boxes(1, tickSide), 0, y)
		x = tickSide + 1.2
	}
	number := s.Strong(w, 3.2, r.Number())
	b.Add(number, x, y+(tickSide-number.H)/2)
	for i, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		word := s.order(r, side, cardOrder, cardOrderWide-1)
		b.Add(word, s.cardColumn(i, w), y+(tickSide-word.H)/2)
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
	p = p.Keep(bold, s.Plain(r.Heights[len(r.Heights)-1]))
	if n := len(r.Heights); n > 1 {
		p = p.Keep(l, fmt.Sprintf("in %d passes", n))
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
	mind := s.minds[u.Number]
	own := append(slices.Clone(mind.Own[r]), mind.Pairs[r.Pair]...)
	slices.SortStableFunc(own, func(a, b deck.Caution) int { return a.Number - b.Number })
	own = own[:min(len(own), 1)] // the gravest; the others stand on the sheet
	return append(p, s.peculiar(r, own, true, r.Cut.Note)...)
}

// cardMark is one mark of a run in running text.
func (s Setter) cardMark(p paper.Phrase, name string, m *deck.PairMark, r *deck.Run, stop bool) paper.Phrase {
	if m == nil {
		return p
	}
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	way := wording.WayOf(r, stop, m.Guide, s.Blocks)
	p = p.Say(bold, name).Keep(bold, s.Plain(way.Length(&m.Mark))).Say(l, strings.ToLower(strings.ReplaceAll(way.Set, ",", ""))).Tie(l, ",").
		Say(l, strings.ToLower(strings.TrimPrefix(way.For, "for the ")))
	if line := way.BackStopAt(m, s.Plain); line != "" {
		p = p.Tie(l, ",").Say(bold, line)
	}
	return p
}

// handRow is a cut made by hand, with its layout lines.
func (s Setter) handRow(c *deck.Card, h deck.HandWork, w paper.Paper) paper.Block {
	b := paper.Block{W: w}
	b.Add(rule(w, paper.Pen{Width: 0.18}), 0, 0)
	if !s.bare {
		b.Add(boxes(1, tickSide), 0, 1)
	}
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	p := paper.Phrase{}.Say(bold, "by "+h.Cut.By+":").Say(l, h.Cut.Kind.Name+" "+h.Cut.Name)
	for _, ch := range h.Cut.Channels {
		p = p.Tie(l, ";").Say(l, "in the "+ch.Down.String()).Tie(l, ",").Say(l, "from the "+ch.Near.String()).
			Keep(bold, s.Plain(ch.Setback)).Say(l, "to").Keep(bold, s.Plain(ch.Setback+ch.Width)).Tie(l, ",").
			Keep(bold, s.Plain(ch.Depth)).Say(l, "deep")
		if ch.Section.Shaped() {
			p = p.Tie(l, ",").Say(l, wording.Shape(ch.Section.Outline, s.Plain))
		}
		if run := ch.Run(); ch.Lo != 0 || ch.Hi != c.Piece.Size[run] {
			p = p.Tie(l, ",").Say(l, "along "+run.String()+" from").Keep(bold, s.Plain(ch.Lo)).Say(l, "to").Keep(bold, s.Plain(ch.Hi))
		}
	}
	if h.Cut.Note != "" {
		p = p.Tie(l, ".").Say(bold, "Note:").Say(l, h.Cut.Note)
	}
	b.Add(p.Set(w-tickSide-1.5), tickSide+1.5, 1.4)
	return b
}

// joined says in short what the piece is joined to.
func (s Setter) joined(c *deck.Card) string {
	var all []string
	seen := map[string]bool{}
	for _, r := range c.Runs {
		if r.Joint == nil {
			continue
		}
		other := r.Joint.Part
		if other.Cut == r.Cut {
			other = r.Joint.Into
		}
		text := strconv.Quote(r.Cut.Name) + " with " + other.Piece.Name
		if !seen[text] {
			seen[text] = true
			all = append(all, text)
		}
	}
	if all == nil {
		return ""
	}
	return "Joined: " + strings.Join(all, ", ") + "."
}
