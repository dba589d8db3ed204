package sheets

import (
	"fmt"
	"slices"
	"strconv"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// header is the card that stands before the cards of a setup; a second one
// follows where the list of cards is long.
func (s Setter) header(d *deck.Deck, i int) []paper.Block {
	u := &d.Setups[i]
	w, h := s.cells[0].W, s.cells[0].H
	heading := func(sheet int) paper.Block {
		if sheet == 0 {
			return framed(paper.Phrase{}.Say(s.bold(s.grade.number), "SETUP "+strconv.Itoa(u.Number)).Set(w), 1.5, paper.Pen{Width: 1})
		}
		return paper.Phrase{}.Say(s.bold(s.grade.title), fmt.Sprintf("SETUP %d, continued", u.Number)).Set(w)
	}
	settings := s.settings(d, i, w)
	pour := func(list []paper.Block) []paper.Block { return fill(slices.Concat(settings, list), 1, h, heading) }
	all := pour(s.cardList(u, w))
	if len(all) > 1 {
		if fewer := pour(twoAbreast(s.cardList(u, (w-cardGap)/2), w)); len(fewer) < len(all) {
			return fewer
		}
	}
	return all
}

// twoAbreast puts rows side by side by twos, to be read across.
func twoAbreast(rows []paper.Block, w paper.Paper) []paper.Block {
	var all []paper.Block
	for pair := range slices.Chunk(rows, 2) {
		row := pair[0]
		if len(pair) == 2 {
			row.Add(pair[1], (w+cardGap)/2, 0)
		}
		all = append(all, row)
	}
	return all
}

// settings is what is set for the whole setup, in rows.
func (s Setter) settings(d *deck.Deck, i int, w paper.Paper) []paper.Block {
	u := &d.Setups[i]
	body, bold := s.Letters(s.grade.body), s.bold(s.grade.body)
	title := s.bold(s.grade.title)
	rows := []paper.Block{
		s.Length(paper.Phrase{}.Say(title, u.Bit.Name).Tie(title, ","), title, u.Bit.True()).Set(w),
		paper.Phrase{}.Say(body, changed(d, i)).Set(w),
		s.fence(u, w),
		s.fenceDrawing(u, w),
	}
	rows = append(rows, s.headed("HEIGHTS, climbing", s.climbs(u, title, w))...)
	if kept := s.keptRows(u.Kept, w); kept != nil {
		rows = append(rows, paper.Stack(1, kept...))
	}
	rows = append(rows, paper.Phrase{}.Say(bold, "CARDS").Say(body, fmt.Sprintf("%d, for %s", len(u.Runs), wording.Plural(pieces(u), "piece"))).Set(w))
	for k := range rows {
		rows[k] = spaced(rows[k])
	}
	return rows
}

// climbs are the ladders of a setup in rows: between stop blocks the cards for
// which these stand alike climb theirs before the next are set.
func (s Setter) climbs(u *deck.Setup, l paper.Letters, w paper.Paper) []paper.Block {
	climbs := u.Climbs()
	if !s.blocks || len(climbs) == 1 && !climbs[0].Blocks {
		return s.rungs(s.texts(u.Heights, l), w)
	}
	var rows []paper.Block
	for _, c := range climbs {
		set := paper.Phrase{}.Say(s.bold(s.grade.body), "STOP BLOCKS").Say(s.Letters(s.grade.body), wording.BlocksLine(c))
		ladder := s.rungs(s.texts(c.Heights, l), w)
		rows = append(append(rows, paper.Stack(1, set.Set(w), ladder[0])), ladder[1:]...)
	}
	return rows
}

// spaced puts a little space over a row.
func spaced(b paper.Block) paper.Block {
	s := paper.Block{H: cardGap - 1}
	s.Add(b, 0, s.H)
	return s
}

// changed says what is to be changed since the setup before.
func changed(d *deck.Deck, i int) string {
	u := &d.Setups[i]
	switch {
	case i > 0 && d.Setups[i-1].Bit == u.Bit && d.Setups[i-1].Fence == u.Fence:
		return "The bit and the fence stay; only the heights are set anew."
	case i == 0:
		return "Unplug the router, fit the bit, set the fence."
	case d.Setups[i-1].Bit != u.Bit:
		return "Unplug the router, change the bit, set the fence."
	}
	return "The bit stays; move the fence."
}

// pieces counts the pieces that go over the bit in a setup.
func pieces(u *deck.Setup) int {
	n := 0
	for i := range u.Runs {
		n += u.Runs[i].Piece.Count
	}
	return n
}

// cardList names the cards of the setup, a line each.
func (s Setter) cardList(u *deck.Setup, w paper.Paper) []paper.Block {
	body := s.Letters(s.grade.body)
	var rows []paper.Block
	for i := range u.Runs {
		r := &u.Runs[i]
		p := paper.Phrase{}.Say(s.bold(s.grade.body), r.Number()).Say(body, r.Piece.Name).Tie(body, ",").
			Say(body, r.Cut.Name+" "+r.Channel.Part)
		rows = append(rows, ticked(p, 3.5, w))
	}
	return rows
}

// ticked sets a phrase behind a box to tick.
func ticked(p paper.Phrase, side, w paper.Paper) paper.Block {
	var text paper.Block
	first := paper.Paper(0) // the height of the first line
	for i, l := range p.Lines(w - side - 2) {
		text.Below(l.Block(), 0)
		if i == 0 {
			first = text.H
		}
	}
	var b paper.Block
	b.Add(boxes(1, side), 0, max(0.3, (first-side)/2))
	b.Add(text, side+2, 0)
	return b
}

// fenceDrawing shows the fence and the bit from above, to scale, with the
// distances to the near edge, the centre and the far edge.
func (s Setter) fenceDrawing(u *deck.Setup, w paper.Paper) paper.Block {
	near, middle, far := u.Fence.NearEdge, u.Fence.Centre, u.Fence.FarEdge
	radius := u.Bit.True().Millimetres() / 2
	var y axis
	most := min(60, s.cells[0].H*0.2) // paper below the fence face
	seen := []span{point(0), {max(0, near.Millimetres()), far.Millimetres()}}
	scale := largest(s.drawings(), func(try drawingScale) bool {
		var ok bool
		y, ok = newAxis(try.size, most, aroundPoints, seen)
		return ok && paper.Paper(radius*2*try.size) < w/6
	})
	y, _ = newAxis(scale.size, most, aroundPoints, seen)
	behind := max(fenceBand, paper.Paper(-near.Millimetres()*scale.size)+turnClear+2)
	if near < 0 {
		behind += 2
	}
	top := behind + 1
	place := func(l joinery.Length) paper.Paper {
		if l < 0 {
			return top + paper.Paper(l.Millimetres()*scale.size)
		}
		return top + y.place(l.Millimetres())
	}
	d := &paper.Drawing{W: w, H: top + max(y.length(), place(far)-top) + 3}
	r := paper.Paper(radius * scale.size)
	bit := paper.At(r+14, place(middle))
	fenceAt(d, top, w, bit.X, r, near < 0)
	d.Circle(bit, r, paper.Mid, paper.Thick)
	d.Stroke(paper.Centre, bit.Add(-r-2, 0), bit.Add(r+2, 0))
	d.Stroke(paper.Centre, bit.Add(0, -r-2), bit.Add(0, r+2))
	d.Arrow(paper.Thick, 2, paper.Arc(bit, r+turnClear, 20, 100)...)
	for _, b := range y.breaks() {
		d.Interrupt(paper.Box{X: 2, Y: top + b - breakRoom/2, W: bit.X + r + 1, H: breakRoom})
	}
	x := bit.X + r + 6
	room := (w-x)/3 - 8
	for i, l := range []joinery.Length{near, middle, far} {
		text := paper.Phrase{}.Count(s.number(s.bold(s.grade.body), l))
		if s.other != nil {
			text = text.Keep(s.Letters(paper.Least), s.Scale.Unit.String())
		}
		text = text.Say(s.Letters(paper.Least), [...]string{"near", "centre", "far"}[i])
		x += upright(d, top, place(l), x, place(far)+1.5, text.Set(room), bit.X)
	}
	note := paper.Phrase{}.Say(s.Letters(paper.Least), s.scaled(scale)).Set(w)
	d.Text(note, w-note.W, d.H)
	return d.Block()
}

// fenceAt draws a fence with its face at y, from the left to a width, with an
// opening for a bit that is buried in it.
func fenceAt(d *paper.Drawing, y, w, bit, r paper.Paper, buried bool) {
	bands := []paper.Box{{X: 0, Y: y - fenceBand, W: w, H: fenceBand}}
	if buried {
		const clear = 1.5
		bands = []paper.Box{{X: 0, Y: y - fenceBand, W: bit - r - clear, H: fenceBand}, {X: bit + r + clear, Y: y - fenceBand, W: w - bit - r - clear, H: fenceBand}}
	}
	for _, b := range bands {
		if b.W > 0 {
			d.Hatch(b, 2.5)
			d.Stroke(paper.Thin, paper.At(b.X, b.Bottom()), b.Corner(), paper.At(b.Right(), b.Y), paper.At(b.Right(), b.Bottom()))
			d.Stroke(paper.Pen{Width: 0.7}, paper.At(b.X, b.Bottom()), paper.At(b.Right(), b.Bottom()))
		}
	}
}

// upright draws a dimension from the fence face down to y, or up to it where a
// bit is buried, with its text on the right: beside it where that has room,
// else under all of them, beside the line drawn on, so that no line of another
// dimension strikes through it. It returns the room it took.
func upright(d *paper.Drawing, face, y, x, under paper.Paper, text paper.Block, from paper.Paper) paper.Paper {
	d.Stroke(paper.Thin, paper.At(from, y), paper.At(x+paper.OverLine, y))
	d.Stroke(paper.Thin, paper.At(x, face), paper.At(x, y))
	for _, at := range []paper.Paper{face, y} {
		d.Stroke(paper.Thick, paper.At(x-paper.ObliqueReach, at+paper.ObliqueReach), paper.At(x+paper.ObliqueReach, at-paper.ObliqueReach))
	}
	at := (face + y - text.H) / 2
	if y-face < text.H+2 {
		at = under
		d.Stroke(paper.Thin, paper.At(x, max(face, y)), paper.At(x, under+text.H))
	}
	d.Text(text, x+1.5, at)
	return text.W + 7
}
