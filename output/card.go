package output

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/setup"
)

// Space between the parts of a card.
const (
	cardGap  Paper = 3
	panelPad Paper = 2
)

// Shares of the row below the drawing from above: the section, and the notes.
const (
	sectionShare = 0.42
	notesShare   = 0.55
	aboveShare   = 0.6 // of the room for both drawings
)

// card lays one card out. What does not fit on one goes on a second: the
// drawings, and more if the notes are long.
func (s setter) card(u *setup.Setup, c *setup.Card) []block {
	w, h := s.cells[0].W, s.cells[0].H
	rows := s.cardWords(u, c)
	words := stack(cardGap, rows...)
	if b, ok := s.whole(words, u, c); ok {
		return []block{b}
	}
	notes := s.notes(c, inFull)
	more := func(what string) func(int) block {
		return func(i int) block {
			if what == "" && i == 0 {
				return block{}
			}
			return s.head(c, w, ", "+cmp.Or(what, "continued"))
		}
	}
	cards := fill(rows, cardGap, h, more(""))
	last := &cards[len(cards)-1]
	if under := paragraphs(notes, w); last.h+cardGap+under.h <= h {
		last.below(under, cardGap)
		notes = nil
	}
	head := s.head(c, w, ", drawings")
	if drawings, ok := s.stacked(head, u, c, notes); ok {
		return append(cards, drawings.block)
	}
	drawings, _ := s.stacked(head, u, c, nil)
	return append(append(cards, drawings.block), fill(lines(notes, w), 0, h, more("notes"))...)
}

// whole puts everything on one card if it can be: with as many cautions in
// full as leave room for drawings that are read from a distance, or at least
// near by.
func (s setter) whole(words block, u *setup.Setup, c *setup.Card) (block, bool) {
	bit := Paper(u.Bit.True().Millimetres())
	var near *block
	for full := min(inFull, len(c.Cautions)); full >= 0; full-- {
		b, ok := s.onOne(words, u, c, s.notes(c, full))
		switch {
		case ok && b.bit >= min(s.grade.bit, bit):
			return b.block, true
		case ok && near == nil && b.bit >= min(nearBy, bit):
			near = &b.block
		}
	}
	if near == nil {
		return block{}, false
	}
	return *near, true
}

// drawn is a block with the two drawings to scale in it.
type drawn struct {
	block
	bit Paper // how large the bit is in the smaller of the two
}

// nearBy is how large a bit must be on paper to be read near by; where that
// cannot be had on one card the drawings go on a second.
const nearBy Paper = 1.5

// onOne puts everything on one card, in the way that gives the larger
// drawings, and reports whether it has room.
func (s setter) onOne(words block, u *setup.Setup, c *setup.Card, notes []phrase) (drawn, bool) {
	best, ok := s.stacked(words, u, c, notes)
	if abreast, fits := s.abreast(words, u, c, notes); fits && (!ok || abreast.bit > best.bit) {
		return abreast, true
	}
	return best, ok
}

// stacked puts the two drawings under what is there, and the notes beside the
// second.
func (s setter) stacked(words block, u *setup.Setup, c *setup.Card, notes []phrase) (drawn, bool) {
	w, h := s.cells[0].W, s.cells[0].H
	rest := h - words.h - 2*cardGap
	beside := paragraphs(notes, w*notesShare)
	across := w
	if len(notes) > 0 {
		across = w * sectionShare
	}
	above, ok := s.fromAbove(u, c, w, rest-max(beside.h, rest*(1-aboveShare)))
	if !ok {
		return drawn{}, false
	}
	lower, ok := s.infeedEnd(u, c, across, rest-above.h)
	lower.add(beside, w-w*notesShare, 0)
	b := stack(cardGap, words, above.block, lower.block)
	return drawn{b, min(above.bit, lower.bit)}, ok && b.h <= h+touching
}

// abreast puts the two drawings beside each other, and the notes under them.
func (s setter) abreast(words block, u *setup.Setup, c *setup.Card, notes []phrase) (drawn, bool) {
	w, h := s.cells[0].W, s.cells[0].H
	below := paragraphs(notes, w)
	rest := h - words.h - below.h - 2*cardGap
	above, ok := s.fromAbove(u, c, w*0.6, rest)
	if !ok {
		return drawn{}, false
	}
	section, ok := s.infeedEnd(u, c, w*0.36, rest)
	above.add(section.block, w-section.w, 0)
	return drawn{stack(cardGap, words, above.block, below), min(above.bit, section.bit)}, ok
}

// cardWords is everything above the drawings to scale, in rows.
func (s setter) cardWords(u *setup.Setup, c *setup.Card) []block {
	w := s.cells[0].W
	orders := s.orders(c, w)
	if room := w - orders.w - 4; room > 25 {
		picture := s.inPlace(u, c, room, orders.h)
		orders.add(picture, w-picture.w, 0)
	} else {
		orders.below(s.inPlace(u, c, w, orders.h*0.8), cardGap)
	}
	rows := []block{s.head(c, w, ""), orders}
	if s.grade.compact {
		rows = append(rows, s.fenceAndHeights(u, c, w))
	} else {
		rows = append(rows, s.fence(u, w), s.heights(c, w))
	}
	return append(rows, s.marks(c, w))
}

// fenceAndHeights is what is set at the table, side by side.
func (s setter) fenceAndHeights(u *setup.Setup, c *setup.Card, w Paper) block {
	body := s.letters(s.grade.body)
	reading := s.reading(u.Fence.NearEdge, w/2)
	near := s.value(s.nearName(u), u.Fence.NearEdge, w/2)
	more := s.length(phrase{}.say(body, "centre"), body, u.Fence.Centre).set(w / 2)
	more.below(s.length(phrase{}.say(body, "far"), body, u.Fence.FarEdge).set(w/2), 0.5)
	near.add(more, reading.w+4, max(near.h-reading.h, near.h-more.h))
	heights := func(w Paper) block {
		return stack(1, phrase{}.say(s.bold(s.grade.body), "HEIGHTS").set(w),
			s.ladder(s.texts(c.Heights, s.bold(s.grade.body)), w), s.deepest(c, s.letters(least)).set(w))
	}
	const gap, narrowest = 5, 40
	if right := near.w + gap; w-right >= narrowest {
		near.add(heights(w-right), right, 0)
	} else {
		near.below(heights(w), 1)
	}
	near.w = w
	return near
}

// nearName is what the fence distance is called.
func (s setter) nearName(u *setup.Setup) string {
	if u.Fence.NearEdge >= 0 {
		return "FENCE to near edge, " + s.scale.Unit.String()
	}
	return "FENCE, near edge behind it, " + s.scale.Unit.String()
}

// head names the card, the piece and the cut, and counts the pieces.
func (s setter) head(c *setup.Card, w Paper, more string) block {
	number := framed(phrase{}.say(s.bold(s.grade.number), c.Number()).set(w), 1, thick)
	side := w - number.w - 4
	name := phrase{}.say(s.bold(s.grade.title), c.Piece.Name+more).set(side)
	name.below(s.cutLine(c).set(side), 0)
	name.below(s.tally(c.Piece.Count, side), 1)
	b := number
	b.add(name, number.w+4, 0)
	return b
}

// cutLine says which cut of the piece this is.
func (s setter) cutLine(c *setup.Card) phrase {
	body := s.letters(s.grade.body)
	p := phrase{}.say(s.bold(s.grade.body), c.Cut.Kind.Name).say(body, c.Cut.Name)
	if c.Channel.Part != "" {
		p = p.tie(body, ",").say(body, c.Channel.Part)
	}
	if c.Run.Of > 1 {
		how := "fence position"
		if c.Run.Turned {
			how = "pass, piece turned end for end between,"
		}
		p = p.tie(body, ",").say(body, fmt.Sprintf("%s %d of %d", how, c.Run.Position, c.Run.Of))
	}
	p = p.tie(body, ",").say(body, c.Piece.Wood.String()).tie(body, ",")
	return s.length(p, body, c.Length).say(body, s.scale.Unit.String()+" along the feed")
}

// orders are the three orders that say how the work lies on the table.
func (s setter) orders(c *setup.Card, w Paper) block {
	say := func(side joinery.Side, how string) block {
		return phrase{}.say(s.bold(s.grade.order), strings.ToUpper(side.String())).
			say(s.letters(s.grade.order), how).set(w)
	}
	return stack(0, say(c.Run.Down, "side down"), say(c.Run.Fence, "to the fence"), say(c.Leads, "end leads"))
}

// fence gives the three distances from the fence.
func (s setter) fence(u *setup.Setup, w Paper) block {
	return framed(columns(w-2*panelPad, 3, []func(Paper) block{
		func(w Paper) block { return s.value(s.nearName(u), u.Fence.NearEdge, w) },
		func(w Paper) block { return s.value("to centre", u.Fence.Centre, w) },
		func(w Paper) block { return s.value("to far edge", u.Fence.FarEdge, w) },
	}), panelPad, thin)
}

// value is a length to be read from a distance under a few small words.
func (s setter) value(label string, l joinery.Length, w Paper) block {
	letters := s.letters(s.grade.body)
	if letters.width(label) > w {
		letters.Height = least
	}
	return stack(0.3, phrase{}.say(letters, label).set(w), s.reading(l, w))
}

// reading is a length to be read from a distance, as high as if it had a
// fraction, so that neighbours stand in line.
func (s setter) reading(l joinery.Length, w Paper) block {
	letters := s.bold(s.grade.value)
	n := s.number(letters, l)
	n.fraction = s.grade.fraction
	b := s.exactly(nil, n, l).set(w)
	half := number{letters, s.grade.fraction, joinery.Reading{Num: 1, Den: 2}}
	if high := half.rise() + half.drop(); b.h < high {
		moved := block{w: b.w, h: high}
		moved.add(b, 0, half.rise()-word{letters: letters}.rise())
		return moved
	}
	return b
}

// heights lists the heights of the bit that the card uses.
func (s setter) heights(c *setup.Card, w Paper) block {
	label := phrase{}.say(s.bold(s.grade.body), "HEIGHTS").set(w)
	ladder := s.ladder(s.texts(c.Heights, s.bold(s.grade.body)), w-label.w-4)
	b := block{}
	b.add(label, 0, max(0, (ladder.h-label.h)/2))
	b.add(ladder, label.w+4, 0)
	return b
}

// marks are two panels: where the work stands at the start and at the stop.
func (s setter) marks(c *setup.Card, w Paper) block {
	lead := strings.ToUpper(c.Leads.String())
	return s.panels(w, []func(Paper) block{
		func(w Paper) block {
			if c.Start == nil {
				return s.open("START: feed in", "No mark: feed in from the right, "+lead+" end first.", w)
			}
			return s.mark("START:", "drop on,", "TRAILING edge", "(left)", c.Start, c.Reach(false, s.reach).Guide, w)
		},
		func(w Paper) block {
			if c.Stop == nil {
				return s.open("STOP: run out", "No mark: run out to the left, past the bit.", w)
			}
			return s.mark("STOP:", "lift off,", "LEADING edge", "(right)", c.Stop, c.Reach(true, s.reach).Guide, w)
		},
	})
}

// panels sets blocks side by side in frames of one height.
func (s setter) panels(w Paper, insides []func(Paper) block) block {
	n := len(insides)
	each := (w-Paper(n-1)*cardGap)/Paper(n) - 2*panelPad
	var blocks []block
	var high Paper
	for _, inside := range insides {
		b := inside(each)
		b.w = each
		blocks = append(blocks, b)
		high = max(high, b.h)
	}
	var all block
	for _, b := range blocks {
		b.h = high
		all.beside(framed(b, panelPad, thin), cardGap)
	}
	return all
}

// open is the panel of an end of the cut that has no mark.
func (s setter) open(head, words string, w Paper) block {
	return stack(0, phrase{}.say(s.bold(s.grade.body), head).set(w), phrase{}.say(s.letters(s.grade.body), words).set(w))
}

// mark is the panel of one mark.
func (s setter) mark(head, how, edge, side string, m *setup.Mark, guide setup.Guide, w Paper) block {
	small := s.letters(least)
	title := phrase{}.say(s.bold(s.grade.body), head).say(s.letters(s.grade.body), how+" "+edge+" "+side).set(w)
	centre := phrase{}.say(small, "From the centre: lead past")
	then := "tail before"
	if s.grade.compact {
		title = phrase{}.say(s.bold(s.grade.body), head).say(s.letters(s.grade.body), strings.TrimSuffix(edge, " edge")).say(small, side).set(w)
		centre, then = phrase{}.say(small, "centre: lead"), "tail"
	}
	ways := s.ways(m, guide, w)
	centre = s.length(centre, small, m.LeadPastCentre).tie(small, ",").say(small, then)
	centre = s.length(centre, small, m.TailBeforeCentre)
	return stack(1, title, ways, centre.set(w))
}

// ways sets the two ways to find a mark side by side, or under each other
// where the numbers are too wide for that. The end of the work that the fence
// reaches at this mark is said to be the one to mark.
func (s setter) ways(m *setup.Mark, guide setup.Guide, w Paper) block {
	const gap = 3
	column := (w - gap) / 2
	lead, tail := "layout line on the edge; leading end past it", "tail end before it"
	if s.grade.compact {
		lead, tail = "line on it; lead past it", "tail before it"
	}
	set := func(w Paper) (block, block) {
		return s.way(lead, m.LeadPastEdge, guide == setup.ByLead, w), s.way(tail, m.TailBeforeEdge, guide == setup.ByTail, w)
	}
	left, right := set(column)
	if max(left.w, right.w) > column+touching {
		left, right = set(w)
		return stack(1, left, right)
	}
	left.add(right, column+gap, 0)
	return left
}

func (s setter) way(label string, l joinery.Length, mark bool, w Paper) block {
	words := phrase{}.say(s.letters(least), label)
	if mark {
		words = append(phrase{}.say(s.bold(least), "MARK THE FENCE:"), words...)
	}
	return stack(0, s.reading(l, w), words.set(w))
}

// noteGap is the space between notes.
const noteGap Paper = 1

// notes say what to mind, some cautions in full, and what to do.
func (s setter) notes(c *setup.Card, full int) []phrase {
	body, bold, small := s.letters(s.grade.body), s.bold(s.grade.body), s.letters(least)
	full = min(full, len(c.Cautions))
	var all []phrase
	for _, caution := range c.Cautions[:full] {
		all = append(all, phrase{}.say(bold, caution.Weight.String()).say(body, caution.Words))
	}
	if rest := c.Cautions[full:]; len(rest) > 0 {
		all = append(all, s.byCode(rest))
	}
	all = append(all, s.todo(c, c.Cautions[:full]))
	if c.Cut.Note != "" {
		all = append(all, phrase{}.say(bold, "Note:").say(body, c.Cut.Note))
	}
	if lines := jointLines(c, s.scale); len(lines) > 0 {
		all = append(all, phrase{}.say(small, strings.Join(lines, " ")))
	}
	var last phrase
	if !s.grade.compact {
		last = s.deepest(c, small)
	}
	return append(all, last.say(small, setup.AlwaysMind))
}

// todo says what to do, step by step, and what becomes of round ends.
func (s setter) todo(c *setup.Card, inFull []setup.Caution) phrase {
	body, bold := s.letters(s.grade.body), s.bold(s.grade.body)
	var p phrase
	for i, step := range steps(c, inFull) {
		words := step.long
		if s.grade.compact {
			words = step.short
		}
		p = p.say(bold, strconv.Itoa(i+1)).say(body, words)
	}
	if !c.Cut.Square && (c.Begin == setup.Drop || c.End == setup.Lift) {
		p = s.length(p.say(body, "The ends stay round, radius"), body, c.Run.Bit.True()/2).tie(body, ".")
	}
	return p
}

// byCode names cautions by their numbers on the page of cautions and a word.
func (s setter) byCode(cautions []setup.Caution) phrase {
	body, bold := s.letters(s.grade.body), s.bold(s.grade.body)
	var p phrase
	for i, c := range cautions {
		if i == 0 || cautions[i-1].Weight != c.Weight {
			p = p.say(bold, c.Weight.String())
		}
		p = p.say(body, fmt.Sprintf("%d %s", c.Number, c.Code))
		if i < len(cautions)-1 {
			p = p.tie(body, ",")
		}
	}
	return p.say(body, "(see the page of cautions)")
}

// paragraphs sets phrases under each other, with a little space between.
func paragraphs(phrases []phrase, w Paper) block {
	var b block
	for _, p := range phrases {
		if len(p) > 0 {
			b.below(p.set(w), noteGap)
		}
	}
	return b
}

// lines sets phrases as a block for each line, to be poured over cards.
func lines(phrases []phrase, w Paper) []block {
	var all []block
	for _, p := range phrases {
		for _, l := range p.lines(w) {
			all = append(all, l.block())
		}
	}
	return all
}

// deepest says how deep one pass may be, and why.
func (s setter) deepest(c *setup.Card, l Letters) phrase {
	return s.length(phrase{}.say(l, "No pass deeper than"), l, c.Cap.Depth).tie(l, ":").say(l, c.Cap.Rule).tie(l, ".")
}

// columns sets blocks side by side in equal widths.
func columns(w, gap Paper, all []func(Paper) block) block {
	var b block
	n := Paper(len(all))
	each := (w - (n-1)*gap) / n
	for i, one := range all {
		b.add(one(each), Paper(i)*(each+gap), 0)
	}
	b.w = w
	return b
}

// framed draws a frame round a block.
func framed(inner block, pad Paper, pen Pen) block {
	w, h := inner.w+2*pad, inner.h+2*pad
	b := figure("frame", w, h, func(c Canvas, at Point) { c.Stroke(pen, Box{at.X, at.Y, w, h}.Path()...) })
	b.add(inner, pad, pad)
	return b
}
