package sheets

import (
	"slices"
	"strconv"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// orderHigh is the capitals of the three orders, to be read at arm's length.
const orderHigh paper.Paper = 4

// orderWide is the room of the longest of them.
const orderWide paper.Paper = 25.6

// wideRow is how wide paper must be for a run on one line.
const wideRow paper.Paper = 175

// Columns of a run on one line.
const (
	rowLetter paper.Paper = 8
	rowOrders paper.Paper = 56
	rowLies   paper.Paper = rowOrders + 3*orderWide + 0.5
	rowTicks  paper.Paper = rowLies + liesWide + 2.5
)

// rowsHead names the columns of runs.
func (s Setter) rowsHead(w paper.Paper) paper.Block {
	var b paper.Block
	l := s.Bold(paper.Least)
	put := func(x, y paper.Paper, text string) { b.Add(paper.Phrase{}.Say(l, text).Set(w), x, y) }
	shows := l.Width("UP / TOWARD YOU")
	orders := func(x, y paper.Paper) {
		for i, name := range []string{"DOWN", "to FENCE", "LEADS"} {
			put(x+paper.Paper(i)*orderWide, y, name)
		}
	}
	switch {
	case w >= wideRow:
		put(rowLetter, 0, "run")
		orders(rowOrders, 0)
		put(rowLies-3, 0, "UP / TOWARD YOU")
		put(rowTicks+2, 0, "done")
	case w >= liesBeside:
		orders(0, 0)
		put(w-shows, 0, "UP / TOWARD YOU")
	default:
		put(0, 0, "run")
		put(w-shows, 0, "UP / TOWARD YOU")
		orders(0, b.H)
	}
	b.Below(rule(w, paper.Thick), 0.6)
	return b
}

// narrowTicks is how much of a narrow row boxes take beside the names.
const narrowTicks paper.Paper = 13

// liesBeside is how wide paper must be for a piece as it lies beside the orders.
const liesBeside = 3*orderWide + liesWide + 4

// together parts runs that are turned alike into rows: those that read alike,
// with nothing to say of one alone, share one.
func together(u *deck.Setup, runs []*deck.Run, mind wording.Mind) [][]*deck.Run {
	var rows [][]*deck.Run
	alone := func(r *deck.Run) bool {
		return len(mind.Own[r]) > 0 || mind.NoteOf(u, r) != "" || wording.SquaredEnds(r) && !mind.Squared
	}
	for _, r := range runs {
		if n := len(rows); n > 0 {
			last := rows[n-1]
			if last[0].Orders() == r.Orders() && !alone(last[0]) && !alone(r) && len(last) < mostTogether {
				rows[n-1] = append(last, r)
				continue
			}
		}
		rows = append(rows, []*deck.Run{r})
	}
	return rows
}

// mostTogether is how many runs share a row.
const mostTogether = 4

// runRow is one run, or several that read alike: the piece, the three orders,
// the piece as it lies, a box to tick for every height, and what is peculiar to
// a run.
func (s Setter) runRow(u *deck.Setup, runs []*deck.Run, mind wording.Mind, w paper.Paper) paper.Block {
	b := paper.Block{W: w}
	indent := paper.Paper(0)
	if w >= wideRow {
		b.Add(s.onOneLine(u, runs, w), 0, 0.4)
		indent = rowLetter
	} else {
		b.Add(s.onLines(u, runs, w), 0, 0.6)
	}
	if p := s.peculiar(runs[0], mind.Own[runs[0]], mind.Squared, mind.NoteOf(u, runs[0])); len(p) > 0 {
		b.Below(indented(p.Set(w-indent), indent), 0.6)
	}
	b.Below(rule(w, paper.Pen{Width: 0.18}), 0.4)
	return b
}

// placed is a block at an x.
type placed struct {
	x paper.Paper
	b paper.Block
}

func (s Setter) onOneLine(u *deck.Setup, runs []*deck.Run, w paper.Paper) paper.Block {
	r := runs[0]
	parts := []placed{{rowLies, s.asLies(r)}}
	var each paper.Block // the runs under each other, each with its boxes
	for i, r := range runs {
		name, ticks := s.whose(r, rowOrders-rowLetter-2, len(runs) > 1), s.heightTicks(u, r, w-rowTicks)
		high := max(name.H, ticks.H)
		gap := paper.Paper(0)
		if i > 0 {
			gap = 0.4
		}
		y := each.H + gap
		each.Add(name, rowLetter, y+(high-name.H)/2)
		each.Add(ticks, rowTicks, y+(high-ticks.H)/2)
	}
	parts = append(parts, placed{0, each})
	if r.Pair != "" {
		parts = append(parts, placed{0, s.letterOf(r)})
	}
	for i, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		parts = append(parts, placed{rowOrders + paper.Paper(i)*orderWide, s.order(r, side, orderHigh, orderWide-0.5)})
	}
	var high paper.Paper
	for _, p := range parts {
		high = max(high, p.b.H)
	}
	var b paper.Block
	for _, p := range parts {
		b.Add(p.b, p.x, (high-p.b.H)/2)
	}
	b.H = high
	return b
}

// letterOf is the letter of a run's pair, white on black.
func (s Setter) letterOf(r *deck.Run) paper.Block {
	l := s.Bold(4.2)
	if len(r.Pair) > 1 {
		l = s.Bold(paper.Least)
	}
	return black(r.Pair, l, max(6.5, l.Width(r.Pair)+1), 7)
}

// onLines is a row on paper too narrow for one line.
func (s Setter) onLines(u *deck.Setup, runs []*deck.Run, w paper.Paper) paper.Block {
	r := runs[0]
	beside := w >= liesBeside
	room := w // for the names
	if !beside {
		room = w - liesWide - 2
	}
	var b paper.Block
	x := paper.Paper(0)
	if r.Pair != "" {
		letter := s.letterOf(r)
		b.Add(letter, 0, 0)
		x = letter.W + 2
	}
	y := paper.Paper(0)
	for _, r := range runs {
		ticks := s.heightTicks(u, r, min(room*0.42, 40))
		if beside {
			name := s.whose(r, w-x-ticks.W-3, true)
			b.Add(name, x, y)
			b.Add(ticks, w-ticks.W, y)
			y += max(name.H, ticks.H) + 0.8
			continue
		}
		ticks = s.heightTicks(u, r, room-x)
		if ticks.W <= narrowTicks {
			name := s.whose(r, room-x-ticks.W-1, len(runs) > 1)
			b.Add(name, x, y)
			b.Add(ticks, room-ticks.W, y)
			y += max(name.H, ticks.H) + 0.3
			continue
		}
		name := s.whose(r, room-x, len(runs) > 1)
		b.Add(name, x, y)
		b.Add(ticks, x, y+name.H+0.4)
		y += name.H + ticks.H + 0.8
	}
	lies := s.asLies(r)
	high, at, liesAt := lies.H, b.H+0.8, b.H+0.8
	if !beside {
		high, at, liesAt = 6, max(b.H, 0.5+lies.H)+0.3, 0.5
	}
	for i, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		word := s.order(r, side, orderHigh, orderWide-0.5)
		b.Add(word, paper.Paper(i)*orderWide, at+(high-word.H)/2)
	}
	b.Add(lies, w-lies.W, liesAt) // last, for the orders are read before it
	return b
}

// nameLines is how many lines the name of a piece or a cut takes at most, two
// where its words fill them badly.
const nameLines = 1.4

// whose is the number of a run, its piece, how many there are, and its cut; on
// one line where several share a row and it has room.
func (s Setter) whose(r *deck.Run, w paper.Paper, shared bool) paper.Block {
	// Names as long as a sentence are cut short; the piece's card has them whole.
	name := paper.Shortened(s.Bold(3.2), paper.Printable(r.Piece.Name), nameLines*w)
	p := paper.Phrase{}.Say(s.Bold(3.4), r.Number()).Say(s.Bold(3.2), name)
	if r.Piece.Count > 1 {
		p = p.Keep(s.Bold(3.2), "× "+strconv.Itoa(r.Piece.Count))
	}
	cut := paper.Phrase{}.Say(s.Letters(paper.Least), paper.Shortened(s.Letters(paper.Least), paper.Printable(wording.CutPart(r)), nameLines*w)+wording.Which(r))
	if shared {
		if one := append(slices.Clone(p), cut...); len(one.Lines(w)) == 1 {
			return one.Set(w)
		}
	}
	return paper.Stack(0, p.Set(w), cut.Set(w))
}

// mostTicks is how many heights of a run have a box each; of more, every box is
// for five.
const mostTicks = 16

// heightTicks are boxes to tick, one for every height of the run, with the
// numbers that the heights have at the head.
func (s Setter) heightTicks(u *deck.Setup, r *deck.Run, w paper.Paper) paper.Block {
	if s.bare {
		return paper.Block{}
	}
	var names []string
	for _, n := range wording.RungNames(u, r) {
		names = append(names, strconv.Itoa(n))
	}
	if len(names) > mostTicks {
		var fives []string
		for i := 0; i < len(names); i += 5 {
			fives = append(fives, names[i]+"–"+names[min(i+4, len(names)-1)])
		}
		names = fives
	}
	var items []paper.Block
	for _, n := range names {
		items = append(items, ordinal(s, n))
	}
	return flowed(items, w, 0.6, 0.6)
}

// peculiar is what holds for this run and no other of its setup.
func (s Setter) peculiar(r *deck.Run, own []deck.Caution, allSquared bool, note string) paper.Phrase {
	l, b := s.Letters(paper.Least), s.Bold(paper.Least)
	var p paper.Phrase
	for _, c := range own {
		if c.Weight == deck.Grave {
			p = p.Say(b, c.Weight.String())
		}
		p = p.Say(l, c.Brief)
	}
	if wording.SquaredEnds(r) && !allSquared {
		p = p.Say(b, wording.SquareOne)
	}
	if note != "" {
		p = p.Say(b, "Note:").Say(l, note)
	}
	return p
}
