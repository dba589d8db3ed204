package output

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// cardWords is everything above the drawings to scale, in rows.
func (s setter) cardWords(u *deck.Setup, r *deck.Run) []block {
	w := s.cells[0].W
	orders := s.orders(r, w)
	switch room := w - orders.w - 4; {
	case room >= besideFlag:
		orders.add(s.inPlace(u, r, room, orders.h), w-room, 0)
	case room > narrowPicture: // its words would fill it
		_, caption := s.flagWords(r, 0, 0)
		orders.add(picture(u, r, block{}, room, orders.h), w-room, 0)
		orders.below(caption.set(w), labelGap)
	default:
		orders.below(s.inPlace(u, r, w, orders.h*0.8), cardGap)
	}
	rows := []block{s.head(r, w)}
	if s.slips.mind > 0 {
		rows[0].below(s.mindFirst(r).set(w), 0.5)
	}
	rows = append(rows, orders)
	table := []block{s.fence(u, w), s.heights(r, w)}
	if s.grade.compact {
		table = []block{s.fenceAndHeights(u, r, w)}
	}
	if stack(cardGap, table...).h > s.cells[0].H/3 {
		// So many heights are poured over as many cards as they need.
		table = append([]block{s.fence(u, w)}, s.headed("HEIGHTS", s.rungs(s.texts(r.Heights, s.bold(s.grade.height)), w))...)
	}
	rows = append(rows, table...)
	return append(rows, s.marks(r, w))
}

// headed puts bold words over the first of some rows.
func (s setter) headed(words string, rows []block) []block {
	head := phrase{}.say(s.bold(s.grade.body), words).set(s.paper.W)
	return append([]block{stack(1, head, rows[0])}, rows[1:]...)
}

// fenceAndHeights is what is set at the table, side by side.
func (s setter) fenceAndHeights(u *deck.Setup, r *deck.Run, w Paper) block {
	body, aside := s.letters(s.grade.body), s.letters(s.grade.aside)
	reading := s.reading(u.Fence.NearEdge, w/2)
	near := s.value(s.nearName(u), u.Fence.NearEdge, w/2)
	room := min(w/2, w-reading.w-4)
	more := s.length(phrase{}.say(body, "centre"), aside, u.Fence.Centre).set(room)
	more.below(s.length(phrase{}.say(body, "far"), aside, u.Fence.FarEdge).set(room), 0.5)
	near.add(more, reading.w+4, max(near.h-reading.h, near.h-more.h))
	heights := func(w Paper) block {
		return stack(1, phrase{}.say(s.bold(s.grade.body), "HEIGHTS").set(w),
			s.ladder(s.texts(r.Heights, s.bold(s.grade.height)), w))
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
func (s setter) nearName(u *deck.Setup) string {
	name := "FENCE to near edge"
	if u.Fence.NearEdge < 0 {
		name = "FENCE, near edge behind it"
	}
	if s.other == nil { // else the unit is beside the number
		name += ", " + s.scale.Unit.String()
	}
	return name
}

// head names the card, the piece and the cut, and counts the pieces.
func (s setter) head(r *deck.Run, w Paper) block {
	return s.named(r, w, 1, "", func(side Paper) block {
		return stack(1, s.cutLine(r).set(side), s.tally(r.Piece.Count, side))
	})
}

// again is the head of the further slips that a card takes: what is ticked off
// is ticked on the first.
func (s setter) again(r *deck.Run, w Paper, slip int, more string) block {
	return s.named(r, w, slip, more, func(side Paper) block {
		return phrase{}.say(s.bold(s.grade.body), r.Cut.Kind.Name).say(s.letters(s.grade.body), r.Cut.Name).set(side)
	})
}

// named sets the number of a card, with the slip under it, and beside it the
// name of the piece and what stands under that.
func (s setter) named(r *deck.Run, w Paper, slip int, more string, under func(w Paper) block) block {
	b := framed(phrase{}.say(s.bold(s.grade.number), r.Number()).set(w), 1, thick)
	b.below(s.slips.label(s, slip), 0.5)
	left := b.w + 4
	name := phrase{}.say(s.bold(s.grade.title), r.Piece.Name+more).set(w - left)
	name.below(under(w-left), 0)
	b.add(name, left, 0)
	return b
}

// cutLine says which cut of the piece this is.
func (s setter) cutLine(r *deck.Run) phrase {
	body := s.letters(s.grade.body)
	p := phrase{}.say(s.bold(s.grade.body), r.Cut.Kind.Name).say(body, r.Cut.Name)
	if r.Channel.Part != "" {
		p = p.tie(body, ",").say(body, r.Channel.Part)
	}
	if r.Step.Of > 1 {
		how := "fence position"
		if r.Step.Turned {
			how = "pass, piece turned end for end between,"
		}
		p = p.tie(body, ",").say(body, fmt.Sprintf("%s %d of %d", how, r.Step.Position, r.Step.Of))
	}
	p = p.tie(body, ",").say(body, r.Piece.Wood.String()).tie(body, ",")
	return s.measure(p, body, r.Length).say(body, "along the feed")
}

// orders are the three orders that say how the work lies on the table.
func (s setter) orders(r *deck.Run, w Paper) block {
	say := func(side joinery.Side, how string) block {
		return phrase{}.say(s.bold(s.grade.order), strings.ToUpper(side.String())).
			say(s.letters(s.grade.order), how).set(w)
	}
	return stack(0, say(r.Step.Down, "side down"), say(r.Step.Fence, "to the fence"), say(r.Leads, "end leads"))
}

// fence gives the three distances from the fence, their numbers in line.
func (s setter) fence(u *deck.Setup, w Paper) block {
	const gap = 3
	w -= 2 * panelPad
	column := (w - 2*gap) / 3
	var labels []block
	for _, name := range []string{s.nearName(u), "to centre", "to far edge"} {
		labels = append(labels, s.label(name, column))
	}
	high := max(labels[0].h, labels[1].h, labels[2].h)
	b := block{w: w}
	var under block // for numbers that are too wide to stand side by side
	for i, l := range []joinery.Length{u.Fence.NearEdge, u.Fence.Centre, u.Fence.FarEdge} {
		x := Paper(i) * (column + gap)
		number := s.reading(l, column)
		under.below(stack(labelGap, labels[i], s.reading(l, w)), 1)
		b.add(labels[i], x, high-labels[i].h)
		b.add(number, x, high+labelGap)
		if number.w > column {
			b.w = max(b.w, w+number.w)
		}
	}
	if b.w > w {
		under.w = w
		b = under
	}
	return framed(b, panelPad, thin)
}

// labelGap is the space between a number to be read from a distance and the
// small words over it.
const labelGap Paper = 0.3

// label sets the words over a number, smaller where they are too long.
func (s setter) label(name string, w Paper) block {
	letters := s.letters(s.grade.body)
	if letters.width(name) > w {
		letters.Height = least
	}
	return phrase{}.say(letters, name).set(w)
}

// value is a length to be read from a distance under a few small words.
func (s setter) value(name string, l joinery.Length, w Paper) block {
	return stack(labelGap, s.label(name, w), s.reading(l, w))
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
func (s setter) heights(r *deck.Run, w Paper) block {
	label := phrase{}.say(s.bold(s.grade.body), "HEIGHTS").set(w)
	ladder := s.ladder(s.texts(r.Heights, s.bold(s.grade.height)), w-label.w-4)
	b := block{}
	b.add(label, 0, max(0, (ladder.h-label.h)/2))
	b.add(ladder, label.w+4, 0)
	return b
}

// framed draws a frame round a block.
func framed(inner block, pad Paper, pen Pen) block {
	w, h := inner.w+2*pad, inner.h+2*pad
	b := figure("frame", w, h, func(c Canvas, at Point) { c.Stroke(pen, Box{at.X, at.Y, w, h}.Path()...) })
	b.add(inner, pad, pad)
	return b
}
