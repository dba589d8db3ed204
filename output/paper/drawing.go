package paper

// Drawing is a block in which lines are drawn at once, below the texts, each
// of which is a part of its own. Places are from its top left corner.
type Drawing struct {
	W, H  Paper
	lines []func(c Canvas, at Point)
	texts []Part
}

// Pens of a drawing, thick and thin lines in the proportion 2 : 1 (ISO 128-2).
var (
	Thick   = Pen{Width: 0.5}
	Thin    = Pen{Width: 0.25}
	Hidden  = Pen{Width: 0.35, Line: Dashed}
	Centre  = Pen{Width: 0.25, Line: LongDashDot}
	Phantom = Pen{Width: 0.35, Line: LongDashDoubleDot}
	NoPen   = Pen{}
)

// Shifted returns a path moved right and down by a point.
func Shifted(at Point, path []Point) []Point {
	moved := make([]Point, len(path))
	for i, p := range path {
		moved[i] = p.Add(at.X, at.Y)
	}
	return moved
}

// Stroke draws a line along a path.
func (d *Drawing) Stroke(pen Pen, path ...Point) {
	d.lines = append(d.lines, func(c Canvas, at Point) { c.Stroke(pen, Shifted(at, path)...) })
}

// Fill fills the inside of a path.
func (d *Drawing) Fill(shade Shade, path ...Point) {
	d.lines = append(d.lines, func(c Canvas, at Point) { c.Fill(shade, Shifted(at, path)...) })
}

// Circle draws a circle and fills it.
func (d *Drawing) Circle(centre Point, radius Paper, shade Shade, pen Pen) {
	d.lines = append(d.lines, func(c Canvas, at Point) { c.Circle(centre.Add(at.X, at.Y), radius, shade, pen) })
}

// Arrow draws a line with a head at its end.
func (d *Drawing) Arrow(pen Pen, head Paper, path ...Point) {
	d.Stroke(pen, path...)
	tip, from := path[len(path)-1], path[len(path)-2]
	d.Fill(Black, Arrowhead(tip, tip.X-from.X, tip.Y-from.Y, head)...)
}

// Text puts a block of words with its top left corner at a place. Lines that
// would run through the words are interrupted.
func (d *Drawing) Text(b Block, x, y Paper) {
	d.H = max(d.H, y+b.H)
	for _, p := range b.At(x, y) {
		words := p.paint
		ground := p.Box
		p.paint = func(c Canvas, at Point) {
			c.Fill(White, Box{at.X, at.Y + ground.H*0.1, ground.W, ground.H * 0.8}.Path()...)
			words(c, at)
		}
		d.texts = append(d.texts, p)
	}
}

// Block ends the drawing.
func (d *Drawing) Block() Block {
	b := Figure("drawing", d.W, d.H, func(c Canvas, at Point) {
		for _, line := range d.lines {
			line(c, at)
		}
	})
	b.Parts = append(b.Parts, d.texts...)
	return b
}

// hatching is the width of the lines of a cut surface; nothing else is so thin.
const hatching Paper = 0.13

// Hatch draws 45 degree lines over a rectangle, as for a cut surface (ISO
// 128-3). All hatches of a drawing join up.
func (d *Drawing) Hatch(b Box, pitch Paper) {
	// Lines x + y = k.
	for k := pitch * Paper(int((b.X+b.Y)/pitch)); k < b.Right()+b.Bottom(); k += pitch {
		from := Point{max(b.X, k-b.Bottom()), min(b.Bottom(), k-b.X)}
		to := Point{min(b.Right(), k-b.Y), max(b.Y, k-b.Right())}
		if from.X < to.X {
			d.Stroke(Pen{Width: hatching}, from, to)
		}
	}
}

// Interrupt wipes a strip clean and closes it with break lines along its
// longer sides.
func (d *Drawing) Interrupt(b Box) {
	d.Fill(White, b.Path()...)
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
		d.Stroke(Pen{Width: 0.18}, path...)
	}
}

// Measures of a dimension (ISO 129-1). Its ends are oblique strokes, which
// unlike arrows have room in the narrowest gap.
const (
	ObliqueReach Paper = 1.1 // half the height of a stroke
	OverLine     Paper = 1.5 // how far extension lines reach over the dimension line
	TextClear    Paper = 0.7
)

// Dimension is one horizontal dimension, its text above the line where there
// is room, else beside its end.
type Dimension struct {
	From, To Paper // From <= To
	Y        Paper // of the dimension line
	Text     Block
	Outside  int // where the text goes for want of room: -1 left, +1 right
}

// Extent is the room the dimension takes, from left to right, its text
// beginning at text.
func (m Dimension) Extent() (left, text, right Paper) {
	const clear = 2 * ObliqueReach
	switch {
	case m.To-m.From >= m.Text.W+1:
		return m.From, (m.From + m.To - m.Text.W) / 2, m.To
	case m.Outside < 0:
		return m.From - m.Text.W - clear, m.From - m.Text.W - clear, m.To
	}
	return m.From, m.To + clear, m.To + m.Text.W + clear
}

// Dimension draws a dimension line with its ticks and its text.
func (d *Drawing) Dimension(m Dimension) {
	left, text, right := m.Extent()
	d.Stroke(Thin, Point{left, m.Y}, Point{right, m.Y})
	for _, x := range []Paper{m.From, m.To} {
		d.Stroke(Thick, Point{x - ObliqueReach, m.Y + ObliqueReach}, Point{x + ObliqueReach, m.Y - ObliqueReach})
	}
	d.Text(m.Text, text, m.Y-TextClear-m.Text.H)
}
