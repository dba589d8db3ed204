package output

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup"
)

// Space between the parts of a card.
const (
	cardGap  Paper = 3
	panelPad Paper = 2
)

// card lays one card out. What does not fit goes on a second one.
func (s setter) card(u *setup.Setup, c *setup.Card) []block {
	w, h := s.cells[0].W, s.cells[0].H
	words := s.cardWords(u, c, w)
	rest := h - words.h - cardGap
	notes := s.notes(c, w*0.55)
	above := s.fromAbove(u, c, w, rest-cardGap-max(notes.h, rest*0.4))
	b := words
	b.below(above, cardGap)
	lower := s.infeedEnd(u, c, w*0.42, rest-cardGap-above.h)
	lower.add(notes, w-w*0.55, 0)
	b.below(lower, cardGap)
	return []block{b}
}

// cardWords is everything above the drawings.
func (s setter) cardWords(u *setup.Setup, c *setup.Card, w Paper) block {
	b := s.head(c, w, "")
	orders := s.orders(c, w)
	picture := s.inPlace(u, c, w-orders.w-4, orders.h)
	orders.add(picture, w-picture.w, 0)
	b.below(orders, cardGap)
	b.below(s.fence(u, w), cardGap)
	b.below(s.heights(c, w), cardGap)
	b.below(s.marks(c, w), cardGap)
	return b
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
	return s.length(p, body, c.Length).say(body, "along the feed")
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
	near := "FENCE to near edge"
	if u.Fence.NearEdge < 0 {
		near += ", behind the face"
	}
	return framed(columns(w-2*panelPad, 3, []func(Paper) block{
		func(w Paper) block { return s.value(near, u.Fence.NearEdge, w) },
		func(w Paper) block { return s.value("to centre", u.Fence.Centre, w) },
		func(w Paper) block { return s.value("to far edge", u.Fence.FarEdge, w) },
	}), panelPad, thin)
}

// value is a length to be read from a distance under a few small words.
func (s setter) value(label string, l joinery.Length, w Paper) block {
	return stack(0, phrase{}.say(s.letters(s.grade.body), label).set(w), s.reading(l, w))
}

// reading is a length to be read from a distance, as high as if it had a
// fraction, so that neighbours stand in line.
func (s setter) reading(l joinery.Length, w Paper) block {
	letters := s.bold(s.grade.value)
	b := s.length(nil, letters, l).set(w)
	half := number{letters, joinery.Reading{Num: 1, Den: 2}}
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
			return s.mark("START: drop on,", "TRAILING edge (left)", c.Start, w)
		},
		func(w Paper) block {
			if c.Stop == nil {
				return s.open("STOP: run out", "No mark: run out to the left, past the bit.", w)
			}
			return s.mark("STOP: lift off,", "LEADING edge (right)", c.Stop, w)
		},
	})
}

// panels sets blocks side by side in frames of one height, or under each other
// where the card is narrow.
func (s setter) panels(w Paper, insides []func(Paper) block) block {
	n := len(insides)
	if w < 150 {
		n = 1
	}
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
		if n > 1 {
			b.h = high
			all.beside(framed(b, panelPad, thin), cardGap)
		} else {
			all.below(framed(b, panelPad, thin), cardGap)
		}
	}
	return all
}

// open is the panel of an end of the cut that has no mark.
func (s setter) open(head, words string, w Paper) block {
	return stack(0, phrase{}.say(s.bold(s.grade.body), head).set(w), phrase{}.say(s.letters(s.grade.body), words).set(w))
}

// mark is the panel of one mark.
func (s setter) mark(head, edge string, m *setup.Mark, w Paper) block {
	small := s.letters(least)
	title := phrase{}.say(s.bold(s.grade.body), head).say(s.letters(s.grade.body), edge).set(w)
	ways := columns(w, 3, []func(Paper) block{
		func(w Paper) block { return s.way("layout line on the edge; leading end past it", m.LeadPastEdge, w) },
		func(w Paper) block { return s.way("tail end before it", m.TailBeforeEdge, w) },
	})
	middle := s.length(phrase{}.say(small, "From the centre: lead past"), small, m.LeadPastCentre)
	middle = s.length(middle.tie(small, ",").say(small, "tail before"), small, m.TailBeforeCentre)
	return stack(1, title, ways, middle.set(w))
}

func (s setter) way(label string, l joinery.Length, w Paper) block {
	return stack(0, s.reading(l, w), phrase{}.say(s.letters(least), label).set(w))
}

// notes say what to do, what happens to round ends, and what to mind.
func (s setter) notes(c *setup.Card, w Paper) block {
	body := s.letters(s.grade.body)
	var b block
	for _, step := range steps(c) {
		b.below(phrase{}.say(body, step).set(w), 1)
	}
	deepest := s.length(phrase{}.say(body, "No pass deeper than"), body, c.Cap.Depth).tie(body, ":").say(body, c.Cap.Rule).tie(body, ".")
	b.below(deepest.set(w), 1)
	if c.Cut.Note != "" {
		b.below(phrase{}.say(s.bold(s.grade.body), "Note:").say(body, c.Cut.Note).set(w), 1)
	}
	return b
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
