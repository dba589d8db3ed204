package views

import (
	"slices"

	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// steps is into how many lines the outline of a bit is drawn.
const steps = 48

// outline is where the bit's outline stands with the bit raised so far: places in
// the drawing from the table up to the pilot, and its reach not less than least.
func (e *infeedEnd) outline(raise float64, reach func(z float64) float64) []paper.Point {
	path := make([]paper.Point, 0, steps+1)
	for i := range steps + 1 {
		z := raise * float64(i) / steps
		path = append(path, e.at(reach(z), z))
	}
	return path
}

// shapedWork draws the cut surface of the work round a shaped edge, as the last
// pass of this run leaves it, with a thin line where each pass before it stops, so
// that what lies between two lines is what one pass takes. What later runs take
// still stands, in hidden lines.
func (e *infeedEnd) shapedWork(d *paper.Drawing) {
	s := e.section
	across, up := s.Across.Millimetres(), s.Up.Millimetres()
	section := deck.SectionAt(e.c.Step, e.c.Channel)
	d.Hatch(e.box(0, across, 0, up), 2)
	full := e.c.Heights[len(e.c.Heights)-1]
	last := e.outline(full.Millimetres(), func(z float64) float64 { return section.ReachAt(full, z) })
	gone := append(slices.Clone(last), e.at(0, full.Millimetres()), e.at(0, 0))
	d.Fill(paper.White, append(gone, gone[0])...)
	// The corners of the work that are left stand in thick lines.
	first, end := last[0], last[len(last)-1]
	d.Stroke(paper.Thick, last...)
	d.Stroke(paper.Thick, end, e.at(0, full.Millimetres()), e.at(0, up), e.at(across, up), e.at(across, 0), first)
	e.passes(d)
	if want := e.c.Channel.Section; want.Forward < section.Forward {
		d.Stroke(paper.Hidden, e.outline(full.Millimetres(), func(z float64) float64 { return want.ReachAt(full, z) })...)
	}
}

// shapedBit draws the bit behind the work: its outline on both sides of its axis,
// and the pilot over it.
func (e *infeedEnd) shapedBit(d *paper.Drawing) {
	bit, full := e.u.Bit, e.c.Heights[len(e.c.Heights)-1]
	centre, pilot := e.u.Fence.Centre.Millimetres(), bit.Pilot.Millimetres()/2
	radius := func(z float64) float64 { return pilot + bit.Outline.ReachAt(full.Millimetres()-z) }
	out := e.outline(full.Millimetres(), func(z float64) float64 { return centre + radius(z) })
	in := e.outline(full.Millimetres(), func(z float64) float64 { return centre - radius(z) })
	slices.Reverse(in)
	far, near := e.at(centre+radius(0), 0), e.at(centre-radius(0), 0)
	body := slices.Concat(out, in, []paper.Point{paper.At(near.X, near.Y+tableThick), paper.At(far.X, far.Y+tableThick)})
	body = append(body, body[0])
	left, right := e.at(centre+pilot, full.Millimetres()), e.at(centre-pilot, full.Millimetres())
	over := paper.Box{X: left.X, Y: left.Y - pilotHigh, W: right.X - left.X, H: pilotHigh}
	for _, part := range [][]paper.Point{body, over.Path()} {
		d.Fill(paper.White, part...)
		d.Fill(paper.Mid, part...)
		d.Stroke(paper.Thick, part...)
	}
	middle := (left.X + right.X) / 2
	d.Stroke(paper.Centre, paper.At(middle, over.Y-2), paper.At(middle, far.Y+tableThick+2))
	// What each pass takes shows through the bit that took it.
	e.passes(d)
}

// passes draws a thin line where each pass before the last stops.
func (e *infeedEnd) passes(d *paper.Drawing) {
	section := deck.SectionAt(e.c.Step, e.c.Channel)
	for _, h := range e.c.Heights[:len(e.c.Heights)-1] {
		d.Stroke(paper.Pen{Width: 0.35}, append(e.outline(h.Millimetres(), func(z float64) float64 { return section.ReachAt(h, z) }), e.at(0, h.Millimetres()))...)
	}
}

// passesTake says how much wood each pass of a shaped edge takes; nothing of a
// rectangle.
func (e *infeedEnd) passesTake(w paper.Paper) paper.Block {
	areas := e.c.Areas()
	if len(areas) == 0 {
		return paper.Block{}
	}
	return e.s.Say(w, wording.PassesTake(areas, e.s.Scale))
}

// pilotHigh is how high a pilot is drawn; no shop file says it.
const pilotHigh paper.Paper = 2.5
