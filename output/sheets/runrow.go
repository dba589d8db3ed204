package sheets

import (
	"slices"
	"strconv"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/sheets/tick"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// orderHigh is the capitals of the three orders, to be read at arm's length.
const orderHigh paper.Paper = 4

// orderWide is the room of the longest of them, with what parts it from the next.
const (
	orderWide paper.Paper = 27
	orderAir  paper.Paper = 2.8
	narrowAir paper.Paper = 2
	mostAir   paper.Paper = 5 // where the names leave so much
)

// wideRow is how wide paper must be for a run on one line.
const wideRow paper.Paper = 175

// columns are where the parts of a run stand on one line: the orders as wide as the
// longest of their setup, the name as wide as the rest leaves.
type columns struct {
	name        paper.Paper
	orders      [3]paper.Paper
	wide        [3]paper.Paper // of the orders
	lies, ticks paper.Paper
}

// Measures of the columns.
const (
	letterWide paper.Paper = 8 // of the letter of a pair
	liesGap    paper.Paper = 2.5
	leastName  paper.Paper = 42
	ampleName  paper.Paper = 68
	leastTicks paper.Paper = 4*tick.Side + 3*0.6
)

// rowsOf is what columns are for: the runs of a setup in a width.
type rowsOf struct {
	setup *deck.Setup
	wide  paper.Paper
}

// columnsOf returns the columns of the runs of a setup in a width, reckoned once.
func (s Setter) columnsOf(u *deck.Setup, w paper.Paper) columns {
	if c, ok := s.rows.Load(rowsOf{u, w}); ok {
		return c.(columns)
	}
	c := s.reckonColumns(u, w)
	s.rows.Store(rowsOf{u, w}, c)
	return c
}

func (s Setter) reckonColumns(u *deck.Setup, w paper.Paper) columns {
	var c columns
	if len(u.Marks) > 0 {
		c.name = letterWide
	}
	ticks := 2 * tick.Side
	all, air := paper.Paper(0), orderAir
	if w < wideRow {
		air = narrowAir
	}
	for i := range u.Runs {
		r := &u.Runs[i]
		for k, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
			c.wide[k] = max(c.wide[k], s.order(r, side, orderHigh, orderWide-orderAir).W+air)
		}
		ticks = max(ticks, s.heightTicks(u, r, w).W)
	}
	for k, name := range orderNames {
		least := s.Bold(paper.Least).Width(name) + air
		if k == 2 {
			least += 2.5 // the words over the piece begin before it
		}
		c.wide[k] = max(c.wide[k], least)
		all += c.wide[k]
	}
	if w < wideRow {
		if w >= liesBeside {
			for k := range c.wide {
				c.wide[k] += max(0, min(mostAir-air, (w-liesWide-3-all)/3))
			}
		}
		c.orders = [3]paper.Paper{0, c.wide[0], c.wide[0] + c.wide[1]}
		return c
	}
	rest := w - c.name - all - liesWide - liesGap
	if spare := min(mostAir-air, (rest-ticks-ampleName)/3); spare > 0 {
		for k := range c.wide {
			c.wide[k] += spare
		}
		rest -= 3 * spare
	}
	c.ticks = w - min(ticks, max(leastTicks, rest-leastName))
	c.lies = c.ticks - liesGap - liesWide
	x := c.lies
	for k := len(c.orders) - 1; k >= 0; k-- {
		x -= c.wide[k]
		c.orders[k] = x
	}
	return c
}

// toward is over the piece as it lies: the side up and the one toward the operator.
const toward = "UP / TOWARD YOU"

// towardShort is the same on paper too narrow for it.
const towardShort = "UP / YOU"

// orderNames are what the three orders are called over their columns.
var orderNames = [3]string{"DOWN", "to FENCE", "LEADS"}

// rowsHead names the columns of the runs of a setup.
func (s Setter) rowsHead(u *deck.Setup, w paper.Paper) paper.Block {
	var b paper.Block
	l := s.Bold(paper.Least)
	put := func(x, y paper.Paper, text string) { b.Add(paper.Phrase{}.Say(l, text).Set(w), x, y) }
	shows := l.Width(toward)
	c := s.columnsOf(u, w)
	orders := func(y paper.Paper) {
		for i, name := range orderNames {
			put(c.orders[i], y, name)
		}
	}
	switch {
	case w >= wideRow:
		put(c.name, 0, "run")
		orders(0)
		put(c.lies+liesWide-shows, 0, toward)
		put(c.ticks, 0, "done")
	case w >= liesBeside:
		orders(0)
		put(w-shows, 0, toward)
	default:
		put(w-l.Width(towardShort), 0, towardShort)
		orders(0)
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
		indent = s.columnsOf(u, w).name
	} else {
		b.Add(s.onLines(u, runs, w), 0, 0.3)
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
	at := s.columnsOf(u, w)
	parts := []placed{{at.lies, s.asLies(r)}}
	var each paper.Block // the runs under each other, each with its boxes
	for i, r := range runs {
		name, ticks := s.whose(r, at.orders[0]-at.name-orderAir, len(runs) > 1), s.heightTicks(u, r, w-at.ticks)
		high := max(name.H, ticks.H)
		gap := paper.Paper(0)
		if i > 0 {
			gap = 0.4
		}
		y := each.H + gap
		each.Add(name, at.name, y+(high-name.H)/2)
		each.Add(ticks, at.ticks, y+(high-ticks.H)/2)
	}
	parts = append(parts, placed{0, each})
	if r.Pair != "" {
		parts = append(parts, placed{0, s.letterOf(r)})
	}
	for i, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		parts = append(parts, placed{at.orders[i], s.order(r, side, orderHigh, orderWide-orderAir)})
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
	if w >= liesBeside {
		return s.onTwoLines(u, runs, w)
	}
	r := runs[0]
	at := s.columnsOf(u, w)
	room := w - liesWide - 2 // for the names
	b, x := s.lettered(r)
	// The boxes of one run stand behind its orders, where there is room.
	end := at.orders[2] + s.order(r, r.Leads, orderHigh, orderWide-orderAir).W + 1.5
	behind := s.heightTicks(u, r, w)
	behindOrders := len(runs) == 1 && end+behind.W <= w+paper.Touching
	y := paper.Paper(0)
	for _, r := range runs {
		ticks := s.heightTicks(u, r, room-x)
		switch {
		case behindOrders:
			b.Add(s.whose(r, room-x, false), x, y)
		case ticks.W <= narrowTicks:
			name := s.whose(r, room-x-ticks.W-1, len(runs) > 1)
			b.Add(name, x, y)
			b.Add(ticks, room-ticks.W, y)
			y += max(name.H, ticks.H) + 0.3
		default:
			name := s.whose(r, room-x, len(runs) > 1)
			b.Add(name, x, y)
			b.Add(ticks, x, y+name.H+0.4)
			y += name.H + ticks.H + 0.8
		}
	}
	lies := s.asLies(r)
	const high, liesAt = 6, 0.5
	y = max(b.H, liesAt+lies.H) + 0.3
	if behindOrders {
		b.Add(behind, w-behind.W, y+max(0, (high-behind.H)/2))
	}
	for i, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		word := s.order(r, side, orderHigh, orderWide-orderAir)
		b.Add(word, at.orders[i], y+(high-word.H)/2)
	}
	b.Add(lies, w-lies.W, liesAt) // last, for the orders are read before it
	return b
}

// onTwoLines is a row whose orders have room beside the piece.
func (s Setter) onTwoLines(u *deck.Setup, runs []*deck.Run, w paper.Paper) paper.Block {
	r := runs[0]
	at := s.columnsOf(u, w)
	room := w - liesWide - 3
	b, x := s.lettered(r)
	y := paper.Paper(0)
	for _, r := range runs {
		ticks := s.heightTicks(u, r, 40)
		name := s.whose(r, room-x-ticks.W-3, true)
		b.Add(name, x, y)
		b.Add(ticks, room-ticks.W, y)
		y += max(name.H, ticks.H) + 0.4
	}
	const high = 6
	y = max(y, b.H)
	for i, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		word := s.order(r, side, orderHigh, orderWide-orderAir)
		b.Add(word, at.orders[i], y+(high-word.H)/2)
	}
	lies := s.asLies(r)
	b.Add(lies, w-lies.W, (max(b.H, y+high)-lies.H)/2)
	return b
}

// lettered begins a row with the letter of its run's pair, if there is one, and
// returns where the rest begins.
func (s Setter) lettered(r *deck.Run) (b paper.Block, x paper.Paper) {
	if r.Pair == "" {
		return b, 0
	}
	letter := s.letterOf(r)
	b.Add(letter, 0, 0)
	return b, letter.W + 2
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
