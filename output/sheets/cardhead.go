package sheets

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// cardWords is everything above the drawings to scale, in rows.
func (s Setter) cardWords(u *deck.Setup, r *deck.Run) []paper.Block {
	w := s.cells[0].W
	orders := s.orders(r, w)
	switch room := w - orders.W - 4; {
	case room >= besideFlag:
		orders.Add(s.inPlace(u, r, room, orders.H), w-room, 0)
	case room > narrowPicture: // its words would fill it
		_, caption := s.flagWords(r, 0, 0)
		orders.Add(picture(u, r, paper.Block{}, room, orders.H), w-room, 0)
		orders.Below(caption.Set(w), labelGap)
	default:
		orders.Below(s.inPlace(u, r, w, orders.H*0.8), cardGap)
	}
	rows := []paper.Block{s.head(r, w)}
	if s.slips.Mind > 0 {
		rows[0].Below(s.mindFirst(r).Set(w), 0.5)
	}
	rows = append(rows, orders)
	table := []paper.Block{s.fence(u, w), s.heights(r, w)}
	if s.grade.compact {
		table = []paper.Block{s.fenceAndHeights(u, r, w)}
	}
	if paper.Stack(cardGap, table...).H > s.cells[0].H/3 {
		// So many heights are poured over as many cards as they need.
		table = append([]paper.Block{s.fence(u, w)}, s.headed("HEIGHTS", s.rungs(s.texts(r.Heights, s.bold(s.grade.height)), w))...)
	}
	rows = append(rows, table...)
	return append(rows, s.marks(r, w))
}

// headed puts bold words over the first of some rows.
func (s Setter) headed(words string, rows []paper.Block) []paper.Block {
	head := paper.Phrase{}.Say(s.bold(s.grade.body), words).Set(s.paper.W)
	return append([]paper.Block{paper.Stack(1, head, rows[0])}, rows[1:]...)
}

// fenceAndHeights is what is set at the table, side by side.
func (s Setter) fenceAndHeights(u *deck.Setup, r *deck.Run, w paper.Paper) paper.Block {
	body, aside := s.Letters(s.grade.body), s.Letters(s.grade.aside)
	reading := s.reading(u.Fence.NearEdge, w/2)
	near := s.value(s.nearName(u), u.Fence.NearEdge, w/2)
	room := min(w/2, w-reading.W-4)
	more := s.Length(paper.Phrase{}.Say(body, "centre"), aside, u.Fence.Centre).Set(room)
	more.Below(s.Length(paper.Phrase{}.Say(body, "far"), aside, u.Fence.FarEdge).Set(room), 0.5)
	near.Add(more, reading.W+4, max(near.H-reading.H, near.H-more.H))
	heights := func(w paper.Paper) paper.Block {
		return paper.Stack(1, paper.Phrase{}.Say(s.bold(s.grade.body), "HEIGHTS").Set(w),
			s.ladder(s.texts(r.Heights, s.bold(s.grade.height)), w))
	}
	const gap, narrowest = 5, 40
	if right := near.W + gap; w-right >= narrowest {
		near.Add(heights(w-right), right, 0)
	} else {
		near.Below(heights(w), 1)
	}
	near.W = w
	return near
}

// nearName is what the fence distance is called.
func (s Setter) nearName(u *deck.Setup) string {
	name := "FENCE to near edge"
	if u.Fence.NearEdge < 0 {
		name = "FENCE, near edge behind it"
	}
	if s.other == nil { // else the unit is beside the number
		name += ", " + s.Scale.Unit.String()
	}
	return name
}

// head names the card, the piece and the cut, and counts the pieces.
func (s Setter) head(r *deck.Run, w paper.Paper) paper.Block {
	return s.named(r, w, 1, "", func(side paper.Paper) paper.Block {
		return paper.Stack(1, s.cutLine(r).Set(side), s.tally(r.Piece.Count, side))
	})
}

// again is the head of the further slips that a card takes: what is ticked off
// is ticked on the first.
func (s Setter) again(r *deck.Run, w paper.Paper, slip int, more string) paper.Block {
	return s.named(r, w, slip, more, func(side paper.Paper) paper.Block {
		return paper.Phrase{}.Say(s.bold(s.grade.body), r.Cut.Kind.Name).Say(s.Letters(s.grade.body), r.Cut.Name).Set(side)
	})
}

// named sets the number of a card, with the slip under it, and beside it the
// name of the piece and what stands under that.
func (s Setter) named(r *deck.Run, w paper.Paper, slip int, more string, under func(w paper.Paper) paper.Block) paper.Block {
	b := framed(paper.Phrase{}.Say(s.bold(s.grade.number), r.Number()).Set(w), 1, paper.Thick)
	b.Below(s.slips.label(s, slip), 0.5)
	left := b.W + 4
	name := paper.Phrase{}.Say(s.bold(s.grade.title), r.Piece.Name+more).Set(w - left)
	name.Below(under(w-left), 0)
	b.Add(name, left, 0)
	return b
}

// cutLine says which cut of the piece this is.
func (s Setter) cutLine(r *deck.Run) paper.Phrase {
	body := s.Letters(s.grade.body)
	p := paper.Phrase{}.Say(s.bold(s.grade.body), r.Cut.Kind.Name).Say(body, r.Cut.Name)
	if r.Channel.Part != "" {
		p = p.Tie(body, ",").Say(body, r.Channel.Part)
	}
	if r.Step.Of > 1 {
		how := "fence position"
		if r.Step.Turned {
			how = "pass, piece turned end for end between,"
		}
		p = p.Tie(body, ",").Say(body, fmt.Sprintf("%s %d of %d", how, r.Step.Position, r.Step.Of))
	}
	p = p.Tie(body, ",").Say(body, r.Piece.Wood.String()).Tie(body, ",")
	return s.measure(p, body, r.Length).Say(body, "along the feed")
}

// orders are the three orders that say how the work lies on the table.
func (s Setter) orders(r *deck.Run, w paper.Paper) paper.Block {
	say := func(side joinery.Side, how string) paper.Block {
		return paper.Phrase{}.Say(s.bold(s.grade.order), strings.ToUpper(r.Shown(side))).
			Say(s.Letters(s.grade.order), how).Set(w)
	}
	return paper.Stack(0, say(r.Step.Down, "side down"), say(r.Step.Fence, "to the fence"), say(r.Leads, "end leads"))
}

// fence gives the three distances from the fence, their numbers in line.
func (s Setter) fence(u *deck.Setup, w paper.Paper) paper.Block {
	const gap = 3
	w -= 2 * panelPad
	column := (w - 2*gap) / 3
	var labels []paper.Block
	for _, name := range []string{s.nearName(u), "to centre", "to far edge"} {
		labels = append(labels, s.label(name, column))
	}
	high := max(labels[0].H, labels[1].H, labels[2].H)
	b := paper.Block{W: w}
	var under paper.Block // for numbers that are too wide to stand side by side
	for i, l := range []joinery.Length{u.Fence.NearEdge, u.Fence.Centre, u.Fence.FarEdge} {
		x := paper.Paper(i) * (column + gap)
		number := s.reading(l, column)
		under.Below(paper.Stack(labelGap, labels[i], s.reading(l, w)), 1)
		b.Add(labels[i], x, high-labels[i].H)
		b.Add(number, x, high+labelGap)
		if number.W > column {
			b.W = max(b.W, w+number.W)
		}
	}
	if b.W > w {
		under.W = w
		b = under
	}
	return framed(b, panelPad, paper.Thin)
}

// labelGap is the space between a number to be read from a distance and the
// small words over it.
const labelGap paper.Paper = 0.3

// label sets the words over a number, smaller where they are too long.
func (s Setter) label(name string, w paper.Paper) paper.Block {
	letters := s.Letters(s.grade.body)
	if letters.Width(name) > w {
		letters.Height = paper.Least
	}
	return paper.Phrase{}.Say(letters, name).Set(w)
}

// value is a length to be read from a distance under a few small words.
func (s Setter) value(name string, l joinery.Length, w paper.Paper) paper.Block {
	return paper.Stack(labelGap, s.label(name, w), s.reading(l, w))
}

// reading is a length to be read from a distance, as high as if it had a
// fraction, so that neighbours stand in line.
func (s Setter) reading(l joinery.Length, w paper.Paper) paper.Block {
	letters := s.bold(s.grade.value)
	n := s.number(letters, l)
	n.Fraction = s.grade.Fraction
	b := s.exactly(nil, n, l).Set(w)
	half := paper.Number{Letters: letters, Fraction: s.grade.Fraction, Reading: joinery.Reading{Num: 1, Den: 2}}
	if high := half.Rise() + half.Drop(); b.H < high {
		moved := paper.Block{W: b.W, H: high}
		moved.Add(b, 0, half.Rise()-paper.Word{Letters: letters}.Rise())
		return moved
	}
	return b
}

// heights lists the heights of the bit that the card uses.
func (s Setter) heights(r *deck.Run, w paper.Paper) paper.Block {
	label := paper.Phrase{}.Say(s.bold(s.grade.body), "HEIGHTS").Set(w)
	ladder := s.ladder(s.texts(r.Heights, s.bold(s.grade.height)), w-label.W-4)
	b := paper.Block{}
	b.Add(label, 0, max(0, (ladder.H-label.H)/2))
	b.Add(ladder, label.W+4, 0)
	return b
}

// framed draws a frame round a block.
func framed(inner paper.Block, pad paper.Paper, pen paper.Pen) paper.Block {
	w, h := inner.W+2*pad, inner.H+2*pad
	b := paper.Figure("frame", w, h, func(c paper.Canvas, at paper.Point) { c.Stroke(pen, paper.Box{X: at.X, Y: at.Y, W: w, H: h}.Path()...) })
	b.Add(inner, pad, pad)
	return b
}
