package strips

import (
	"cmp"
	"slices"

	"fencecard/output/paper"
)

// markPen is the pen of what is measured by: on a strip no other line is solid
// and upright but the edges of the bit.
var markPen = paper.Pen{Width: 0.25}

// rulePen is the pen of the lines that tiles are set by.
var rulePen = paper.Pen{Width: 0.25, Line: paper.Dashed}

// leader is the pen of what ties a label to its mark, which nobody should
// bring the work to.
var leader = paper.Pen{Width: 0.25, Line: paper.Dotted}

const (
	markDot   paper.Paper = 0.6 // radius, on a mark where its label belongs
	markClear paper.Paper = 3   // from the label of a mark to the lines of others
	shortMark paper.Paper = 2   // a shorter piece of a line is only a speck
)

// mark draws a mark, or a rule line, from edge to edge, for thick work hides the lower part of
// a strip on the fence. It is interrupted beside the labels of other marks,
// lest it be taken for theirs, and behind the head and its own label.
func (st *strip) mark(d *paper.Drawing, t tile, g *tag, head paper.Block) {
	x, pen := g.at-t.from, markPen
	if g.ruled {
		pen = rulePen
	}
	var gaps [][2]paper.Paper
	keep := func(b paper.Box, clear paper.Paper) {
		if x > b.X-clear && x < b.Right()+clear {
			gaps = append(gaps, [2]paper.Paper{b.Y, b.Bottom()})
		}
	}
	for _, p := range head.At(0, topMarks) {
		keep(p.Box, besides)
	}
	for _, other := range t.tags {
		b := other.box()
		b.X -= t.from
		b.Y += st.rowsFoot()
		if other.at == g.at {
			keep(b, 0)
		} else {
			keep(b, markClear)
		}
	}
	slices.SortFunc(gaps, func(a, b [2]paper.Paper) int { return cmp.Compare(a[0], b[0]) })
	from := paper.Paper(0)
	for _, gap := range gaps {
		if from == 0 || gap[0]-from >= shortMark {
			d.Stroke(pen, paper.At(x, from), paper.At(x, gap[0]))
		}
		from = max(from, gap[1])
	}
	d.Stroke(pen, paper.At(x, from), paper.At(x, st.high))
}

// rowsFoot is where the rows of labels stand, from the top of a tile.
func (st *strip) rowsFoot() paper.Paper { return st.high - bottomMarks - slants }

// tag draws a label and what ties it to its mark: a dot on the mark where the
// label is beside it, else a leader to the dot.
func (st *strip) tag(d *paper.Drawing, t tile, g *tag) {
	foot := st.rowsFoot()
	x, at := g.foot-t.from, g.at-t.from
	b := g.box()
	y := foot + b.Y + b.H/2
	switch {
	case g.level:
		d.Stroke(paper.Thin, paper.At(at, y), paper.At(x, y))
	case g.foot == g.at:
		d.Circle(paper.At(at, y), markDot, paper.Black, paper.NoPen)
	default:
		d.Stroke(leader, paper.At(at, foot+slants), paper.At(x, foot), paper.At(x, y))
		d.Circle(paper.At(at, foot+slants), markDot, paper.Black, paper.NoPen)
	}
	d.Text(g.label, b.X-t.from, foot+b.Y)
}
