package views

import (
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// stopBlock is the block that the work is brought to at a mark.
type stopBlock string

// The blocks: none, the one at the tail end where the cut starts, the one at
// the leading end where it stops.
const (
	noBlock    stopBlock = ""
	backBlock  stopBlock = "BACK"
	frontBlock stopBlock = "FRONT"
)

// Measures of a block, and how wide a drawing must be for words beside it.
const (
	blockWide  paper.Paper = 3
	blockLong  paper.Paper = 6
	wordsBlock paper.Paper = 100
)

// block is what is clamped for a mark: the same as its panel tells.
func (f *fromAbove) block(stop bool) stopBlock {
	switch {
	case !stop:
		return backBlock
	case f.s.Blocks:
		return frontBlock
	}
	return noBlock
}

// guide is what is marked on the fence: nothing between blocks, nor where the start is
// the back stop.
func (f *fromAbove) guide(stop bool) guideMark {
	reached := f.c.Reach(stop, f.s.Reach)
	if f.s.Blocks || !stop && reached.Guide == deck.ByTail {
		reached = deck.Reached{Guide: deck.ByLine}
	}
	return guideMark{reached, stop}
}

// besideWork is the room that blocks and their words take on the left of the
// work and on its right, in a drawing of a width.
func (f *fromAbove) besideWork(w paper.Paper) (left, right paper.Paper) {
	room := func(b stopBlock) paper.Paper {
		if words := f.blockWords(b, w); words.W > 0 {
			return blockWide + 1 + words.W + 1
		}
		return blockWide + 2
	}
	for _, r := range f.rows {
		switch r.stop {
		case backBlock:
			right = room(r.stop)
		case frontBlock:
			left = room(r.stop)
		}
	}
	return left, right
}

// blockWords name a block, where a drawing has room for words beside it.
func (f *fromAbove) blockWords(b stopBlock, w paper.Paper) paper.Block {
	if w < wordsBlock {
		return paper.Block{}
	}
	l := f.s.Bold(paper.Least)
	return paper.Stack(0, paper.Phrase{}.Say(l, string(b)).Set(w), paper.Phrase{}.Say(l, "STOP").Set(w))
}

// blocks draws the blocks against the fence, where the ends of the work meet
// them.
func (f *fromAbove) blocks(d *paper.Drawing) {
	long := min(blockLong, max(blockWide, f.at(0, f.wide).Y-f.top-1))
	for _, r := range f.rows {
		words := f.blockWords(r.stop, d.W)
		switch r.stop {
		case backBlock:
			x := f.at(r.at[2], 0).X
			Crossed(d, paper.Box{X: x, Y: f.top, W: blockWide, H: long})
			d.Text(words, x+blockWide+1, f.top+0.5)
		case frontBlock:
			x := f.at(r.at[0], 0).X - blockWide
			Crossed(d, paper.Box{X: x, Y: f.top, W: blockWide, H: long})
			d.Text(words, x-1-words.W, f.top+0.5)
		}
	}
}

// Crossed draws a block of wood as a box with its diagonals.
func Crossed(d *paper.Drawing, b paper.Box) {
	d.Fill(paper.White, b.Path()...)
	d.Stroke(paper.Thin, b.Corner(), paper.At(b.Right(), b.Bottom()))
	d.Stroke(paper.Thin, paper.At(b.Right(), b.Y), paper.At(b.X, b.Bottom()))
	d.Stroke(paper.Thick, b.Path()...)
}
