package paper

// Magnified returns a block with everything on it so many times as large.
func Magnified(b Block, by Paper) Block {
	large := Block{W: b.W * by, H: b.H * by, Parts: make([]Part, len(b.Parts))}
	for i, p := range b.Parts {
		paint := p.paint
		p.Box = Box{p.Box.X * by, p.Box.Y * by, p.Box.W * by, p.Box.H * by}
		p.paint = func(c Canvas, at Point) { paint(magnifier{c, by}, Point{at.X / by, at.Y / by}) }
		large.Parts[i] = p
	}
	return large
}

// magnifier draws everything on another canvas, so many times as large.
type magnifier struct {
	to Canvas
	by Paper
}

func (m magnifier) point(p Point) Point { return Point{p.X * m.by, p.Y * m.by} }

func (m magnifier) path(path []Point) []Point {
	large := make([]Point, len(path))
	for i, p := range path {
		large[i] = m.point(p)
	}
	return large
}

func (m magnifier) pen(p Pen) Pen {
	p.Width *= m.by
	return p
}

func (m magnifier) Page(w, h Paper) { m.to.Page(w*m.by, h*m.by) }

func (m magnifier) Stroke(pen Pen, path ...Point) { m.to.Stroke(m.pen(pen), m.path(path)...) }

func (m magnifier) Fill(shade Shade, path ...Point) { m.to.Fill(shade, m.path(path)...) }

func (m magnifier) Circle(centre Point, radius Paper, shade Shade, pen Pen) {
	m.to.Circle(m.point(centre), radius*m.by, shade, m.pen(pen))
}

func (m magnifier) Text(at Point, l Letters, text string) {
	l.Height *= m.by
	m.to.Text(m.point(at), l, text)
}

func (m magnifier) Said(text string, paint func()) { m.to.Said(text, paint) }
