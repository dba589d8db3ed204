package output

// drawing is a block in which lines are drawn at once, below the texts, each
// of which is a part of its own. Places are from its top left corner.
type drawing struct {
	w, h  Paper
	lines []func(c Canvas, at Point)
	texts []part
}

// Pens of a drawing, thick and thin lines in the proportion 2 : 1 (ISO 128-2).
var (
	thick   = Pen{Width: 0.5}
	thin    = Pen{Width: 0.25}
	hidden  = Pen{Width: 0.35, Line: Dashed}
	centre  = Pen{Width: 0.25, Line: LongDashDot}
	phantom = Pen{Width: 0.35, Line: LongDashDoubleDot}
	noPen   = Pen{}
)

func shifted(at Point, path []Point) []Point {
	moved := make([]Point, len(path))
	for i, p := range path {
		moved[i] = p.Add(at.X, at.Y)
	}
	return moved
}

func (d *drawing) stroke(pen Pen, path ...Point) {
	d.lines = append(d.lines, func(c Canvas, at Point) { c.Stroke(pen, shifted(at, path)...) })
}

func (d *drawing) fill(shade Shade, path ...Point) {
	d.lines = append(d.lines, func(c Canvas, at Point) { c.Fill(shade, shifted(at, path)...) })
}

func (d *drawing) circle(centre Point, radius Paper, shade Shade, pen Pen) {
	d.lines = append(d.lines, func(c Canvas, at Point) { c.Circle(centre.Add(at.X, at.Y), radius, shade, pen) })
}

// arrow draws a line with a head at its end.
func (d *drawing) arrow(pen Pen, head Paper, path ...Point) {
	d.stroke(pen, path...)
	tip, from := path[len(path)-1], path[len(path)-2]
	d.fill(Black, arrowhead(tip, tip.X-from.X, tip.Y-from.Y, head)...)
}

// text puts a block of words with its top left corner at a place. Lines that
// would run through the words are interrupted.
func (d *drawing) text(b block, x, y Paper) {
	d.h = max(d.h, y+b.h)
	for _, p := range b.at(x, y) {
		words := p.paint
		ground := p.box
		p.paint = func(c Canvas, at Point) {
			c.Fill(White, Box{at.X, at.Y + ground.H*0.1, ground.W, ground.H * 0.8}.Path()...)
			words(c, at)
		}
		d.texts = append(d.texts, p)
	}
}

// block ends the drawing.
func (d *drawing) block() block {
	b := figure("drawing", d.w, d.h, func(c Canvas, at Point) {
		for _, line := range d.lines {
			line(c, at)
		}
	})
	b.parts = append(b.parts, d.texts...)
	return b
}

// hatching is the width of the lines of a cut surface; nothing else is so thin.
const hatching Paper = 0.13

// hatch draws 45 degree lines over a rectangle, as for a cut surface (ISO
// 128-3). All hatches of a drawing join up.
func (d *drawing) hatch(b Box, pitch Paper) {
	// Lines x + y = k.
	for k := pitch * Paper(int((b.X+b.Y)/pitch)); k < b.Right()+b.Bottom(); k += pitch {
		from := Point{max(b.X, k-b.Bottom()), min(b.Bottom(), k-b.X)}
		to := Point{min(b.Right(), k-b.Y), max(b.Y, k-b.Right())}
		if from.X < to.X {
			d.stroke(Pen{Width: hatching}, from, to)
		}
	}
}

// interrupt wipes a strip clean and closes it with break lines along its
// longer sides.
func (d *drawing) interrupt(b Box) {
	d.fill(White, b.Path()...)
	upright := b.H > b.W
	for _, far := range []bool{false, true} {
		var path []Point
		zig := Paper(0.8)
		for at := Paper(0); at <= max(b.W, b.H); at += 2 {
			p := Point{b.X + at, b.Y + zig}
			if upright {
				p = Point{b.X + zig, b.Y + at}
			}
			if far && upright {
				p.X += b.W
			} else if far {
				p.Y += b.H
			}
			path = append(path, p)
			zig = -zig
		}
		d.stroke(Pen{Width: 0.18}, path...)
	}
}

// Measures of a dimension (ISO 129-1). Its ends are oblique strokes, which
// unlike arrows have room in the narrowest gap.
const (
	obliqueReach Paper = 1.1 // half the height of a stroke
	overLine     Paper = 1.5 // how far extension lines reach over the dimension line
	textClear    Paper = 0.7
)

// dimension is one horizontal dimension, its text above the line where there
// is room, else beside its end.
type dimension struct {
	from, to Paper // from <= to
	y        Paper // of the dimension line
	text     block
	outside  int // where the text goes for want of room: -1 left, +1 right
}

// extent is the room the dimension takes, from left to right, its text
// beginning at text.
func (m dimension) extent() (left, text, right Paper) {
	const clear = 2 * obliqueReach
	switch {
	case m.to-m.from >= m.text.w+1:
		return m.from, (m.from + m.to - m.text.w) / 2, m.to
	case m.outside < 0:
		return m.from - m.text.w - clear, m.from - m.text.w - clear, m.to
	}
	return m.from, m.to + clear, m.to + m.text.w + clear
}

func (d *drawing) dimension(m dimension) {
	left, text, right := m.extent()
	d.stroke(thin, Point{left, m.y}, Point{right, m.y})
	for _, x := range []Paper{m.from, m.to} {
		d.stroke(thick, Point{x - obliqueReach, m.y + obliqueReach}, Point{x + obliqueReach, m.y - obliqueReach})
	}
	d.text(m.text, text, m.y-textClear-m.text.h)
}
