// Package tick sets what is ticked with a pencil: a box, and room to count pieces as
// they are done.
package tick

import (
	"strconv"

	"fencecard/output/paper"
	"fencecard/output/setting"
)

// Side is how wide a box to tick is.
const Side paper.Paper = 5

// Boxes returns a row of empty boxes to tick.
func Boxes(n int, side paper.Paper) paper.Block {
	gap := side * 0.4
	w := paper.Paper(n)*side + paper.Paper(n-1)*gap
	return paper.Figure("boxes", w, side, func(c paper.Canvas, at paper.Point) {
		for i := range n {
			c.Stroke(paper.Pen{Width: 0.35}, paper.Box{X: at.X + paper.Paper(i)*(side+gap), Y: at.Y, W: side, H: side}.Path()...)
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

// Tally returns room to count pieces as they are done.
func Tally(s setting.Setter, count int, w paper.Paper) paper.Block {
	switch cells := (count + tallyGroup - 1) / tallyGroup; {
	case count <= mostBoxes:
		return wrapped(count, w, Side*1.3, Side*1.3, func(i int) paper.Block { return Boxes(1, Side) })
	case cells <= mostCells:
		return wrapped(cells, w, Side*3.2, Side*1.3, func(i int) paper.Block {
			return cell(s, min(count, (i+1)*tallyGroup), Side*3, Side*1.2)
		})
	}
	return cell(s, count, w, Side*1.2)
}

// cell is a box for a tally of five strokes, the count it brings in a corner.
func cell(s setting.Setter, count int, w, h paper.Paper) paper.Block {
	d := &paper.Drawing{W: w, H: h}
	d.Stroke(paper.Pen{Width: 0.35}, paper.Box{X: 0, Y: 0, W: w, H: h}.Path()...)
	n := paper.Phrase{}.Say(s.Letters(paper.Least), strconv.Itoa(count)).Set(w)
	d.Text(n, w-n.W-0.5, h-n.H+0.2)
	return d.Block()
}

// wrapped sets n small blocks in rows of a width.
func wrapped(n int, w, across, down paper.Paper, one func(int) paper.Block) paper.Block {
	row := max(1, int(w/across))
	var b paper.Block
	for i := range n {
		b.Add(one(i), paper.Paper(i%row)*across, paper.Paper(i/row)*down)
	}
	return b
}
