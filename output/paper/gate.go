package paper

import (
	"fmt"
	"math"
)

// Gate stands before every canvas: it makes every string printable and keeps
// every place that is not a number off the page.
type Gate struct {
	To  Canvas
	Err error // the first thing refused
}

// Page, Stroke, Fill, Circle, Text and Said pass on what is sound.
func (g *Gate) Page(width, height Paper) {
	if g.sound(Point{width, height}) {
		g.To.Page(width, height)
	}
}

func (g *Gate) Stroke(pen Pen, path ...Point) {
	if len(path) > 1 && g.sound(path...) {
		g.To.Stroke(pen, path...)
	}
}

func (g *Gate) Fill(shade Shade, path ...Point) {
	if len(path) > 2 && g.sound(path...) {
		g.To.Fill(shade, path...)
	}
}

func (g *Gate) Circle(centre Point, radius Paper, shade Shade, pen Pen) {
	if g.sound(centre, Point{radius, 0}) {
		g.To.Circle(centre, radius, shade, pen)
	}
}

func (g *Gate) Text(at Point, letters Letters, text string) {
	if text != "" && g.sound(at) {
		g.To.Text(at, letters, Printable(text))
	}
}

func (g *Gate) Said(text string, paint func()) { g.To.Said(Printable(text), paint) }

// sound reports whether all the points are numbers, and remembers if not.
func (g *Gate) sound(points ...Point) bool {
	for _, p := range points {
		if bad := float64(p.X + p.Y); math.IsNaN(bad) || math.IsInf(bad, 0) {
			if g.Err == nil {
				g.Err = fmt.Errorf("output: a place on the page is not a number: %v", p)
			}
			return false
		}
	}
	return true
}
