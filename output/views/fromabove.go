package views

import (
	"math"

	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/setup/deck"
)

// fromAbove is the drawing of the table as the operator sees it: the fence
// across the back, the bit, and the work at the start (solid lines) and at the
// stop (long-dash double-dot lines). Lengths are in millimetres at the machine,
// x to the right from the bit's centre, y from the fence toward the operator.
type fromAbove struct {
	s     setting.Setter
	u     *deck.Setup
	c     *deck.Run
	Scale drawingScale
	x, y  axis

	radius      float64
	half        float64 // of what cuts along the fence: the radius, or half the chord of a shaped edge
	round       float64 // the radius of the ends that the bit leaves
	centre      float64 // of the bit, from the fence
	Long, wide  float64 // the work, along the feed and across it
	start, stop float64 // where the leading end is

	left, top paper.Paper // where the axes begin
	rows      []dimensionRow
}

// dimensionRow is a chain of dimensions below the work, of one mark.
type dimensionRow struct {
	Name string
	pen  paper.Pen // of the work at this mark
	flag guideMark
	stop stopBlock
	at   [3]float64 // leading end, edge of the bit, tail end
	text [2]paper.Block
}

// Heights of the rows round the work.
const (
	aboveFence   paper.Paper = 5 // infeed and outfeed
	fenceBand    paper.Paper = 4
	flagRow      paper.Paper = 5 // which end leads
	besideWork   paper.Paper = 1.5
	turnClear    paper.Paper = 1.5 // from the bit to the arrow that shows how it turns
	aroundPoints paper.Paper = 4   // paper shown round a point of interest at least
)

// FromAbove lays the drawing out in a width and height. It reports whether
// there is room.
func FromAbove(s setting.Setter, u *deck.Setup, r *deck.Run, w, h paper.Paper) (paper.Block, bool) {
	f := fromAbove{s: s, u: u, c: r}
	f.radius = u.Bit.True().Millimetres() / 2
	f.centre = u.Fence.Centre.Millimetres()
	f.half, f.round = r.Along().Millimetres()/2, f.radius
	if r.Channel.Section.Shaped() {
		f.round = math.Hypot(f.half, f.centre)
	}
	f.Long = r.Length.Millimetres()
	f.wide = r.Section().Across.Millimetres()
	f.rows = f.chains()
	fits := func(try drawingScale) (bool, int) { return f.fit(try, w, h), f.x.broken() + f.y.broken() }
	if choose(s, u, fits) {
		return f.draw(w), true
	}
	return paper.Block{}, false
}

// distinct is how large a bit must be on paper to be told at arm's length.
const distinct paper.Paper = 3

// choose finds the scale of a drawing: of those that leave the bit large
// enough to be read from a distance the one with the fewest breaks, and of
// several the largest; where the bit is that large at none, the largest at
// which the drawing fits. The function that tries a scale says whether the
// drawing fits, and in how many places it is broken; it is left as it was at
// the scale chosen.
func choose(s setting.Setter, u *deck.Setup, try func(drawingScale) (fits bool, breaks int)) bool {
	bit := paper.Paper(u.Bit.True().Millimetres())
	want := min(distinct, bit)
	if u.Bit.Outline != nil {
		want = bit // its form counts, not where it stands: as large as can be
	}
	var best *drawingScale
	fewest := 0
	for _, scale := range drawings(s) {
		fits, breaks := try(scale)
		large := bit*paper.Paper(scale.size) >= want
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
	chain := func(name string, pen paper.Pen, m *deck.Mark, edge float64, stop bool) {
		lead := -m.LeadPastCentre.Millimetres()
		rows = append(rows, dimensionRow{name, pen, f.guide(stop), f.block(stop), [3]float64{lead, edge, lead + f.Long},
			[2]paper.Block{small(f.s, m.LeadPastEdge), small(f.s, m.TailBeforeEdge)}})
	}
	if m := f.c.Start; m != nil {
		f.start = -m.LeadPastCentre.Millimetres()
		chain("START", paper.Thick, m, -f.half, false)
	}
	if m := f.c.Stop; m != nil {
		f.stop = -m.LeadPastCentre.Millimetres()
		chain("STOP", paper.Phantom, m, f.half, true)
	}
	return rows
}

// small sets a length in the letters of a drawing.
func small(s setting.Setter, l measure.Length) paper.Block {
	return paper.Phrase{}.Count(s.Number(s.Letters(3.2), l)).Set(s.Frame.W)
}

// rowHeight is the height of a dimension row.
func (f *fromAbove) rowHeight() paper.Paper {
	h := paper.Paper(0)
	for _, r := range f.rows {
		h = max(h, r.text[0].H, r.text[1].H)
	}
	return h + paper.TextClear + paper.OverLine
}

// fit tries a scale.
func (f *fromAbove) fit(try drawingScale, w, h paper.Paper) bool {
	f.Scale = try
	// A cut that is fed in or run out has no mark: the work is shown clear of
	// the bit.
	clear := f.radius + 6/try.size
	if f.c.Start == nil {
		f.start = clear
	}
	if f.c.Stop == nil {
		f.stop = -clear - f.Long
	}
	var ok bool
	f.top = aboveFence + fenceBand
	if behind := f.radius - f.centre; behind > 0 {
		f.top = aboveFence + max(fenceBand, paper.Paper(behind*try.size)+turnClear+2)
	}
	rest := h - f.top - besideWork - flagRow - paper.Paper(len(f.rows))*f.rowHeight()
	f.y, ok = newAxis(try.size, rest, aroundPoints, []span{point(0), point(f.wide), {max(0, f.centre-f.radius), f.centre + f.radius}})
	if !ok {
		return false
	}
	return f.fitAlong(w)
}

// fitAlong places the feed in a width, leaving room on the left for the names
// of the rows and on both sides for texts that stand outside their dimensions.
func (f *fromAbove) fitAlong(w paper.Paper) bool {
	names := f.s.Letters(paper.Least).Width("START") + 6
	front, back := f.besideWork(w)
	f.left = max(names, front)
	right := max(1.6, back) // half a mark on the fence
	for range 3 {
		var ok bool
		if f.x, ok = newAxis(f.Scale.size, w-f.left-right, aroundPoints, f.seen()); !ok {
			return false
		}
		over, past := paper.Paper(0), paper.Paper(0)
		for _, r := range f.rows {
			for _, m := range f.dimensions(r, 0) {
				from, _, to := m.Extent()
				over, past = max(over, names-from), max(past, to-w)
			}
		}
		if over <= paper.Touching && past <= paper.Touching {
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
	for _, x := range []float64{f.start, f.stop, f.start + f.Long, f.stop + f.Long, a, b} {
		all = append(all, point(x))
	}
	return all
}

// channel returns where the channel begins and ends while the work is at the
// start.
func (f *fromAbove) channel() (from, to float64) {
	return f.start + f.c.A.Millimetres(), f.start + f.c.B.Millimetres()
}

func (f *fromAbove) at(x, y float64) paper.Point {
	return paper.At(f.left+f.x.place(x), f.top+f.y.place(y))
}

// draw draws everything, from the top of the drawing down.
func (f *fromAbove) draw(w paper.Paper) paper.Block {
	d := &paper.Drawing{W: w}
	workEnd := f.at(0, max(f.wide, f.centre+f.radius)).Y
	f.fence(d, w)
	f.work(d)
	f.bit(d)
	f.blocks(d)
	for _, x := range f.x.breaks() {
		d.Interrupt(paper.Box{X: f.left + x - breakRoom/2, Y: f.top - 1, W: breakRoom, H: workEnd - f.top + 2})
	}
	for _, y := range f.y.breaks() {
		d.Interrupt(paper.Box{X: f.left - 1, Y: f.top + y - breakRoom/2, W: f.x.length() + 2, H: breakRoom})
	}
	f.flag(d, workEnd+besideWork)
	y := workEnd + besideWork + flagRow
	for _, r := range f.rows {
		y += f.rowHeight()
		f.chain(d, r, y-paper.OverLine, workEnd)
	}
	d.H = y
	return d.Block()
}

// outline draws the work with its leading end at a place.
func (f *fromAbove) outline(d *paper.Drawing, pen paper.Pen, lead float64) {
	a, b := f.at(lead, 0), f.at(lead+f.Long, f.wide)
	d.Stroke(pen, paper.Box{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y}.Path()...)
}

func (f *fromAbove) work(d *paper.Drawing) {
	f.outline(d, paper.Phantom, f.stop)
	f.outline(d, paper.Thick, f.start)
	// The channel lies on the underside, so its edges are hidden.
	from, to := f.channel()
	s := f.c.Section()
	near, far := s.Near.Millimetres(), s.Far.Millimetres()
	a, b := f.at(from, near), f.at(to, far)
	for _, y := range []paper.Paper{a.Y, b.Y} {
		d.Stroke(paper.Hidden, paper.At(a.X, y), paper.At(b.X, y))
	}
	if f.c.Start != nil {
		d.Stroke(paper.Hidden, f.roundEnd(from, near, far, 1)...)
	}
	if f.c.Stop != nil {
		d.Stroke(paper.Hidden, f.roundEnd(to, near, far, -1)...)
	}
}

// roundEnd returns the end the bit leaves at x, between the walls; inward is
// +1 where the channel lies to the right of it, -1 to the left. A bit buried
// in the fence or overhanging the work leaves only a part of its round.
func (f *fromAbove) roundEnd(x, near, far, inward float64) []paper.Point {
	upper := min(near, f.centre-f.round) + f.round
	lower := max(far, f.centre+f.round) - f.round
	const steps = 16
	path := make([]paper.Point, steps+1)
	for i := range path {
		// Steps of equal angle, not of equal y, where the round is steep.
		y := near + (far-near)*(1-math.Cos(math.Pi*float64(i)/steps))/2
		off := min(f.round, max(upper-y, y-lower, 0))
		path[i] = f.at(x+inward*(f.half-math.Sqrt(f.round*f.round-off*off)), y)
	}
	return path
}

// bit draws the bit, its centre lines and which way it turns.
func (f *fromAbove) bit(d *paper.Drawing) {
	at, r := f.at(0, f.centre), paper.Paper(f.radius*f.Scale.size)
	d.Circle(at, r, paper.Mid, paper.Thick)
	d.Stroke(paper.Centre, at.Add(-r-2, 0), at.Add(r+2, 0))
	d.Stroke(paper.Centre, at.Add(0, -r-2), at.Add(0, r+2))
	turn := paper.Arc(at, r+turnClear, 20, 100)
	d.Arrow(paper.Thick, 2, turn...)
}

// dimensions are the two dimensions of a row whose line is at y.
func (f *fromAbove) dimensions(r dimensionRow, y paper.Paper) [2]paper.Dimension {
	var x [3]paper.Paper
	for i, at := range r.at {
		x[i] = f.at(at, 0).X
	}
	return [2]paper.Dimension{
		{From: x[0], To: x[1], Y: y, Text: r.text[0], Outside: -1},
		{From: x[1], To: x[2], Y: y, Text: r.text[1], Outside: +1},
	}
}

// chain draws the dimensions of one mark.
func (f *fromAbove) chain(d *paper.Drawing, r dimensionRow, y, workEnd paper.Paper) {
	for _, at := range r.at {
		x := f.at(at, 0).X
		d.Stroke(paper.Thin, paper.At(x, workEnd+1), paper.At(x, y+paper.OverLine))
	}
	name := paper.Phrase{}.Say(f.s.Letters(paper.Least), r.Name).Set(d.W)
	d.Text(name, 0, y-name.H-0.5)
	d.Stroke(r.pen, paper.At(0, y), paper.At(max(name.W, 10), y))
	r.flag.draw(d, paper.At(name.W+2.2, y-1))
	if r.flag.Guide == deck.ByLine && r.stop != noBlock {
		Crossed(d, paper.Box{X: name.W + 1, Y: y - 1 - blockWide, W: blockWide, H: blockWide})
	}
	for _, m := range f.dimensions(r, y) {
		d.Dimension(m)
	}
}
