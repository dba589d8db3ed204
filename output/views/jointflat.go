package views

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/setting"
)

// flat is two dimensions as they are seen from a side: which runs to the right
// and which up, and whether the low side is then right or above.
type flat struct {
	right, up           joinery.Dimension
	rightDown, upturned bool // toward the low side
}

// seenFrom is how one who stands at a side sees the work: upright where top and
// bottom show, else with left and right as they are from the front.
func seenFrom(side joinery.Side) flat {
	switch side {
	case joinery.Front:
		return flat{joinery.LeftRight, joinery.TopBottom, false, false}
	case joinery.Back:
		return flat{joinery.LeftRight, joinery.TopBottom, true, false}
	case joinery.Right:
		return flat{joinery.FrontBack, joinery.TopBottom, false, false}
	case joinery.Left:
		return flat{joinery.FrontBack, joinery.TopBottom, true, false}
	case joinery.Bottom:
		return flat{joinery.LeftRight, joinery.FrontBack, false, true}
	}
	return flat{joinery.LeftRight, joinery.FrontBack, false, false}
}

// above is the side that lies upward.
func (f flat) above() joinery.Side {
	if f.upturned {
		return f.up.Low()
	}
	return f.up.High()
}

// extent is a stretch of a dimension of the piece gone into, from its low side.
type extent struct{ lo, hi measure.Length }

// solidBox is a box of wood or of room, in the dimensions of the piece gone into.
type solidBox [3]extent

// Looks of a shape: wood seen, wood cut through, the part, and room.
type look uint8

const (
	plainWood look = iota
	cutWood
	partWood
	emptied
)

// shape is a box as it is drawn; broken is a side at which it goes on beyond the
// drawing, joined one at which it is one with the shape drawn before it.
type shape struct {
	box            solidBox
	look           look
	broken, joined joinery.Side
}

// dimension is a dimension of a figure.
type dimension struct {
	d joinery.Dimension
	extent
}

// jointFigure is one view of a joint, or of a half of it.
type jointFigure struct {
	from     joinery.Side
	shapes   []shape
	measures []dimension
	caption  string

	flat
	x, y axis
	text paper.Paper // how wide that of an upright dimension is set
}

// Measures of a figure.
const (
	figurePad    paper.Paper = 5   // wood shown on both sides of what matters
	columnBefore paper.Paper = 4   // before an upright dimension line
	rowUnder     paper.Paper = 1.8 // under the text of a dimension
)

// fit tries a scale in a width and height, its measures left out.
func (f *jointFigure) fit(scale float64, w, h paper.Paper) bool {
	f.flat = seenFrom(f.from)
	var across, upward []span
	add := func(d joinery.Dimension, e extent) {
		switch d {
		case f.right:
			across = append(across, point(e.lo.Millimetres()), point(e.hi.Millimetres()))
		case f.up:
			upward = append(upward, point(e.lo.Millimetres()), point(e.hi.Millimetres()))
		}
	}
	for _, s := range f.shapes {
		add(f.right, s.box[f.right])
		add(f.up, s.box[f.up])
	}
	for _, m := range f.measures {
		add(m.d, m.extent)
	}
	var wide, high bool
	f.x, wide = newAxis(scale, w, figurePad, across)
	f.y, high = newAxis(scale, h, figurePad, upward)
	return wide && high
}

// acrossAt and upAt place lengths on paper, from the figure's left and top.
func (f *jointFigure) acrossAt(l measure.Length) paper.Paper {
	at := f.x.place(l.Millimetres())
	if f.rightDown {
		return f.x.length() - at
	}
	return at
}

func (f *jointFigure) upAt(l measure.Length) paper.Paper {
	at := f.y.place(l.Millimetres())
	if f.upturned {
		return at
	}
	return f.y.length() - at
}

// ordered returns two places, the lesser first.
func ordered(a, b paper.Paper) (paper.Paper, paper.Paper) { return min(a, b), max(a, b) }

// boxOf is a shape on paper.
func (f *jointFigure) boxOf(b solidBox) paper.Box {
	left, right := ordered(f.acrossAt(b[f.right].lo), f.acrossAt(b[f.right].hi))
	top, bottom := ordered(f.upAt(b[f.up].lo), f.upAt(b[f.up].hi))
	return paper.Box{X: left, Y: top, W: right - left, H: bottom - top}
}

// draw draws the figure at the scale that was fitted.
func (f *jointFigure) draw(s setting.Setter, w paper.Paper) paper.Block {
	const top = 2 // room for the text of a short upright dimension
	d := &paper.Drawing{W: f.x.length(), H: f.y.length() + 2*top}
	moved := func(b paper.Box) paper.Box { b.Y += top; return b }
	for _, shape := range f.shapes {
		box := moved(f.boxOf(shape.box))
		switch shape.look {
		case cutWood:
			d.Fill(paper.White, box.Path()...)
			d.Hatch(box, 1.8)
		case partWood:
			d.Fill(paper.Pale, box.Path()...)
		default:
			d.Fill(paper.White, box.Path()...)
		}
		d.Stroke(paper.Pen{Width: 0.35}, box.Path()...)
		f.breakOff(d, box, shape.broken)
		f.join(d, box, shape.joined)
	}
	for _, x := range f.x.breaks() {
		if f.rightDown {
			x = f.x.length() - x
		}
		if over, ok := f.broken(func(b paper.Box) bool { return b.X < x && x < b.Right() }); ok {
			d.Interrupt(paper.Box{X: x - breakRoom/2, Y: top + over.Y - 1, W: breakRoom, H: over.H + 2})
		}
	}
	for _, y := range f.y.breaks() {
		if !f.upturned {
			y = f.y.length() - y
		}
		if over, ok := f.broken(func(b paper.Box) bool { return b.Y < y && y < b.Bottom() }); ok {
			d.Interrupt(paper.Box{X: over.X - 1, Y: top + y - breakRoom/2, W: over.W + 2, H: breakRoom})
		}
	}
	f.upright(d, s, top)
	f.level(d, s, top, w)
	b := d.Block()
	b.W = max(b.W, d.W)
	b.Below(s.Say(w, f.caption), 1)
	return b
}

// broken is the box round the shapes that a break goes through.
func (f *jointFigure) broken(through func(paper.Box) bool) (all paper.Box, ok bool) {
	for _, s := range f.shapes {
		b := f.boxOf(s.box)
		if !through(b) {
			continue
		}
		if !ok {
			all, ok = b, true
			continue
		}
		left, top := min(all.X, b.X), min(all.Y, b.Y)
		all = paper.Box{X: left, Y: top, W: max(all.Right(), b.Right()) - left, H: max(all.Bottom(), b.Bottom()) - top}
	}
	return all, ok
}

// edge is the strip of paper along a box's edge at a side, or false where that
// side does not show as an edge.
func (f *jointFigure) edge(b paper.Box, side joinery.Side, thick paper.Paper) (paper.Box, bool) {
	switch dim := side.Dimension(); {
	case dim == f.right && side.High() != f.rightDown:
		return paper.Box{X: b.Right() - thick/2, Y: b.Y, W: thick, H: b.H}, true
	case dim == f.right:
		return paper.Box{X: b.X - thick/2, Y: b.Y, W: thick, H: b.H}, true
	case dim == f.up && side.High() != f.upturned:
		return paper.Box{X: b.X, Y: b.Y - thick/2, W: b.W, H: thick}, true
	case dim == f.up:
		return paper.Box{X: b.X, Y: b.Bottom() - thick/2, W: b.W, H: thick}, true
	}
	return paper.Box{}, false
}

// breakOff draws the side at which a shape goes on as a break line.
func (f *jointFigure) breakOff(d *paper.Drawing, b paper.Box, side joinery.Side) {
	if side == joinery.NoSide {
		return
	}
	strip, ok := f.edge(b, side, 1.6)
	if !ok {
		return
	}
	d.Fill(paper.White, strip.Path()...)
	long := max(strip.W, strip.H)
	steps := max(4, int(long/2))
	var path []paper.Point
	for i := range steps + 1 {
		along, zig := long*paper.Paper(i)/paper.Paper(steps), paper.Paper(1-2*(i%2))*0.8
		if strip.H > strip.W {
			path = append(path, paper.At(strip.X+0.8+zig, strip.Y+along))
		} else {
			path = append(path, paper.At(strip.X+along, strip.Y+0.8+zig))
		}
	}
	d.Stroke(paper.Pen{Width: 0.18}, path...)
}

// join takes away the line between the part and what of it lies in the room:
// they are one piece of wood.
func (f *jointFigure) join(d *paper.Drawing, b paper.Box, side joinery.Side) {
	if strip, ok := f.edge(b, side, 0.6); side != joinery.NoSide && ok {
		const clear = 0.18
		if strip.H > strip.W {
			strip.Y, strip.H = strip.Y+clear, strip.H-2*clear
		} else {
			strip.X, strip.W = strip.X+clear, strip.W-2*clear
		}
		d.Fill(paper.White, strip.Path()...)
		d.Fill(paper.Pale, strip.Path()...)
	}
}
