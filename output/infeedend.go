package output

import (
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// infeedEnd is the section at the bit as somebody sees it who stands at the
// infeed end of the table and looks along the fence: the fence on the right,
// the work in front of it, the bit rising out of the table. Lengths are in
// millimetres at the machine, from the fence face out and from the table up.
type infeedEnd struct {
	s       setter
	u       *deck.Setup
	c       *deck.Run
	section deck.Section
	scale   drawingScale
	y, z    axis

	room        Paper // to the right edge
	face, table Paper // where the fence face and the table lie
	near        block // the dimension from the fence to the bit
	depth       block
	down        block // the name of the side on the table
}

// Measures of the drawing round the work.
const (
	fenceThick Paper = 10
	tableThick Paper = 5.5
	besideName Paper = 5
)

// infeedEnd lays the section out in a width and height. It reports whether
// there is room.
func (s setter) infeedEnd(u *deck.Setup, r *deck.Run, w, h Paper) (drawn, bool) {
	e := infeedEnd{s: s, u: u, c: r, section: r.Section(), room: w}
	e.near = s.small(u.Fence.NearEdge)
	e.depth = s.small(e.section.Depth)
	e.down = e.name(r.Step.Down, "down", w)
	fits := func(try drawingScale) (bool, int) { return e.fit(try, w, h), e.y.broken() + e.z.broken() }
	if s.choose(u, fits) {
		return drawn{e.draw(), Paper(u.Bit.True().Millimetres() * e.scale.size)}, true
	}
	return drawn{}, false
}

// above and below are the heights of what stands over and under the work.
func (e *infeedEnd) above() Paper { return besideName + 2 }
func (e *infeedEnd) below() Paper { return tableThick + e.near.h + textClear + overLine + 0.5 }

// lastLine is room for the scale where it does not fit beside the fence.
const lastLine Paper = 4

func (e *infeedEnd) fit(try drawingScale, w, h Paper) bool {
	e.scale = try
	var yOK, zOK bool
	section := e.section
	near, far := e.u.Fence.NearEdge.Millimetres(), e.u.Fence.FarEdge.Millimetres()
	// The name of the side that is down stands on the table, left of the bit.
	beside := Paper((section.Across.Millimetres() - far) * try.size)
	left := max(e.depth.w+4, e.down.w+3-beside)
	right := max(fenceThick, Paper(-near*try.size)+2)
	e.y, yOK = newAxis(try.size, w-left-right, aroundPoints,
		[]span{point(0), point(section.Across.Millimetres()), {max(near, 0), far}, {section.Near.Millimetres(), section.Far.Millimetres()}})
	e.z, zOK = newAxis(try.size, h-e.above()-e.below()-lastLine, aroundPoints,
		[]span{{0, section.Depth.Millimetres()}, point(section.Up.Millimetres())})
	if yOK && zOK {
		e.face = left + e.y.length()
		e.table = e.above() + e.z.length()
	}
	return yOK && zOK
}

// at places a point by its distance from the fence face and from the table.
func (e *infeedEnd) at(y, z float64) Point {
	return Point{e.face - e.out(y), e.table - e.z.place(z)}
}

// out is the distance from the fence face on paper; behind the face, where a
// bit may be buried, nothing is left out.
func (e *infeedEnd) out(y float64) Paper {
	if y < 0 {
		return Paper(y * e.scale.size)
	}
	return e.y.place(y)
}

// box is a rectangle between two distances from the fence and two heights.
func (e *infeedEnd) box(y1, y2, z1, z2 float64) Box {
	a, b := e.at(y2, z2), e.at(y1, z1)
	return Box{a.X, a.Y, b.X - a.X, b.Y - a.Y}
}

func (e *infeedEnd) draw() block {
	fence := e.name(e.c.Step.Fence, "at fence", e.room)
	if e.depth.w+1+fence.w > e.room {
		fence = e.name(e.c.Step.Fence, "", e.room)
	}
	d := &drawing{w: max(e.depth.w+1+fence.w, e.face+max(fenceThick, -e.out(e.u.Fence.NearEdge.Millimetres())+2))}
	e.fence(d)
	e.work(d)
	e.bit(d)
	for _, y := range e.y.breaks() {
		d.interrupt(Box{e.face - y - breakRoom/2, e.above() - 1, breakRoom, e.table - e.above() + 1})
	}
	d.h = e.table + e.below()
	e.names(d, fence)
	e.dimensions(d)
	return d.block()
}

func (e *infeedEnd) fence(d *drawing) {
	top := e.above() - 2
	b := Box{e.face, top, d.w - e.face, e.table - top}
	d.hatch(b, 3)
	d.stroke(Pen{Width: 0.7}, Point{b.X, b.Bottom()}, Point{b.X, b.Y})
	d.stroke(thin, Point{b.X, b.Y}, Point{b.Right(), b.Y})
	d.stroke(Pen{Width: 0.7}, Point{0, e.table}, Point{d.w, e.table})
	d.stroke(thin, Point{0, e.table + tableThick}, Point{d.w, e.table + tableThick})
}

// work draws the cut surface of the work round the channel as this run leaves
// it; what later runs take still stands, in hidden lines.
func (e *infeedEnd) work(d *drawing) {
	s := e.section
	across, up := s.Across.Millimetres(), s.Up.Millimetres()
	near, far, depth := s.Near.Millimetres(), s.Far.Millimetres(), s.Depth.Millimetres()
	if l, r := e.c.Uncut(); l != r {
		from, to := l.Millimetres(), r.Millimetres()
		d.stroke(hidden, e.at(from, depth), e.at(to, depth))
		if r == s.Far {
			d.stroke(hidden, e.at(far, 0), e.at(far, depth))
			far = from
		} else {
			d.stroke(hidden, e.at(near, 0), e.at(near, depth))
			near = to
		}
	}
	for _, b := range []Box{e.box(0, across, depth, up), e.box(0, near, 0, depth), e.box(far, across, 0, depth)} {
		if b.W > 0 && b.H > 0 {
			d.hatch(b, 2)
		}
	}
	d.stroke(thick, e.at(near, 0), e.at(near, depth), e.at(far, depth), e.at(far, 0))
	d.stroke(thick, e.box(0, across, 0, up).Path()...)
}

// bit draws the bit at its full height, a line across it for every pass, and
// its axis.
func (e *infeedEnd) bit(d *drawing) {
	near, far := e.u.Fence.NearEdge.Millimetres(), e.u.Fence.FarEdge.Millimetres()
	top := e.c.Heights[len(e.c.Heights)-1].Millimetres()
	b := e.box(near, far, 0, top)
	d.fill(White, b.Path()...)
	b.H += tableThick
	d.fill(Mid, b.Path()...)
	d.stroke(thick, b.Path()...)
	for _, z := range e.c.Heights[:len(e.c.Heights)-1] {
		y := e.at(0, z.Millimetres()).Y
		d.stroke(Pen{Width: 0.35}, Point{b.X, y}, Point{b.Right(), y})
	}
	middle := b.X + b.W/2
	d.stroke(centre, Point{middle, b.Y - 2}, Point{middle, b.Bottom() + 2})
}

// name names a side of the work and says how it lies.
func (e *infeedEnd) name(side joinery.Side, how string, w Paper) block {
	return phrase{}.say(e.s.bold(least), strings.ToUpper(side.String())+" "+how).set(w)
}

// names names the sides of the work that lie on the table and at the fence.
func (e *infeedEnd) names(d *drawing, fence block) {
	d.text(fence, d.w-fence.w, 0)
	scale := phrase{}.say(e.s.letters(least), e.s.scaled(e.scale)).set(d.w)
	if beside := d.w - fence.w - scale.w - 2; beside >= e.depth.w {
		d.text(scale, beside, 0)
	} else {
		d.text(scale, 0, d.h)
	}
	d.text(e.down, 0, e.table+(tableThick-e.down.h)/2)
}

// dimensions gives the depth on the left and the fence distance below.
func (e *infeedEnd) dimensions(d *drawing) {
	near := e.u.Fence.NearEdge.Millimetres()
	y := e.table + tableThick + 0.5 + e.near.h + textClear
	from, to := e.at(near, 0).X, e.face
	if from != to {
		for _, x := range []Paper{from, to} {
			d.stroke(thin, Point{x, e.table + tableThick + 0.5}, Point{x, y + overLine})
		}
		d.dimension(dimension{min(from, to), max(from, to), y, e.near, -1})
	}

	top := e.at(0, e.section.Depth.Millimetres()).Y
	x := e.depth.w + 2
	wall := e.at(e.section.Far.Millimetres(), 0).X
	d.stroke(thin, Point{wall, top}, Point{x - overLine, top})
	d.stroke(thin, Point{x, e.table}, Point{x, top})
	for _, y := range []Paper{top, e.table} {
		d.stroke(thick, Point{x - obliqueReach, y + obliqueReach}, Point{x + obliqueReach, y - obliqueReach})
	}
	d.text(e.depth, 0, min(top+e.table-e.depth.h, 2*(e.table-e.depth.h))/2)
}
