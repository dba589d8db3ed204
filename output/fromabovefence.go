package output

import (
	"strings"

	"fencecard/setup/deck"
)

// fence draws the fence behind its face, with an opening for a buried bit.
func (f *fromAbove) fence(d *drawing, w Paper) {
	d.fenceAt(f.top, w, f.at(0, 0).X, Paper(f.radius*f.scale.size), f.centre < f.radius)
	for _, r := range f.rows {
		r.flag.draw(d, Point{f.at(r.flag.At.Millimetres(), 0).X, f.top})
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
func (g guideMark) draw(d *drawing, tip Point) {
	if g.Guide == deck.ByLine {
		return // nothing is marked on the fence
	}
	path := []Point{tip, tip.Add(-1.6, -fenceBand), tip.Add(1.6, -fenceBand), tip}
	shade := Black
	if g.stop {
		shade = White
	}
	d.fill(shade, path...)
	d.stroke(thick, path...)
}

// names names the ends of the fence, the side of the work against it, and the
// way of the feed.
func (f *fromAbove) names(d *drawing, w Paper) {
	l, bold := f.s.letters(least), f.s.bold(least)
	out := phrase{}.say(l, "OUTFEED").set(w)
	in := phrase{}.say(l, "INFEED").set(w)
	feed := phrase{}.say(bold, "feed").set(w)
	fence := phrase{}.say(bold, strings.ToUpper(f.c.Step.Fence.String()))
	side := fence.say(l, "against the fence").set(w)
	room := func() Paper { return w - out.w - feed.w - side.w - in.w - 12 }
	if room() < 8 {
		side = fence.set(w)
	}
	if room() < 8 {
		out, in = phrase{}.say(l, "OUT").set(w), phrase{}.say(l, "IN").set(w)
	}
	arrow := min(20, room())
	d.text(out, 0, 0)
	d.text(in, w-in.w, 0)
	d.text(side, w-in.w-4-side.w, 0)
	d.arrow(Pen{Width: 0.7}, 4, Point{out.w + 2 + arrow, feed.h / 2}, Point{out.w + 2, feed.h / 2})
	d.text(feed, out.w+arrow+3, 0)
}

// flag names the end that leads, below it, and the scale.
func (f *fromAbove) flag(d *drawing, y Paper) {
	tip := Point{f.at(f.start, 0).X, y}
	d.fill(Black, arrowhead(tip, 0, -1, 3)...)
	words := phrase{}.say(f.s.bold(least), strings.ToUpper(f.c.Leads.String())+" leads").set(d.w)
	front, back := f.besideWork(d.w)
	hi := d.w - back
	x := tip.X + 2
	if x+words.w > hi {
		x = tip.X - 2 - words.w
	}
	d.text(words, x, y)
	scale := f.s.scaled(f.scale)
	shortened := scale + ", shortened"
	if f.x.broken()+f.y.broken() == 0 {
		shortened = scale
	}
	for _, text := range []string{shortened, scale} {
		note := phrase{}.say(f.s.letters(least), text).set(d.w)
		if x+words.w+2+note.w <= hi {
			d.text(note, hi-note.w, y)
			return
		}
		if x-6-note.w >= front {
			d.text(note, front, y)
			return
		}
	}
}
