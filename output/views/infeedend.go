// Package views draws work to scale: at the machine the section at the bit as it
// is seen from the infeed end and the table from above, and joints, whose halves
// it shows apart and together.
package views

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// infeedEnd is the section at the bit as somebody sees it who stands at the
// infeed end of the table and looks along the fence: the fence on the right,
// the work in front of it, the bit rising out of the table. Lengths are in
// millimetres at the machine, from the fence face out and from the table up.
type infeedEnd struct {
	s       setting.Setter
	u       *deck.Setup
	c       *deck.Run
	section deck.Section
	Scale   drawingScale
	y, z    axis

	plain       bool        // no side of the work is named
	room        paper.Paper // to the right edge
	face, table paper.Paper // where the fence face and the table lie
	fenceAt     measure.Length
	near        paper.Block // the dimension from the fence to there
	depth       paper.Block
	down        paper.Block // the name of the side on the table
	takes       paper.Block // what each pass of a shaped edge takes
}

// Measures of the drawing round the work.
const (
	fenceThick paper.Paper = 10
	tableThick paper.Paper = 5.5
	besideName paper.Paper = 5
)

// SetupSection is the section of a setup, at the run with the deepest cut; the
// sides are left unnamed, since every run has its own.
func SetupSection(s setting.Setter, u *deck.Setup, w, h paper.Paper) paper.Block {
	deepest := &u.Runs[0]
	for i := range u.Runs {
		if r := &u.Runs[i]; top(r) > top(deepest) {
			deepest = r
		}
	}
	e := infeedEnd{s: s, u: u, c: deepest, section: deepest.Section(), room: w - 3, plain: true}
	b, ok := e.lay(w-3, h-3)
	if !ok {
		return paper.Block{}
	}
	return paper.Framed(paper.Centred(b, w-3, h-3), 1.5, paper.Thin)
}

// top is a run's greatest height.
func top(r *deck.Run) measure.Length { return r.Heights[len(r.Heights)-1] }

// InfeedEnd lays the section of a run out in a width and height. It reports
// whether there is room.
func InfeedEnd(s setting.Setter, u *deck.Setup, r *deck.Run, w, h paper.Paper) (paper.Block, bool) {
	e := infeedEnd{s: s, u: u, c: r, section: r.Section(), room: w}
	return e.lay(w, h)
}

func (e *infeedEnd) lay(w, h paper.Paper) (paper.Block, bool) {
	e.fenceAt = e.u.SetTo().NearEdge
	e.near = e.s.Say(w, e.s.Plain(e.fenceAt))
	if e.plain { // the exact length stands in the fence box
		if forward, shaped := wording.Forward(e.u); shaped {
			e.fenceAt = -forward
		}
		e.near = e.s.Say(w, e.s.Scale.Read(e.fenceAt.Abs()).String())
		if e.fenceAt < 0 && e.u.Bit.Outline == nil {
			e.near = e.s.Say(w, e.s.Scale.Read(e.fenceAt).String())
		}
	}
	e.depth = e.s.Say(w, e.s.Plain(e.u.SetAt(e.section.Depth)))
	if e.plain { // it stands among the heights as well
		e.depth = e.s.Say(w, e.s.Scale.Read(e.u.SetAt(e.section.Depth)).String())
	}
	e.down = e.name(e.c.Step.Down, "down", w)
	e.takes = e.passesTake(w)
	fits := func(try drawingScale) (bool, int) { return e.fit(try, w, h), e.y.broken() + e.z.broken() }
	if choose(e.s, e.u, fits) {
		return e.draw(), true
	}
	return paper.Block{}, false
}

// above and below are the heights of what stands over and under the work.
func (e *infeedEnd) above() paper.Paper { return besideName + 2 }
func (e *infeedEnd) below() paper.Paper {
	return tableThick + e.near.H + paper.TextClear + paper.OverLine + 0.5
}

// lastLine is room for the scale where it does not fit beside the fence.
const lastLine paper.Paper = 4

func (e *infeedEnd) fit(try drawingScale, w, h paper.Paper) bool {
	e.Scale = try
	var yOK, zOK bool
	section := e.section
	near, far := e.u.Fence.NearEdge.Millimetres(), e.u.Fence.FarEdge.Millimetres()
	// The name of the side that is down stands in the table, between the depth and the bit.
	beside := paper.Paper((section.Across.Millimetres() - far) * try.size)
	left := max(e.depth.W+4, e.depthAt()+paper.ObliqueReach+paper.TextClear+e.down.W+3-beside)
	right := max(fenceThick, paper.Paper(-near*try.size)+2)
	e.y, yOK = newAxis(try.size, w-left-right, aroundPoints,
		[]span{point(0), point(section.Across.Millimetres()), {max(near, 0), far}, {section.Near.Millimetres(), section.Far.Millimetres()}})
	foot := lastLine
	if e.plain { // the scale has room over the work
		foot = 0
	}
	if e.takes.H > 0 {
		foot += e.takes.H + paper.TextClear
	}
	e.z, zOK = newAxis(try.size, h-e.above()-e.below()-foot, aroundPoints,
		[]span{{0, section.Depth.Millimetres()}, point(section.Up.Millimetres())})
	if yOK && zOK {
		e.face = left + e.y.length()
		e.table = e.above() + e.z.length()
		left, _, _ := e.dimension().Extent()
		yOK = left >= 0
	}
	return yOK && zOK
}

// at places a point by its distance from the fence face and from the table.
func (e *infeedEnd) at(y, z float64) paper.Point {
	return paper.At(e.face-e.out(y), e.table-e.z.place(z))
}

// out is the distance from the fence face on paper; behind the face, where a
// bit may be buried, nothing is left out.
func (e *infeedEnd) out(y float64) paper.Paper {
	if y < 0 {
		return paper.Paper(y * e.Scale.size)
	}
	return e.y.place(y)
}

// box is a rectangle between two distances from the fence and two heights.
func (e *infeedEnd) box(y1, y2, z1, z2 float64) paper.Box {
	a, b := e.at(y2, z2), e.at(y1, z1)
	return paper.Box{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y}
}

func (e *infeedEnd) draw() paper.Block {
	fence := e.name(e.c.Step.Fence, "at fence", e.room)
	if e.depth.W+1+fence.W > e.room {
		fence = e.name(e.c.Step.Fence, "", e.room)
	}
	d := &paper.Drawing{W: max(e.depth.W+1+fence.W, e.face+max(fenceThick, -e.out(e.u.Fence.NearEdge.Millimetres())+2))}
	e.fence(d)
	e.work(d)
	e.bit(d)
	for _, y := range e.y.breaks() {
		d.Interrupt(paper.Box{X: e.face - y - breakRoom/2, Y: e.above() - 1, W: breakRoom, H: e.table - e.above() + 1})
	}
	d.H = e.table + e.below()
	e.names(d, fence)
	e.dimensions(d)
	if e.takes.H > 0 {
		d.W = max(d.W, e.takes.W)
		d.Text(e.takes, 0, d.H+paper.TextClear)
	}
	return d.Block()
}

func (e *infeedEnd) fence(d *paper.Drawing) {
	top := e.above() - 2
	b := paper.Box{X: e.face, Y: top, W: d.W - e.face, H: e.table - top}
	d.Hatch(b, 3)
	d.Stroke(paper.Pen{Width: 0.7}, paper.At(b.X, b.Bottom()), paper.At(b.X, b.Y))
	d.Stroke(paper.Thin, paper.At(b.X, b.Y), paper.At(b.Right(), b.Y))
	d.Stroke(paper.Pen{Width: 0.7}, paper.At(0, e.table), paper.At(d.W, e.table))
	d.Stroke(paper.Thin, paper.At(0, e.table+tableThick), paper.At(d.W, e.table+tableThick))
}

// work draws the cut surface of the work round the channel as this run leaves
// it; what later runs take still stands, in hidden lines.
func (e *infeedEnd) work(d *paper.Drawing) {
	if e.c.Channel.Section.Shaped() {
		e.shapedWork(d)
		return
	}
	s := e.section
	across, up := s.Across.Millimetres(), s.Up.Millimetres()
	near, far, depth := s.Near.Millimetres(), s.Far.Millimetres(), s.Depth.Millimetres()
	if l, r := e.c.Uncut(); l != r {
		from, to := l.Millimetres(), r.Millimetres()
		d.Stroke(paper.Hidden, e.at(from, depth), e.at(to, depth))
		if r == s.Far {
			d.Stroke(paper.Hidden, e.at(far, 0), e.at(far, depth))
			far = from
		} else {
			d.Stroke(paper.Hidden, e.at(near, 0), e.at(near, depth))
			near = to
		}
	}
	for _, b := range []paper.Box{e.box(0, across, depth, up), e.box(0, near, 0, depth), e.box(far, across, 0, depth)} {
		if b.W > 0 && b.H > 0 {
			d.Hatch(b, 2)
		}
	}
	d.Stroke(paper.Thick, e.at(near, 0), e.at(near, depth), e.at(far, depth), e.at(far, 0))
	d.Stroke(paper.Thick, e.box(0, across, 0, up).Path()...)
}

// bit draws the bit at its full height, a line across it for every pass, and
// its axis.
func (e *infeedEnd) bit(d *paper.Drawing) {
	if e.c.Channel.Section.Shaped() {
		e.shapedBit(d)
		return
	}
	near, far := e.u.Fence.NearEdge.Millimetres(), e.u.Fence.FarEdge.Millimetres()
	top := e.c.Heights[len(e.c.Heights)-1].Millimetres()
	b := e.box(near, far, 0, top)
	d.Fill(paper.White, b.Path()...)
	b.H += tableThick
	d.Fill(paper.Mid, b.Path()...)
	d.Stroke(paper.Thick, b.Path()...)
	for _, z := range e.c.Heights[:len(e.c.Heights)-1] {
		y := e.at(0, z.Millimetres()).Y
		d.Stroke(paper.Pen{Width: 0.35}, paper.At(b.X, y), paper.At(b.Right(), y))
	}
	middle := b.X + b.W/2
	d.Stroke(paper.Centre, paper.At(middle, b.Y-2), paper.At(middle, b.Bottom()+2))
}

// name names a side of the work and says how it lies.
func (e *infeedEnd) name(side joinery.Side, how string, w paper.Paper) paper.Block {
	if e.plain {
		return paper.Phrase{}.Say(e.s.Bold(paper.Least), map[string]string{"down": "TABLE", "at fence": "FENCE", "": "FENCE"}[how]).Set(w)
	}
	return paper.Phrase{}.Say(e.s.Bold(paper.Least), strings.ToUpper(side.String())+" "+how).Set(w)
}

// names names the sides of the work that lie on the table and at the fence.
func (e *infeedEnd) names(d *paper.Drawing, fence paper.Block) {
	d.Text(fence, d.W-fence.W, 0)
	scale := e.s.Say(e.room, scaled(e.s, e.Scale))
	if e.plain {
		d.W = max(d.W, fence.W+3+scale.W)
	}
	if beside := d.W - fence.W - scale.W - 2; beside >= e.depth.W {
		d.Text(scale, beside, 0)
	} else {
		d.Text(scale, 0, d.H)
	}
	d.Text(e.down, e.depthAt()+paper.ObliqueReach+paper.TextClear, e.table+(tableThick-e.down.H)/2)
}

// dimension is the distance that the fence is set to: to the near edge or, of a
// shaped edge in the section of a setup, to the pilot.
func (e *infeedEnd) dimension() paper.Dimension {
	from, to := e.at(e.fenceAt.Millimetres(), 0).X, e.face
	y := e.table + tableThick + 0.5 + e.near.H + paper.TextClear
	return paper.Dimension{From: min(from, to), To: max(from, to), Y: y, Text: e.near, Outside: -1}
}

// depthAt is where the line of the depth stands, whose lower stroke reaches below the
// table's surface: what is written there keeps clear of it.
func (e *infeedEnd) depthAt() paper.Paper { return e.depth.W + 2 }

// dimensions gives the depth on the left and the fence distance below.
func (e *infeedEnd) dimensions(d *paper.Drawing) {
	if m := e.dimension(); m.From != m.To {
		for _, x := range []paper.Paper{m.From, m.To} {
			d.Stroke(paper.Thin, paper.At(x, e.table+tableThick+0.5), paper.At(x, m.Y+paper.OverLine))
		}
		d.Dimension(m)
	}

	top := e.at(0, e.section.Depth.Millimetres()).Y
	x := e.depthAt()
	wall := e.at(e.section.Far.Millimetres(), 0).X
	d.Stroke(paper.Thin, paper.At(wall, top), paper.At(x-paper.OverLine, top))
	d.Stroke(paper.Thin, paper.At(x, e.table), paper.At(x, top))
	for _, y := range []paper.Paper{top, e.table} {
		d.Stroke(paper.Thick, paper.At(x-paper.ObliqueReach, y+paper.ObliqueReach), paper.At(x+paper.ObliqueReach, y-paper.ObliqueReach))
	}
	d.Text(e.depth, 0, min(top+e.table-e.depth.H, 2*(e.table-e.depth.H))/2)
}
