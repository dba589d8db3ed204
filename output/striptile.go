package output

import (
	"fmt"
	"math"
	"strings"
)

// Heights of a tile, from its top edge down: marks for a strip that lies on
// the table or is seen over thick work, the head, the rows of labels, the
// slanted leaders, marks for a strip that stands on the fence.
const (
	topMarks    Paper = 7
	underHead   Paper = 1
	slants      Paper = 6
	bottomMarks Paper = 9
)

// besidesRows is the height of a tile without its head and its labels.
const besidesRows = topMarks + underHead + slants + bottomMarks

// tileBlocks draws the strip's tiles, all equally high.
func (st *strip) tileBlocks() []block {
	blocks := make([]block, len(st.tiles))
	for i, t := range st.tiles {
		blocks[i] = st.draw(t, i)
	}
	return blocks
}

// hasBit reports whether the bit is on a tile.
func (t tile) hasBit() bool { return t.shows(0) }

// headOf says what the tile is a part of and which end of the fence is where.
func (st *strip) headOf(t tile, i int) block {
	big, small := st.s.bold(3.5), st.s.letters(least)
	name := phrase{}.say(big, fmt.Sprintf("SETUP %d", st.u.Number))
	if st.part[1] > 1 {
		name = name.say(small, fmt.Sprintf("strip %d of %d", st.part[0], st.part[1]))
	}
	if len(st.tiles) > 1 {
		name = name.say(small, fmt.Sprintf("part %d of %d", i+1, len(st.tiles)))
	}
	from, to := t.tab+tileEdge, t.to-t.from-tileEdge
	if !t.hasBit() {
		side := "← OUTFEED"
		if t.from > 0 {
			side = "INFEED ←"
		}
		return stack(0, phrase{}.say(big, side).set(to-from), name.set(to-from)).inset(from)
	}
	w := -st.column - t.from - from
	bit := phrase{}.say(small, shortened(small, printable(st.u.Bit.Name), w))
	head := stack(0, phrase{}.say(big, "← OUTFEED").set(w), name.set(w), bit.set(w)).inset(from)
	from = st.column - t.from
	w = to - from
	in := phrase{}.say(big, "INFEED ←").set(w)
	head.add(in, to-in.w, 0)
	fence := phrase{}.say(small, "near edge").count(st.s.number(small, st.u.Fence.NearEdge)).say(small, "from the fence")
	edges := phrase{}.say(small, "Top edge: to the fence, if this lies on the table.")
	head.add(stack(0, fence.set(w), edges.set(w)), from, in.h)
	return head
}

// shortened cuts a text to a width, and shows that it did.
func shortened(l Letters, text string, w Paper) string {
	if l.width(text) <= w {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && l.width(string(runes)+"…") > w {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimSpace(string(runes)) + "…"
}

// inset moves a block right, and its left edge with it.
func (b block) inset(by Paper) block {
	var moved block
	moved.add(b, by, 0)
	return moved
}

// draw draws one tile.
func (st *strip) draw(t tile, i int) block {
	high := st.high
	d := &drawing{w: t.to - t.from, h: high}
	if t.tab > 0 {
		st.tab(d, t, i)
	}
	d.text(st.heads[i], 0, topMarks)
	if t.hasBit() {
		st.bit(d, t)
	}
	for _, g := range st.tags {
		if !g.level && t.shows(g.at) {
			st.mark(d, t, g, st.heads[i])
		}
	}
	for _, g := range st.tags {
		if t.owns(g.at) {
			st.tag(d, t, g)
		}
	}
	d.stroke(thick, Box{0, 0, d.w, d.h}.Path()...)
	if i+1 < len(st.tiles) {
		for _, y := range registers(high) {
			d.stroke(thin, Point{d.w - registerArm, y}, Point{d.w, y})
			d.stroke(thin, arc(Point{d.w, y}, registerRadius, 90, 270)...)
		}
	}
	b := d.block()
	b.parts[0].name = tilePart
	return b
}

// tilePart names a tile's outline among the parts of a sheet.
const tilePart = "strip tile"

// bit draws the bit's edges and centre and the lines to fold at, from edge to
// edge, and the bit itself where it stands before the fence.
func (st *strip) bit(d *drawing, t tile) {
	x := -t.from
	for _, side := range []Paper{-1, 1} {
		fold, edge := x+side*(st.radius+beyondBit), x+side*st.radius
		d.stroke(hidden, Point{fold, 0}, Point{fold, d.h})
		d.stroke(markPen, Point{edge, 0}, Point{edge, d.h})
	}
	d.stroke(centre, Point{x, 0}, Point{x, d.h})
	y := Paper(st.u.Fence.Centre.Millimetres())
	if y+st.radius <= d.h-bottomMarks-slants && y > -st.radius {
		d.stroke(thick, st.round(Point{x, y})...)
	}
}

// round is the bit's outline, as far as it stands before the fence.
func (st *strip) round(at Point) []Point {
	if at.Y >= st.radius {
		return arc(at, st.radius, 0, 360)
	}
	up := math.Asin(float64(at.Y/st.radius)) * 180 / math.Pi
	return arc(at, st.radius, 180-up, 360+up)
}

// Register marks stand on the line where a tile ends, half on it and half on
// the next.
const (
	registerRadius Paper = 1.5
	registerArm    Paper = 3
)

// registers are the heights of the register marks on a tile.
func registers(high Paper) [2]Paper {
	return [2]Paper{topMarks + 4, high - bottomMarks - slants - 2}
}

// tab draws the end that goes under the tile before.
func (st *strip) tab(d *drawing, t tile, i int) {
	d.hatch(Box{0, topMarks, t.tab - 0.5, d.h - topMarks - bottomMarks}, 3)
	edge := t.tab
	d.stroke(thin, Point{edge, topMarks}, Point{edge, d.h - bottomMarks})
	for _, y := range registers(d.h) {
		d.stroke(thin, Point{edge - registerArm, y}, Point{edge + registerArm, y})
		d.stroke(thin, arc(Point{edge, y}, registerRadius, 0, 360)...)
	}
	l := Letters{Height: least, Upward: true}
	text := fmt.Sprintf("under part %d", i)
	long, deep := l.width(text), em(least)*(ascender+descender)
	b := figure("text", deep, long, func(c Canvas, at Point) { c.Text(at.Add(em(least)*ascender, long), l, text) })
	d.text(b, (t.tab-deep)/2, (d.h-long)/2)
}
