package output

import (
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
	blockWide  Paper = 3
	blockLong  Paper = 6
	wordsBlock Paper = 100
)

// block is what is clamped for a mark: the same as its panel tells.
func (f *fromAbove) block(stop bool) stopBlock {
	switch {
	case !stop:
		return backBlock
	case f.s.blocks:
		return frontBlock
	}
	return noBlock
}

// guide is what is marked on the fence; between blocks nothing is.
func (f *fromAbove) guide(stop bool) guideMark {
	if f.s.blocks {
		return guideMark{deck.Reached{Guide: deck.ByLine}, stop}
	}
	return guideMark{f.c.Reach(stop, f.s.reach), stop}
}

// besideWork is the room that blocks and their words take on the left of the
// work and on its right, in a drawing of a width.
func (f *fromAbove) besideWork(w Paper) (left, right Paper) {
	room := func(b stopBlock) Paper {
		if words := f.blockWords(b, w); words.w > 0 {
			return blockWide + 1 + words.w + 1
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
func (f *fromAbove) blockWords(b stopBlock, w Paper) block {
	if w < wordsBlock {
		return block{}
	}
	l := f.s.bold(least)
	return stack(0, phrase{}.say(l, string(b)).set(w), phrase{}.say(l, "STOP").set(w))
}

// blocks draws the blocks against the fence, where the ends of the work meet
// them.
func (f *fromAbove) blocks(d *drawing) {
	long := min(blockLong, max(blockWide, f.at(0, f.wide).Y-f.top-1))
	for _, r := range f.rows {
		words := f.blockWords(r.stop, d.w)
		switch r.stop {
		case backBlock:
			x := f.at(r.at[2], 0).X
			crossed(d, Box{x, f.top, blockWide, long})
			d.text(words, x+blockWide+1, f.top+0.5)
		case frontBlock:
			x := f.at(r.at[0], 0).X - blockWide
			crossed(d, Box{x, f.top, blockWide, long})
			d.text(words, x-1-words.w, f.top+0.5)
		}
	}
}

// crossed draws a block of wood as a box with its diagonals.
func crossed(d *drawing, b Box) {
	d.fill(White, b.Path()...)
	d.stroke(thin, b.corner(), Point{b.Right(), b.Bottom()})
	d.stroke(thin, Point{b.Right(), b.Y}, Point{b.X, b.Bottom()})
	d.stroke(thick, b.Path()...)
}
