package output

import (
	"strings"

	"fencecard/setup/deck"
)

// stripSteps tell how a strip is made and used.
var stripSteps = []struct{ what, how string }{
	{"CUT", "along the thick outline."},
	{"JOIN", "the parts of a strip from left to right: each lies over the hatched tab of the next, its edge on the line there, so that the half rings become whole. Tape them."},
	{"STICK", "the strip on with the router unplugged, the bit's centre line at the centre of the bit. Turn the bit by hand until its cutting edges stand along the fence, and see that both meet their lines."},
	{"FOLD", "where the faces of the fence open for the bit: slit the centre line, set the faces to the fold lines, and fold both flaps back into the opening. No paper may hang near the bit. On the table, cut out the ring."},
	{"MARKS", "are the solid upright lines labelled START or STOP, and nothing else is. A dotted line only leads from a label to the dot on its mark: never bring the work to it."},
	{"START:", "drop the work on with the end that is named at the mark: left of the bit the leading end, right of it the tail end. STOP: lift it off with that end at the mark. Where it says layout line, bring that line on the work to the edge of the bit. The length is from the bit's trailing edge at a start, from its leading edge at a stop."},
	{"TRY", "the first piece of every setup in scrap. If it is off, move the strip, not one mark."},
}

// stripUse is the text and the sketches that come first, in one block if that
// is no higher than high. It names the setups that have no strip.
func (s setter) stripUse(d *deck.Deck, none []string, w, high Paper) []block {
	size := least
	if w > 200 {
		size = 3.5
	}
	body, bold := s.letters(size), s.bold(size)
	use := []block{phrase{}.say(s.bold(5), "Strips: "+d.Plan.Title).set(w)}
	for _, step := range stripSteps {
		use = append(use, phrase{}.say(bold, step.what).say(body, step.how).set(w))
	}
	if len(none) > 0 {
		which := "setup "
		if len(none) > 1 {
			which = "setups "
		}
		use = append(use, phrase{}.say(body, "No strip for "+which+strings.Join(none, ", ")+": every cut there runs from end to end.").set(w))
	}
	sketches := s.fenceSketch((w - sheetGap) / 2)
	sketches.beside(s.tableSketch((w-sheetGap)/2), sheetGap)
	use = append(use, sketches)
	if whole := stack(1, use...); whole.h <= high {
		return []block{whole}
	}
	return use
}

// Measures of the sketches, which are to no scale.
const (
	sketchHigh  Paper = 22
	sketchFace  Paper = 7 // the face of the fence, from the top
	sketchBit   Paper = 3 // radius
	sketchOpen  Paper = 5 // half the opening of the fence
	sketchPaper Paper = 1 // from the face of the fence to the paper on it
)

// fenceSketch shows a strip on the faces of the fence, its flaps folded back.
func (s setter) fenceSketch(w Paper) block {
	d, middle := &drawing{w: w, h: sketchHigh}, w/2
	for _, side := range []Paper{-1, 1} {
		end := middle + side*sketchOpen
		far := middle + side*w/2
		s.sketchFence(d, min(end, far), max(end, far))
		fold := middle + side*(sketchOpen-sketchPaper)
		y := sketchFace + sketchPaper
		d.stroke(Pen{Width: 0.7}, Point{middle + side*(w/2-4), y}, Point{fold, y}, Point{fold, 2})
		label := phrase{}.say(s.letters(least), "fold").set(w)
		x := fold + side*6
		d.stroke(thin, Point{fold + side*0.5, y + 0.5}, Point{x, y + 5})
		d.text(label, x+min(0, side)*label.w, y+3)
	}
	d.circle(Point{middle, sketchFace}, sketchBit, Pale, thin)
	s.sketchFeed(d)
	return stack(0, phrase{}.say(s.bold(least), "ON THE FENCE, from above: bottom edge down on the table").set(w), d.block())
}

// tableSketch shows a strip on the table with its ring cut out over the bit.
func (s setter) tableSketch(w Paper) block {
	d, middle := &drawing{w: w, h: sketchHigh}, w/2
	s.sketchFence(d, 0, w)
	d.stroke(thick, Box{4, sketchFace + 0.5, w - 8, 10}.Path()...)
	at := Point{middle, sketchFace + 5}
	d.circle(at, sketchBit+0.7, White, thick)
	d.circle(at, sketchBit, Pale, thin)
	s.sketchFeed(d)
	return stack(0, phrase{}.say(s.bold(least), "ON THE TABLE, from above: top edge against the fence").set(w), d.block())
}

func (s setter) sketchFence(d *drawing, from, to Paper) {
	d.hatch(Box{from, 2, to - from, sketchFace - 2}, 2)
	d.stroke(thick, Box{from, 2, to - from, sketchFace - 2}.Path()...)
}

// sketchFeed shows which way the work goes.
func (s setter) sketchFeed(d *drawing) {
	y := sketchHigh - 2
	label := phrase{}.say(s.letters(least), "feed").set(d.w)
	d.arrow(thin, 2.5, Point{d.w/2 + 14, y}, Point{d.w/2 - 6, y})
	d.text(label, d.w/2+15, y-label.h/2)
}
