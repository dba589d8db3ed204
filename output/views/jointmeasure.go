package views

import (
	"fencecard/output/paper"
	"fencecard/output/setting"
)

// columns is the room that the upright measures take beside the figure, which
// with them is to be no wider than w.
func (f *jointFigure) columns(s setting.Setter, w paper.Paper) paper.Paper {
	f.flat = seenFrom(f.from)
	const around = columnBefore + paper.TextClear + paper.ObliqueReach
	var n, all paper.Paper
	for _, m := range f.measures {
		if m.d == f.up {
			n++
		}
	}
	f.text = w
	if n > 0 {
		f.text = max(leastText, (w-leastWide)/n-around)
	}
	for _, m := range f.measures {
		if m.d == f.up {
			all += around + s.Say(f.text, s.Plain(m.hi-m.lo)).W
		}
	}
	return all
}

// leastText is how narrow the text of an upright dimension is set before it is
// no longer read, and leastWide the room that is left for the wood.
const (
	leastText paper.Paper = 9
	leastWide             = 4 * figurePad
)

// upright draws the upright dimensions, each in a column of its own.
func (f *jointFigure) upright(d *paper.Drawing, s setting.Setter, top paper.Paper) {
	x := f.x.length()
	for _, m := range f.measures {
		if m.d != f.up {
			continue
		}
		text := s.Say(f.text, s.Plain(m.hi-m.lo))
		x += columnBefore
		from, to := ordered(f.upAt(m.lo)+top, f.upAt(m.hi)+top)
		for _, y := range []paper.Paper{from, to} {
			d.Stroke(paper.Thin, paper.At(f.x.length()+1, y), paper.At(x+paper.OverLine, y))
			d.Stroke(paper.Thick, paper.At(x-paper.ObliqueReach, y+paper.ObliqueReach), paper.At(x+paper.ObliqueReach, y-paper.ObliqueReach))
		}
		d.Stroke(paper.Thin, paper.At(x, from), paper.At(x, to))
		y := min(max(0, (from+to-text.H)/2), top+f.y.length()+2-text.H)
		clear := paper.TextClear
		if to-from < text.H+2*paper.ObliqueReach { // beside the strokes
			clear += paper.ObliqueReach
		}
		d.Text(text, x+clear, max(0, y)) // what is too high makes the drawing higher
		x += clear + text.W
	}
	d.W = max(d.W, x)
}

// level draws the level dimensions, each in a row of its own under the figure,
// in a width.
func (f *jointFigure) level(d *paper.Drawing, s setting.Setter, top, w paper.Paper) {
	foot := top + f.y.length()
	y := d.H
	for _, m := range f.measures {
		if m.d != f.right {
			continue
		}
		text := s.Say(w, s.Plain(m.hi-m.lo))
		y += text.H + rowUnder
		from, to := ordered(f.acrossAt(m.lo), f.acrossAt(m.hi))
		for _, x := range []paper.Paper{from, to} {
			d.Stroke(paper.Thin, paper.At(x, foot+1), paper.At(x, y+paper.OverLine))
		}
		line := paper.Dimension{From: from, To: to, Y: y, Text: text, Outside: 1}
		if _, _, right := line.Extent(); right > w {
			line.Outside = -1
		}
		if left, _, right := line.Extent(); left >= 0 && right <= w {
			d.Dimension(line)
			d.W = max(d.W, right)
			continue
		}
		line.Text = paper.Block{} // the text over the line, wherever that has room
		d.Dimension(line)
		at := max(0, min(w-text.W, (from+to-text.W)/2))
		d.Text(text, at, y-paper.TextClear-text.H)
		d.W = max(d.W, at+text.W)
	}
	d.H = max(d.H, y+paper.OverLine)
}
