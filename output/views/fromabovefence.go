package views

import (
	"strings"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// fence draws the fence behind its face, with an opening for a buried bit.
func (f *fromAbove) fence(d *paper.Drawing, w paper.Paper) {
	fenceAt(d, f.top, w, f.at(0, 0).X, paper.Paper(f.radius*f.Scale.size), f.centre < f.radius)
	for _, r := range f.rows {
		r.flag.draw(d, paper.At(f.at(r.flag.At.Millimetres(), 0).X, f.top))
	}
	f.names(d, w)
}

// guideMark is a mark on the fence, at the end of the work that is brought to
// it.
type guideMark struct {
	deck.Reached
	stop bool
}

// draw draws the mark as a triangle that points at a place on the fence face:
// black for the start, white for the stop.
func (g guideMark) draw(d *paper.Drawing, tip paper.Point) {
	if g.Guide == deck.ByLine {
		return // nothing is marked on the fence
	}
	path := []paper.Point{tip, tip.Add(-1.6, -fenceBand), tip.Add(1.6, -fenceBand), tip}
	shade := paper.Black
	if g.stop {
		shade = paper.White
	}
	d.Fill(shade, path...)
	d.Stroke(paper.Thick, path...)
}

// names names the ends of the fence, the side of the work against it, and the
// way of the feed.
func (f *fromAbove) names(d *paper.Drawing, w paper.Paper) {
	l, bold := f.s.Letters(paper.Least), f.s.Bold(paper.Least)
	out := paper.Phrase{}.Say(l, "OUTFEED").Set(w)
	in := paper.Phrase{}.Say(l, "INFEED").Set(w)
	feed := paper.Phrase{}.Say(bold, "feed").Set(w)
	fence := paper.Phrase{}.Say(bold, strings.ToUpper(f.c.Step.Fence.String()))
	side := fence.Say(l, "against the fence").Set(w)
	room := func() paper.Paper { return w - out.W - feed.W - side.W - in.W - 12 }
	if room() < 8 {
		side = fence.Set(w)
	}
	if room() < 8 {
		out, in = paper.Phrase{}.Say(l, "OUT").Set(w), paper.Phrase{}.Say(l, "IN").Set(w)
	}
	arrow := min(20, room())
	d.Text(out, 0, 0)
	d.Text(in, w-in.W, 0)
	d.Text(side, w-in.W-4-side.W, 0)
	d.Arrow(paper.Pen{Width: 0.7}, 4, paper.At(out.W+2+arrow, feed.H/2), paper.At(out.W+2, feed.H/2))
	d.Text(feed, out.W+arrow+3, 0)
}

// flag names the end that leads, below it, and the scale.
func (f *fromAbove) flag(d *paper.Drawing, y paper.Paper) {
	tip := paper.At(f.at(f.start, 0).X, y)
	d.Fill(paper.Black, paper.Arrowhead(tip, 0, -1, 3)...)
	words := paper.Phrase{}.Say(f.s.Bold(paper.Least), strings.ToUpper(f.c.Leads.String())+" leads").Set(d.W)
	front, back := f.besideWork(d.W)
	hi := d.W - back
	x := tip.X + 2
	if x+words.W > hi {
		x = tip.X - 2 - words.W
	}
	d.Text(words, x, y)
	scale := scaled(f.s, f.Scale)
	shortened := scale + ", shortened"
	if f.x.broken()+f.y.broken() == 0 {
		shortened = scale
	}
	for _, text := range []string{shortened, scale} {
		note := paper.Phrase{}.Say(f.s.Letters(paper.Least), text).Set(d.W)
		if x+words.W+2+note.W <= hi {
			d.Text(note, hi-note.W, y)
			return
		}
		if x-6-note.W >= front {
			d.Text(note, front, y)
			return
		}
	}
}

// fenceAt draws a fence with its face at y, from the left to a width, with an
// opening for a bit that is buried in it.
func fenceAt(d *paper.Drawing, y, w, bit, r paper.Paper, buried bool) {
	bands := []paper.Box{{X: 0, Y: y - fenceBand, W: w, H: fenceBand}}
	if buried {
		const clear = 1.5
		bands = []paper.Box{{X: 0, Y: y - fenceBand, W: bit - r - clear, H: fenceBand}, {X: bit + r + clear, Y: y - fenceBand, W: w - bit - r - clear, H: fenceBand}}
	}
	for _, b := range bands {
		if b.W > 0 {
			d.Hatch(b, 2.5)
			d.Stroke(paper.Thin, paper.At(b.X, b.Bottom()), b.Corner(), paper.At(b.Right(), b.Y), paper.At(b.Right(), b.Bottom()))
			d.Stroke(paper.Pen{Width: 0.7}, paper.At(b.X, b.Bottom()), paper.At(b.Right(), b.Bottom()))
		}
	}
}
