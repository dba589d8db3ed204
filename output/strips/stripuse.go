package strips

import (
	"strings"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// stripSteps tell how a strip is made and used.
var stripSteps = []struct{ what, how string }{
	{"CUT", "along the thick outline."},
	{"STICK", "the strip on with the router unplugged, the bit's centre line at the centre of the bit. Turn the bit by hand until its cutting edges stand along the fence, and see that both meet their lines."},
	{"RULE:", "a part without the bit has a broken line named RULE. Measure the distance that it tells, from the edge of the bit that it names, and stick the part on with that line there. Its marks are true from the line on."},
	{"FOLD", "where the faces of the fence open for the bit: slit the centre line, set the faces to the fold lines, and fold both flaps back into the opening. No paper may hang near the bit. On the table, cut out the ring."},
	{"MARKS", "are the solid upright lines labelled START, STOP or BACK STOP, and nothing else is. A dotted line only leads from a label to the dot on its mark: never bring the work to it."},
	{"START:", "drop the work on with the end that is named at the mark: left of the bit the leading end, right of it the tail end. STOP: lift it off with that end at the mark. Where it says layout line, bring that line on the work to the edge of the bit. The length is from the bit's trailing edge at a start, from its leading edge at a stop."},
	{"BACK STOP:", "clamp a stop here, low or relieved, for the tail end to pivot on as the work comes down; square and higher than the bit where a start hole is bored; measured from the bit's trailing edge."},
	{"TRY", "the first piece of every setup in scrap. If it is off, move the strip, not one mark."},
}

// stripUse is the text and the sketches that come first, in one block if that
// is no higher than high. It names the setups that have no strip.
func (s maker) stripUse(d *deck.Deck, none []string, w, high paper.Paper) []paper.Block {
	size := paper.Least
	if w > 200 {
		size = 3.5
	}
	body, bold := s.Letters(size), s.Bold(size)
	use := []paper.Block{paper.Phrase{}.Say(s.Bold(5), "Strips: "+d.Plan.Title).Set(w)}
	for _, step := range stripSteps {
		use = append(use, paper.Phrase{}.Say(bold, step.what).Say(body, step.how).Set(w))
	}
	if len(none) > 0 {
		which := "setup "
		if len(none) > 1 {
			which = "setups "
		}
		use = append(use, paper.Phrase{}.Say(body, "No strip for "+which+strings.Join(none, ", ")+": what is cut there runs from end to end, or shapes an edge, whose marks its sheet has.").Set(w))
	}
	sketches := s.fenceSketch((w - sheetGap) / 2)
	sketches.Beside(s.tableSketch((w-sheetGap)/2), sheetGap)
	use = append(use, sketches)
	if whole := paper.Stack(1, use...); whole.H <= high {
		return []paper.Block{whole}
	}
	return use
}

// Measures of the sketches, which are to no scale.
const (
	sketchHigh  paper.Paper = 22
	sketchFace  paper.Paper = 7 // the face of the fence, from the top
	sketchBit   paper.Paper = 3 // radius
	sketchOpen  paper.Paper = 5 // half the opening of the fence
	sketchPaper paper.Paper = 1 // from the face of the fence to the paper on it
)

// fenceSketch shows a strip on the faces of the fence, its flaps folded back.
func (s maker) fenceSketch(w paper.Paper) paper.Block {
	d, middle := &paper.Drawing{W: w, H: sketchHigh}, w/2
	for _, side := range []paper.Paper{-1, 1} {
		end := middle + side*sketchOpen
		far := middle + side*w/2
		s.sketchFence(d, min(end, far), max(end, far))
		fold := middle + side*(sketchOpen-sketchPaper)
		y := sketchFace + sketchPaper
		d.Stroke(paper.Pen{Width: 0.7}, paper.At(middle+side*(w/2-4), y), paper.At(fold, y), paper.At(fold, 2))
		label := paper.Phrase{}.Say(s.Letters(paper.Least), "fold").Set(w)
		x := fold + side*6
		d.Stroke(paper.Thin, paper.At(fold+side*0.5, y+0.5), paper.At(x, y+5))
		d.Text(label, x+min(0, side)*label.W, y+3)
	}
	d.Circle(paper.At(middle, sketchFace), sketchBit, paper.Pale, paper.Thin)
	s.sketchFeed(d)
	return paper.Stack(0, paper.Phrase{}.Say(s.Bold(paper.Least), "ON THE FENCE, from above: bottom edge down on the table").Set(w), d.Block())
}

// tableSketch shows a strip on the table with its ring cut out over the bit.
func (s maker) tableSketch(w paper.Paper) paper.Block {
	d, middle := &paper.Drawing{W: w, H: sketchHigh}, w/2
	s.sketchFence(d, 0, w)
	d.Stroke(paper.Thick, paper.Box{X: 4, Y: sketchFace + 0.5, W: w - 8, H: 10}.Path()...)
	at := paper.At(middle, sketchFace+5)
	d.Circle(at, sketchBit+0.7, paper.White, paper.Thick)
	d.Circle(at, sketchBit, paper.Pale, paper.Thin)
	s.sketchFeed(d)
	return paper.Stack(0, paper.Phrase{}.Say(s.Bold(paper.Least), "ON THE TABLE, from above: top edge against the fence").Set(w), d.Block())
}

func (s maker) sketchFence(d *paper.Drawing, from, to paper.Paper) {
	d.Hatch(paper.Box{X: from, Y: 2, W: to - from, H: sketchFace - 2}, 2)
	d.Stroke(paper.Thick, paper.Box{X: from, Y: 2, W: to - from, H: sketchFace - 2}.Path()...)
}

// sketchFeed shows which way the work goes.
func (s maker) sketchFeed(d *paper.Drawing) {
	y := sketchHigh - 2
	label := paper.Phrase{}.Say(s.Letters(paper.Least), "feed").Set(d.W)
	d.Arrow(paper.Thin, 2.5, paper.At(d.W/2+14, y), paper.At(d.W/2-6, y))
	d.Text(label, d.W/2+15, y-label.H/2)
}
