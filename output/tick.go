package output

import (
	"strconv"

	"fencecard/joinery"
)

// boxes returns a row of empty boxes to tick.
func boxes(n int, side Paper) block {
	gap := side * 0.4
	w := Paper(n)*side + Paper(n-1)*gap
	return figure("boxes", w, side, func(c Canvas, at Point) {
		for i := range n {
			c.Stroke(Pen{Width: 0.35}, Box{at.X + Paper(i)*(side+gap), at.Y, side, side}.Path()...)
		}
	})
}

// Counting pieces: up to mostBoxes each has a box to tick; more are tallied in
// cells of five, and so many that the cells would fill the card on a line.
const (
	mostBoxes  = 12
	tallyGroup = 5
	mostCells  = 12
)

// tally returns room to count pieces as they are done.
func (s setter) tally(count int, w Paper) block {
	label := phrase{}.say(s.bold(s.grade.body), "make "+strconv.Itoa(count)).set(w)
	side := label.h
	room := w - label.w - 2
	switch cells := (count + tallyGroup - 1) / tallyGroup; {
	case count <= mostBoxes:
		label.beside(wrapped(count, room, side*1.4, side*1.4, func(i int) block { return boxes(1, side) }), 2)
	case cells <= mostCells:
		label.beside(wrapped(cells, room, side*3.2, side*1.3, func(i int) block {
			return s.cell(min(count, (i+1)*tallyGroup), side*3, side*1.2)
		}), 2)
	default:
		label.beside(s.cell(count, room, side*1.2), 2)
	}
	return label
}

// cell is a box for a tally of five strokes, the count it brings in a corner.
func (s setter) cell(count int, w, h Paper) block {
	d := &drawing{w: w, h: h}
	d.stroke(Pen{Width: 0.35}, Box{0, 0, w, h}.Path()...)
	n := phrase{}.say(s.letters(least), strconv.Itoa(count)).set(w)
	d.text(n, w-n.w-0.5, h-n.h+0.2)
	return d.block()
}

// wrapped sets n small blocks in rows of a width.
func wrapped(n int, w, across, down Paper, one func(int) block) block {
	row := max(1, int(w/across))
	var b block
	for i := range n {
		b.add(one(i), Paper(i%row)*across, Paper(i/row)*down)
	}
	return b
}

// ladder sets phrases side by side, each with a box to tick.
func (s setter) ladder(rungs []phrase, w Paper) block {
	b := stack(1, s.rungs(rungs, w)...)
	b.w = w
	return b
}

// rungs sets phrases side by side, each with a box to tick, in a block for
// each line.
func (s setter) rungs(rungs []phrase, w Paper) []block {
	const gap = 5
	var lines []block
	var now block
	for _, rung := range rungs {
		side := max(4, rung[0].letters.Height)
		item := ticked(rung, side, w)
		if now.w > 0 && now.w+gap+item.w > w {
			lines, now = append(lines, now), block{}
		}
		now.beside(item, gap)
	}
	return append(lines, now)
}

// texts sets lengths, a phrase each.
func (s setter) texts(lengths []joinery.Length, l Letters) []phrase {
	all := make([]phrase, len(lengths))
	for i, length := range lengths {
		all[i] = s.length(nil, l, length)
	}
	return all
}
