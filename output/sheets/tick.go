package sheets

import (
	"strconv"

	"fencecard/output/paper"
)

// boxes returns a row of empty boxes to tick.
func boxes(n int, side paper.Paper) paper.Block {
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

// tally returns room to count pieces as they are done.
func (s Setter) tally(count int, w paper.Paper) paper.Block {
	switch cells := (count + tallyGroup - 1) / tallyGroup; {
	case s.bare:
		return paper.Block{}
	case count <= mostBoxes:
		return wrapped(count, w, tickSide*1.3, tickSide*1.3, func(i int) paper.Block { return boxes(1, tickSide) })
	case cells <= mostCells:
		return wrapped(cells, w, tickSide*3.2, tickSide*1.3, func(i int) paper.Block {
			return s.cell(min(count, (i+1)*tallyGroup), tickSide*3, tickSide*1.2)
		})
	}
	return s.cell(count, w, tickSide*1.2)
}

// cell is a box for a tally of five strokes, the count it brings in a corner.
func (s Setter) cell(count int, w, h paper.Paper) paper.Block {
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
