package output

import (
	"fmt"
	"math"
)

// gate stands before every canvas: it makes every string printable and keeps
// every place that is not a number off the page.
type gate struct {
	to  Canvas
	err error // the first thing refused
}

func (g *gate) Page(width, height Paper) {
	if g.sound(Point{width, height}) {
		g.to.Page(width, height)
	}
}

func (g *gate) Stroke(pen Pen, path ...Point) {
	if len(path) > 1 && g.sound(path...) {
		g.to.Stroke(pen, path...)
	}
}

func (g *gate) Fill(shade Shade, path ...Point) {
	if len(path) > 2 && g.sound(path...) {
		g.to.Fill(shade, path...)
	}
}

func (g *gate) Circle(centre Point, radius Paper, shade Shade, pen Pen) {
	if g.sound(centre, Point{radius, 0}) {
		g.to.Circle(centre, radius, shade, pen)
	}
}

func (g *gate) Text(at Point, letters Letters, text string) {
	if text != "" && g.sound(at) {
		g.to.Text(at, letters, printable(text))
	}
}

func (g *gate) Said(text string, paint func()) { g.to.Said(printable(text), paint) }

// sound reports whether all the points are numbers, and remembers if not.
func (g *gate) sound(points ...Point) bool {
	for _, p := range points {
		if bad := float64(p.X + p.Y); math.IsNaN(bad) || math.IsInf(bad, 0) {
			if g.err == nil {
				g.err = fmt.Errorf("output: a place on the page is not a number: %v", p)
			}
			return false
		}
	}
	return true
}
