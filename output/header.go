package output

import (
	"fmt"
	"slices"
	"strconv"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// header is the card that stands before the cards of a setup; a second one
// follows where the list of cards is long.
func (s setter) header(d *deck.Deck, i int) []block {
	u := &d.Setups[i]
	w, h := s.cells[0].W, s.cells[0].H
	heading := func(sheet int) block {
		if sheet == 0 {
			return framed(phrase{}.say(s.bold(s.grade.number), "SETUP "+strconv.Itoa(u.Number)).set(w), 1.5, Pen{Width: 1})
		}
		return phrase{}.say(s.bold(s.grade.title), fmt.Sprintf("SETUP %d, continued", u.Number)).set(w)
	}
	settings := s.settings(d, i, w)
	pour := func(list []block) []block { return fill(slices.Concat(settings, list), 1, h, heading) }
	all := pour(s.cardList(u, w))
	if len(all) > 1 {
		if fewer := pour(twoAbreast(s.cardList(u, (w-cardGap)/2), w)); len(fewer) < len(all) {
			return fewer
		}
	}
	return all
}

// twoAbreast puts rows side by side by twos, to be read across.
func twoAbreast(rows []block, w Paper) []block {
	var all []block
	for pair := range slices.Chunk(rows, 2) {
		row := pair[0]
		if len(pair) == 2 {
			row.add(pair[1], (w+cardGap)/2, 0)
		}
		all = append(all, row)
	}
	return all
}

// settings is what is set for the whole setup, in rows.
func (s setter) settings(d *deck.Deck, i int, w Paper) []block {
	u := &d.Setups[i]
	body, bold := s.letters(s.grade.body), s.bold(s.grade.body)
	title := s.bold(s.grade.title)
	rows := []block{
		s.length(phrase{}.say(title, u.Bit.Name).tie(title, ","), title, u.Bit.True()).set(w),
		phrase{}.say(body, changed(d, i)).set(w),
		s.fence(u, w),
		s.fenceDrawing(u, w),
	}
	rows = append(rows, s.headed("HEIGHTS, climbing", s.climbs(u, title, w))...)
	if kept := s.keptRows(u.Kept, w); kept != nil {
		rows = append(rows, stack(1, kept...))
	}
	rows = append(rows, phrase{}.say(bold, "CARDS").say(body, fmt.Sprintf("%d, for %s", len(u.Runs), plural(pieces(u), "piece"))).set(w))
	for k := range rows {
		rows[k] = spaced(rows[k])
	}
	return rows
}

// climbs are the ladders of a setup in rows: between stop blocks the cards for
// which these stand alike climb theirs before the next are set.
func (s setter) climbs(u *deck.Setup, l Letters, w Paper) []block {
	climbs := u.Climbs()
	if !s.blocks || len(climbs) == 1 && !climbs[0].Blocks {
		return s.rungs(s.texts(u.Heights, l), w)
	}
	var rows []block
	for _, c := range climbs {
		set := phrase{}.say(s.bold(s.grade.body), "STOP BLOCKS").say(s.letters(s.grade.body), blocksLine(c))
		ladder := s.rungs(s.texts(c.Heights, l), w)
		rows = append(append(rows, stack(1, set.set(w), ladder[0])), ladder[1:]...)
	}
	return rows
}

// spaced puts a little space over a row.
func spaced(b block) block {
	s := block{h: cardGap - 1}
	s.add(b, 0, s.h)
	return s
}

// changed says what is to be changed since the setup before.
func changed(d *deck.Deck, i int) string {
	u := &d.Setups[i]
	switch {
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
func (s setter) cardList(u *deck.Setup, w Paper) []block {
	body := s.letters(s.grade.body)
	var rows []block
	for i := range u.Runs {
		r := &u.Runs[i]
		p := phrase{}.say(s.bold(s.grade.body), r.Number()).say(body, r.Piece.Name).tie(body, ",").
			say(body, r.Cut.Name+" "+r.Channel.Part)
		rows = append(rows, ticked(p, 3.5, w))
	}
	return rows
}

// ticked sets a phrase behind a box to tick.
func ticked(p phrase, side, w Paper) block {
	var text block
	first := Paper(0) // the height of the first line
	for i, l := range p.lines(w - side - 2) {
		text.below(l.block(), 0)
		if i == 0 {
			first = text.h
		}
	}
	var b block
	b.add(boxes(1, side), 0, max(0.3, (first-side)/2))
	b.add(text, side+2, 0)
	return b
}

// fenceDrawing shows the fence and the bit from above, to scale, with the
// distances to the near edge, the centre and the far edge.
func (s setter) fenceDrawing(u *deck.Setup, w Paper) block {
	near, middle, far := u.Fence.NearEdge, u.Fence.Centre, u.Fence.FarEdge
	radius := u.Bit.True().Millimetres() / 2
	var y axis
	most := min(60, s.cells[0].H*0.2) // paper below the fence face
	seen := []span{point(0), {max(0, near.Millimetres()), far.Millimetres()}}
	scale := largest(s.drawings(), func(try drawingScale) bool {
		var ok bool
		y, ok = newAxis(try.size, most, aroundPoints, seen)
		return ok && Paper(radius*2*try.size) < w/6
	})
	y, _ = newAxis(scale.size, most, aroundPoints, seen)
	behind := max(fenceBand, Paper(-near.Millimetres()*scale.size)+turnClear+2)
	if near < 0 {
		behind += 2
	}
	top := behind + 1
	place := func(l joinery.Length) Paper {
		if l < 0 {
			return top + Paper(l.Millimetres()*scale.size)
		}
		return top + y.place(l.Millimetres())
	}
	d := &drawing{w: w, h: top + max(y.length(), place(far)-top) + 3}
	r := Paper(radius * scale.size)
	bit := Point{r + 14, place(middle)}
	d.fenceAt(top, w, bit.X, r, near < 0)
	d.circle(bit, r, Mid, thick)
	d.stroke(centre, bit.Add(-r-2, 0), bit.Add(r+2, 0))
	d.stroke(centre, bit.Add(0, -r-2), bit.Add(0, r+2))
	d.arrow(thick, 2, arc(bit, r+turnClear, 20, 100)...)
	for _, b := range y.breaks() {
		d.interrupt(Box{2, top + b - breakRoom/2, bit.X + r + 1, breakRoom})
	}
	x := bit.X + r + 6
	room := (w-x)/3 - 8
	for i, l := range []joinery.Length{near, middle, far} {
		text := phrase{}.count(s.number(s.bold(s.grade.body), l))
		if s.other != nil {
			text = text.keep(s.letters(least), s.scale.Unit.String())
		}
		text = text.say(s.letters(least), [...]string{"near", "centre", "far"}[i])
		x += d.upright(top, place(l), x, place(far)+1.5, text.set(room), bit.X)
	}
	note := phrase{}.say(s.letters(least), s.scaled(scale)).set(w)
	d.text(note, w-note.w, d.h)
	return d.block()
}

// fenceAt draws a fence with its face at y, from the left to a width, with an
// opening for a bit that is buried in it.
func (d *drawing) fenceAt(y, w, bit, r Paper, buried bool) {
	bands := []Box{{0, y - fenceBand, w, fenceBand}}
	if buried {
		const clear = 1.5
		bands = []Box{{0, y - fenceBand, bit - r - clear, fenceBand}, {bit + r + clear, y - fenceBand, w - bit - r - clear, fenceBand}}
	}
	for _, b := range bands {
		if b.W > 0 {
			d.hatch(b, 2.5)
			d.stroke(thin, Point{b.X, b.Bottom()}, b.corner(), Point{b.Right(), b.Y}, Point{b.Right(), b.Bottom()})
			d.stroke(Pen{Width: 0.7}, Point{b.X, b.Bottom()}, Point{b.Right(), b.Bottom()})
		}
	}
}

// upright draws a dimension from the fence face down to y, or up to it where a
// bit is buried, with its text on the right: beside it where that has room,
// else under all of them, beside the line drawn on, so that no line of another
// dimension strikes through it. It returns the room it took.
func (d *drawing) upright(face, y, x, under Paper, text block, from Paper) Paper {
	d.stroke(thin, Point{from, y}, Point{x + overLine, y})
	d.stroke(thin, Point{x, face}, Point{x, y})
	for _, at := range []Paper{face, y} {
		d.stroke(thick, Point{x - obliqueReach, at + obliqueReach}, Point{x + obliqueReach, at - obliqueReach})
	}
	at := (face + y - text.h) / 2
	if y-face < text.h+2 {
		at = under
		d.stroke(thin, Point{x, max(face, y)}, Point{x, under + text.h})
	}
	d.text(text, x+1.5, at)
	return text.w + 7
}
