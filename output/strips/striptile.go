package strips

import (
	"fmt"
	"math"

	"fencecard/output/paper"
)

// Heights of a tile, from its top edge down: marks for a strip that lies on
// the table or is seen over thick work, the head, the rows of labels, the
// slanted leaders, marks for a strip that stands on the fence.
const (
	topMarks    paper.Paper = 6
	underHead   paper.Paper = 1
	slants      paper.Paper = 4
	bottomMarks paper.Paper = 8
)

// besidesRows is the height of a tile without its head and its labels.
const besidesRows = topMarks + underHead + slants + bottomMarks

// tileBlocks draws the strip's tiles, all equally high.
func (st *strip) tileBlocks() []paper.Block {
	blocks := make([]paper.Block, len(st.tiles))
	for i, t := range st.tiles {
		blocks[i] = st.draw(t, i)
	}
	return blocks
}

// hasBit reports whether the bit is on a tile.
func (t tile) hasBit() bool { return t.rule == nil }

// headOf says what the tile is a part of and which end of the fence is where.
func (st *strip) headOf(t tile, i int) paper.Block {
	big, small := st.s.Bold(3.5), st.s.Letters(paper.Least)
	name := paper.Phrase{}.Say(big, fmt.Sprintf("SETUP %d", st.u.Number))
	if st.part[1] > 1 {
		name = name.Say(small, fmt.Sprintf("strip %d of %d", st.part[0], st.part[1]))
	}
	if len(st.tiles) > 1 {
		name = name.Say(small, fmt.Sprintf("part %d of %d", i+1, len(st.tiles)))
	}
	from, to := tileEdge, t.To-t.from-tileEdge
	if !t.hasBit() {
		side := "← OUTFEED"
		if t.from > 0 {
			side = "INFEED ←"
		}
		return inset(paper.Stack(0, paper.Phrase{}.Say(big, side).Set(to-from), name.Set(to-from), st.measured().Set(to-from)), from)
	}
	w := -st.column - t.from - from
	bit := paper.Phrase{}.Say(small, paper.Shortened(small, paper.Printable(st.u.Bit.Name), w))
	head := inset(paper.Stack(0, paper.Phrase{}.Say(big, "← OUTFEED").Set(w), name.Set(w), bit.Set(w)), from)
	from = st.column - t.from
	w = to - from
	in := paper.Phrase{}.Say(big, "INFEED ←").Set(w)
	head.Add(in, to-in.W, 0)
	fence := paper.Phrase{}.Say(small, "near edge").Count(st.s.Number(small, st.u.SetTo().NearEdge)).Say(small, "from the fence")
	edges := paper.Phrase{}.Say(small, "Top edge: to the fence, if this lies on the table.")
	head.Add(paper.Stack(0, fence.Set(w), edges.Set(w), st.measured().Set(w)), from, in.H)
	return head
}

// measured says from which edges the lengths of a strip are, where its labels have
// no room for that and its head has.
func (st *strip) measured() paper.Phrase {
	if !st.tells {
		return nil
	}
	return paper.Phrase{}.Say(st.s.Letters(paper.Least), "START, BACK STOP: from TRAILING edge; STOP: from LEADING.")
}

// inset moves a block right, and its left edge with it.
func inset(b paper.Block, by paper.Paper) paper.Block {
	var moved paper.Block
	moved.Add(b, by, 0)
	return moved
}

// draw draws one tile.
func (st *strip) draw(t tile, i int) paper.Block {
	high := st.high
	d := &paper.Drawing{W: t.To - t.from, H: high}
	d.Text(st.heads[i], 0, topMarks)
	if t.hasBit() {
		st.bit(d, t)
	}
	for _, g := range st.tags {
		if !g.level && t.shows(g.at) {
			st.mark(d, t, g, st.heads[i])
		}
	}
	if t.rule != nil {
		st.mark(d, t, t.rule.tag, st.heads[i])
	}
	for _, g := range t.tags {
		st.tag(d, t, g)
	}
	d.Stroke(paper.Thick, paper.Box{X: 0, Y: 0, W: d.W, H: d.H}.Path()...)
	b := d.Block()
	b.Parts[0].Name = tilePart
	return b
}

// tilePart names a tile's outline among the parts of a sheet.
const tilePart = "strip tile"

// bit draws the bit's edges and centre and the lines to fold at, from edge to
// edge, and the bit itself where it stands before the fence.
func (st *strip) bit(d *paper.Drawing, t tile) {
	x := -t.from
	for _, side := range []paper.Paper{-1, 1} {
		fold, edge := x+side*(st.radius+beyondBit), x+side*st.radius
		d.Stroke(paper.Hidden, paper.At(fold, 0), paper.At(fold, d.H))
		d.Stroke(markPen, paper.At(edge, 0), paper.At(edge, d.H))
	}
	d.Stroke(paper.Centre, paper.At(x, 0), paper.At(x, d.H))
	y := paper.Paper(st.u.SetTo().Centre.Millimetres())
	if y+st.radius <= d.H-bottomMarks-slants && y > -st.radius {
		d.Stroke(paper.Thick, st.round(paper.At(x, y))...)
	}
}

// round is the bit's outline, as far as it stands before the fence.
func (st *strip) round(at paper.Point) []paper.Point {
	if at.Y >= st.radius {
		return paper.Arc(at, st.radius, 0, 360)
	}
	up := math.Asin(float64(at.Y/st.radius)) * 180 / math.Pi
	return paper.Arc(at, st.radius, 180-up, 360+up)
}
