package output

import (
	"math"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// fromAbove is the drawing of the table as the operator sees it: the fence
// across the back, the bit, and the work at the start (solid lines) and at the
// stop (long-dash double-dot lines). Lengths are in millimetres at the machine,
// x to the right from the bit's centre, y from the fence toward the operator.
type fromAbove struct {
	s     setter
	u     *deck.Setup
	c     *deck.Run
	scale drawingScale
	x, y  axis

	radius      float64
	centre      float64 // of the bit, from the fence
	long, wide  float64 // the work, along the feed and across it
	start, stop float64 // where the leading end is

	left, top Paper // where the axes begin
	rows      []dimensionRow
}

// dimensionRow is a chain of dimensions below the work, of one mark.
type dimensionRow struct {
	name string
	pen  Pen // of the work at this mark
	flag guideMark
	stop stopBlock
	at   [3]float64 // leading end, edge of the bit, tail end
	text [2]block
}

// Heights of the rows round the work.
const (
	aboveFence   Paper = 5 // infeed and outfeed
	fenceBand    Paper = 4
	flagRow      Paper = 5 // which end leads
	besideWork   Paper = 1.5
	turnClear    Paper = 1.5 // from the bit to the arrow that shows how it turns
	aroundPoints Paper = 4   // paper shown round a point of interest at least
)

// fromAbove lays the drawing out in a width and height. It reports whether
// there is room.
func (s setter) fromAbove(u *deck.Setup, r *deck.Run, w, h Paper) (drawn, bool) {
	f := fromAbove{s: s, u: u, c: r}
	f.radius = u.Bit.True().Millimetres() / 2
	f.centre = u.Fence.Centre.Millimetres()
	f.long = r.Length.Millimetres()
	f.wide = r.Section().Across.Millimetres()
	f.rows = f.chains()
	fits := func(try drawingScale) (bool, int) { return f.fit(try, w, h), f.x.broken() + f.y.broken() }
	if s.choose(u, fits) {
		return drawn{f.draw(w), Paper(2 * f.radius * f.scale.size)}, true
	}
	return drawn{}, false
}

// choose finds the scale of a drawing: of those that leave the bit large
// enough to be read from a distance the one with the fewest breaks, and of
// several the largest; where the bit is that large at none, the largest at
// which the drawing fits. The function that tries a scale says whether the
// drawing fits, and in how many places it is broken; it is left as it was at
// the scale chosen.
func (s setter) choose(u *deck.Setup, try func(drawingScale) (fits bool, breaks int)) bool {
	bit := Paper(u.Bit.True().Millimetres())
	want := min(s.grade.bit, bit)
	var best *drawingScale
	fewest := 0
	for _, scale := range s.drawings() {
		fits, breaks := try(scale)
		large := bit*Paper(scale.size) >= want
		if fits && (best == nil || large && breaks < fewest) {
			best, fewest = &scale, breaks
		}
	}
	if best == nil {
		return false
	}
	try(*best)
	return true
}

// chains makes the dimensions of the marks that there are.
func (f *fromAbove) chains() []dimensionRow {
	var rows []dimensionRow
	chain := func(name string, pen Pen, m *deck.Mark, edge float64, stop bool) {
		lead := -m.LeadPastCentre.Millimetres()
		rows = append(rows, dimensionRow{name, pen, f.guide(stop), f.block(stop), [3]float64{lead, edge, lead + f.long},
			[2]block{f.s.small(m.LeadPastEdge), f.s.small(m.TailBeforeEdge)}})
	}
	if m := f.c.Start; m != nil {
		f.start = -m.LeadPastCentre.Millimetres()
		chain("START", thick, m, -f.radius, false)
	}
	if m := f.c.Stop; m != nil {
		f.stop = -m.LeadPastCentre.Millimetres()
		chain("STOP", phantom, m, f.radius, true)
	}
	return rows
}

// small sets a length in the letters of a drawing.
func (s setter) small(l joinery.Length) block {
	return phrase{}.count(s.number(s.letters(s.grade.body), l)).set(s.frame.W)
}

// rowHeight is the height of a dimension row.
func (f *fromAbove) rowHeight() Paper {
	h := Paper(0)
	for _, r := range f.rows {
		h = max(h, r.text[0].h, r.text[1].h)
	}
	return h + textClear + overLine
}

// fit tries a scale.
func (f *fromAbove) fit(try drawingScale, w, h Paper) bool {
	f.scale = try
	// A cut that is fed in or run out has no mark: the work is shown clear of
	// the bit.
	clear := f.radius + 6/try.size
	if f.c.Start == nil {
		f.start = clear
	}
	if f.c.Stop == nil {
		f.stop = -clear - f.long
	}
	var ok bool
	f.top = aboveFence + fenceBand
	if behind := f.radius - f.centre; behind > 0 {
		f.top = aboveFence + max(fenceBand, Paper(behind*try.size)+turnClear+2)
	}
	rest := h - f.top - besideWork - flagRow - Paper(len(f.rows))*f.rowHeight()
	f.y, ok = newAxis(try.size, rest, aroundPoints, []span{point(0), point(f.wide), {max(0, f.centre-f.radius), f.centre + f.radius}})
	if !ok {
		return false
	}
	return f.fitAlong(w)
}

// fitAlong places the feed in a width, leaving room on the left for the names
// of the rows and on both sides for texts that stand outside their dimensions.
func (f *fromAbove) fitAlong(w Paper) bool {
	names := f.s.letters(least).width("START") + 6
	front, back := f.besideWork(w)
	f.left = max(names, front)
	right := max(1.6, back) // half a mark on the fence
	for range 3 {
		var ok bool
		if f.x, ok = newAxis(f.scale.size, w-f.left-right, aroundPoints, f.seen()); !ok {
			return false
		}
		over, past := Paper(0), Paper(0)
		for _, r := range f.rows {
			for _, m := range f.dimensions(r, 0) {
				from, _, to := m.extent()
				over, past = max(over, names-from), max(past, to-w)
			}
		}
		if over <= touching && past <= touching {
			return true
		}
		f.left += over
		right += past
	}
	return false
}

// seen are the places along the feed that must be seen.
func (f *fromAbove) seen() []span {
	a, b := f.channel()
	all := []span{{-f.radius, f.radius}}
	for _, x := range []float64{f.start, f.stop, f.start + f.long, f.stop + f.long, a, b} {
		all = append(all, point(x))
	}
	return all
}

// channel returns where the channel begins and ends while the work is at the
// start.
func (f *fromAbove) channel() (from, to float64) {
	return f.start + f.c.A.Millimetres(), f.start + f.c.B.Millimetres()
}

func (f *fromAbove) at(x, y float64) Point {
	return Point{f.left + f.x.place(x), f.top + f.y.place(y)}
}

// draw draws everything, from the top of the drawing down.
func (f *fromAbove) draw(w Paper) block {
	d := &drawing{w: w}
	workEnd := f.at(0, max(f.wide, f.centre+f.radius)).Y
	f.fence(d, w)
	f.work(d)
	f.bit(d)
	f.blocks(d)
	for _, x := range f.x.breaks() {
		d.interrupt(Box{f.left + x - breakRoom/2, f.top - 1, breakRoom, workEnd - f.top + 2})
	}
	for _, y := range f.y.breaks() {
		d.interrupt(Box{f.left - 1, f.top + y - breakRoom/2, f.x.length() + 2, breakRoom})
	}
	f.flag(d, workEnd+besideWork)
	y := workEnd + besideWork + flagRow
	for _, r := range f.rows {
		y += f.rowHeight()
		f.chain(d, r, y-overLine, workEnd)
	}
	d.h = y
	return d.block()
}

// outline draws the work with its leading end at a place.
func (f *fromAbove) outline(d *drawing, pen Pen, lead float64) {
	a, b := f.at(lead, 0), f.at(lead+f.long, f.wide)
	d.stroke(pen, Box{a.X, a.Y, b.X - a.X, b.Y - a.Y}.Path()...)
}

func (f *fromAbove) work(d *drawing) {
	f.outline(d, phantom, f.stop)
	f.outline(d, thick, f.start)
	// The channel lies on the underside, so its edges are hidden.
	from, to := f.channel()
	s := f.c.Section()
	near, far := s.Near.Millimetres(), s.Far.Millimetres()
	a, b := f.at(from, near), f.at(to, far)
	for _, y := range []Paper{a.Y, b.Y} {
		d.stroke(hidden, Point{a.X, y}, Point{b.X, y})
	}
	if f.c.Start != nil {
		d.stroke(hidden, f.roundEnd(from, near, far, 1)...)
	}
	if f.c.Stop != nil {
		d.stroke(hidden, f.roundEnd(to, near, far, -1)...)
	}
}

// roundEnd returns the end the bit leaves at x, between the walls; inward is
// +1 where the channel lies to the right of it, -1 to the left. A bit buried
// in the fence or overhanging the work leaves only a part of its round.
func (f *fromAbove) roundEnd(x, near, far, inward float64) []Point {
	upper := min(near, f.centre-f.radius) + f.radius
	lower := max(far, f.centre+f.radius) - f.radius
	const steps = 16
	path := make([]Point, steps+1)
	for i := range path {
		// Steps of equal angle, not of equal y, where the round is steep.
		y := near + (far-near)*(1-math.Cos(math.Pi*float64(i)/steps))/2
		off := min(f.radius, max(upper-y, y-lower, 0))
		path[i] = f.at(x+inward*(f.radius-math.Sqrt(f.radius*f.radius-off*off)), y)
	}
	return path
}

// bit draws the bit, its centre lines and which way it turns.
func (f *fromAbove) bit(d *drawing) {
	at, r := f.at(0, f.centre), Paper(f.radius*f.scale.size)
	d.circle(at, r, Mid, thick)
	d.stroke(centre, at.Add(-r-2, 0), at.Add(r+2, 0))
	d.stroke(centre, at.Add(0, -r-2), at.Add(0, r+2))
	turn := arc(at, r+turnClear, 20, 100)
	d.arrow(thick, 2, turn...)
}

// dimensions are the two dimensions of a row whose line is at y.
func (f *fromAbove) dimensions(r dimensionRow, y Paper) [2]dimension {
	var x [3]Paper
	for i, at := range r.at {
		x[i] = f.at(at, 0).X
	}
	return [2]dimension{{x[0], x[1], y, r.text[0], -1}, {x[1], x[2], y, r.text[1], +1}}
}

// chain draws the dimensions of one mark.
func (f *fromAbove) chain(d *drawing, r dimensionRow, y, workEnd Paper) {
	for _, at := range r.at {
		x := f.at(at, 0).X
		d.stroke(thin, Point{x, workEnd + 1}, Point{x, y + overLine})
	}
	name := phrase{}.say(f.s.letters(least), r.name).set(d.w)
	d.text(name, 0, y-name.h-0.5)
	d.stroke(r.pen, Point{0, y}, Point{max(name.w, 10), y})
	r.flag.draw(d, Point{name.w + 2.2, y - 1})
	if r.flag.Guide == deck.ByLine && r.stop != noBlock {
		crossed(d, Box{name.w + 1, y - 1 - blockWide, blockWide, blockWide})
	}
	for _, m := range f.dimensions(r, y) {
		d.dimension(m)
	}
}
