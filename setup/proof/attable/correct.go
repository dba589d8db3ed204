package attable

import (
	"cmp"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/proof"
)

// TestCut is what a maker measures on a test cut made as the papers of one run say, at one
// of its heights; 0 where it was not measured.
type TestCut struct {
	Setback measure.Length // from the side at the fence to the near wall
	Width   measure.Length // from wall to wall
	Begins  measure.Length // from the leading end of the work to where the cut begins
	Length  measure.Length // of the cut along the work, round ends included
	Depth   measure.Length // of the height that it is nearest to
}

// Correction is what a test cut teaches about one setting.
type Correction struct {
	What     string         // "fence", "start", "stop", "height" or "bit"
	Measured measure.Length // on the test cut; of a stop where the cut ends, if it is known where it begins
	Wants    measure.Length // what the run wants there
	Move     string         // what to do; "" where it is right
	Ask      string         // a question, where another measure would be right; "" for none
	Assumes  string         // what the move takes for granted; "" for nothing
	// Stands is where the fence, to the near edge, or the bit at full height, above the
	// work's underside, stands after the move; nil where neither is moved, or something
	// is asked first.
	Stands *measure.Length
}

// Lesson is all that one test cut teaches.
type Lesson struct {
	Claimed     *proof.Run
	Corrections []Correction
	Bit         *joinery.Bit
	Diameter    measure.Length // the bit's true one, 0 where the cut does not show it
}

// widest is by how much a bit's true diameter may differ from its label, as a
// share: beyond that it is another bit, or a slip of the finger.
const widest = 10

// Correct says what to move after a test cut, and what the bit's true diameter
// is. The error is [plantext.Faults]: there is no such run, or its cut has no
// such measure.
func Correct(plan *joinery.Plan, claims *proof.Claims, number string, cut TestCut) (Lesson, error) {
	b, err := benchFor(plan, claims, number)
	if err != nil {
		return Lesson{}, err
	}
	lesson := Lesson{Claimed: b.Claimed, Bit: b.Tool}
	var faults plantext.Faults
	for _, learn := range []func(TestCut, *Lesson) plantext.Faults{b.learnWidth, b.learnSetback, b.learnBegins, b.learnLength, b.learnDepth} {
		faults = append(faults, learn(cut, &lesson)...)
	}
	for i := range lesson.Corrections {
		if c := &lesson.Corrections[i]; c.Ask == "" {
			c.Ask = b.askFar(*c)
		}
		if c := &lesson.Corrections[i]; c.Move == "" || c.Ask != "" {
			c.Stands = nil
		}
	}
	if err := faults.Err(); err != nil {
		return Lesson{}, err
	}
	return lesson, nil
}

// learnWidth learns the bit's diameter from a cut with two walls, and where
// the fence stands from a cut with one.
func (b bench) learnWidth(cut TestCut, l *Lesson) plantext.Faults {
	if cut.Width == 0 {
		return nil
	}
	near, far := b.open()
	n, size := b.Setup.Fence.NearEdge, b.Size.Between(b.Claimed.Fence)
	c := Correction{What: "fence", Measured: cut.Width}
	switch {
	case near && far:
		return b.unmeasured("width", "the bit takes the whole side away")
	case near:
		c.Wants = n + b.Bit
		c.Move, c.Stands = b.unless(c, b.moveFence), b.stands(c.Wants-cut.Width)
	case far:
		c.Wants = size - n
		c.Move, c.Stands = b.unless(c, func(off measure.Length) string { return b.moveFence(-off) }), b.stands(cut.Width-c.Wants)
	default:
		c.What, c.Wants, l.Diameter = "bit", b.Bit, cut.Width
		if widest*(cut.Width-b.Bit).Abs() >= b.Bit {
			return plantext.Faults{{
				Problem: fmt.Sprintf("a cut %s wide is more than a tenth off the bit, %s", b.text(cut.Width), b.text(b.Bit)),
				Remedy:  "measure what one run cut with this run's bit",
			}}
		}
		if cut.Width != b.Bit {
			c.Ask = b.askFinished(cut.Width)
			c.Move = fmt.Sprintf("write measured: %s for the bit %q in the shop file", b.Scale.Spell(cut.Width), b.Setup.Bit.Name)
		}
	}
	l.Corrections = append(l.Corrections, c)
	return nil
}

func (b bench) learnSetback(cut TestCut, l *Lesson) plantext.Faults {
	if cut.Setback == 0 {
		return nil
	}
	near, _ := b.open()
	switch {
	case near && b.Claimed.Nibble != nil:
		return plantext.Faults{{
			Problem: fmt.Sprintf("run %s has no near wall: all is taken from the %s end to the shoulder", b.Claimed.Number, b.Claimed.Fence),
			Remedy:  "give the distance from that end to the shoulder as --width",
		}}
	case near:
		return b.unmeasured("setback", fmt.Sprintf("the cut is open at the %s", b.Claimed.Fence))
	}
	c := Correction{What: "fence", Measured: cut.Setback, Wants: b.Setup.Fence.NearEdge}
	c.Move, c.Stands = b.unless(c, b.moveFence), b.stands(c.Wants-cut.Setback)
	c.Ask = cmp.Or(b.askCut(c, b.acrossTheFeed()), b.fenceByWrongEdge(c))
	l.Corrections = append(l.Corrections, c)
	return nil
}

// learnBegins corrects the start mark.
func (b bench) learnBegins(cut TestCut, l *Lesson) plantext.Faults {
	if cut.Begins == 0 {
		return nil
	}
	if b.Claimed.Start == nil {
		return plantext.Faults{{
			Problem: fmt.Sprintf("run %s has no beginning to measure: the work is fed in at the %s end", b.Claimed.Number, b.Claimed.Leads),
			Remedy:  "leave --begins out",
		}}
	}
	c := Correction{What: "start", Measured: cut.Begins, Wants: b.Claimed.Start.Line}
	c.Move = b.unless(c, func(off measure.Length) string { return b.moveMark(false, b.guide(false), off, false) })
	c.Ask = cmp.Or(b.askCut(c, b.alongTheFeed()), b.markByWrongEdge(c, -b.Bit))
	l.Corrections = append(l.Corrections, c)
	return nil
}

// learnLength corrects the one mark there is, or of two marks the stop: by where
// the cut begins if that was measured, else as if it began where it should.
func (b bench) learnLength(cut TestCut, l *Lesson) plantext.Faults {
	if cut.Length == 0 {
		return nil
	}
	start, stop := b.Claimed.Start, b.Claimed.Stop
	c := Correction{What: "stop", Measured: cut.Length}
	move := func(off measure.Length) string { return b.moveMark(true, b.guide(true), off, false) }
	switch {
	case start == nil && stop == nil:
		return b.noLength()
	case stop == nil && cut.Begins > 0:
		return b.agree(cut)
	case stop == nil:
		c.What, c.Wants = "start", b.Long-start.Line
		move = func(off measure.Length) string { return b.moveMark(false, b.guide(false), -off, false) }
	case start == nil:
		c.Wants = stop.Line
	case cut.Begins > 0: // where the cut ends
		c.Measured, c.Wants = cut.Begins+cut.Length, stop.Line
	default:
		c.Wants = stop.Line - start.Line
	}
	c.Move = b.unless(c, move)
	c.Ask = cmp.Or(b.askCut(c, b.lengths(c)), b.markByWrongEdge(c, b.Bit))
	if c.Move != "" && start != nil && stop != nil && cut.Begins == 0 {
		c.Assumes = fmt.Sprintf("if the cut begins where it should, %s from the %s end; measure that too, and give it as --begins",
			b.text(start.Line), b.Claimed.Leads)
	}
	l.Corrections = append(l.Corrections, c)
	return nil
}

// noLength faults the length of a cut that runs from end to end. What the plan
// calls its length lies across the feed.
func (b bench) noLength() plantext.Faults {
	faults := b.unmeasured("length", "the cut runs from end to end")
	near, far := b.open()
	if b.Cut.Length > 0 && near != far {
		faults[0].Remedy = fmt.Sprintf("the length of this %s is measured from the %s end to the shoulder: give it as --width",
			b.Cut.Kind.Name, b.openEnd(near))
	}
	return faults
}

// openEnd is the end that a cut with one wall runs out at.
func (b bench) openEnd(near bool) joinery.Side {
	if near {
		return b.Claimed.Fence
	}
	return b.Claimed.Fence.Opposite()
}

// agree faults the two measures of a cut that runs out of the work where they
// contradict each other; where they agree, the first has said all.
func (b bench) agree(cut TestCut) plantext.Faults {
	if ends := cut.Begins + cut.Length; !b.right(ends, b.Long) {
		return plantext.Faults{{
			Problem: fmt.Sprintf("a cut that begins %s from the %s end and is %s long would end %s from it, but this one runs out of the work at %s",
				b.text(cut.Begins), b.Claimed.Leads, b.text(cut.Length), b.text(ends), b.text(b.Long)),
			Remedy: "measure again, or leave one of --begins and --length out",
		}}
	}
	return nil
}

// cutAt is the height of the run that a depth is nearest to: a sheet has the first one
// tried in scrap, and raising the bit by what is left to the last would cut too deep.
func (b bench) cutAt(depth measure.Length) measure.Length {
	at := b.Channel.Depth
	for _, rung := range b.Claimed.Heights {
		if (depth - rung).Abs() < (depth - at).Abs() {
			at = rung
		}
	}
	return at
}

func (b bench) learnDepth(cut TestCut, l *Lesson) plantext.Faults {
	if cut.Depth == 0 {
		return nil
	}
	c := Correction{What: "height", Measured: cut.Depth, Wants: b.cutAt(cut.Depth)}
	if c.Ask = b.askPoint(cut.Depth, b.Channel.Depth); c.Ask != "" && !b.right(cut.Depth, c.Wants) {
		c.Wants = b.Channel.Depth
	} else {
		c.Ask = ""
	}
	c.Move = b.unless(c, b.moveBit)
	if n := len(b.Setup.Heights); n > 0 && b.Channel.Depth == b.Setup.Heights[n-1] {
		full := b.full() + c.Wants - cut.Depth
		c.Stands = &full
	}
	if c.Wants != b.Channel.Depth {
		c.Assumes = fmt.Sprintf("if it was cut at height %d, %s", slices.Index(b.Setup.Heights, c.Wants)+1, b.text(c.Wants))
	}
	l.Corrections = append(l.Corrections, c)
	return nil
}

// unless returns the move for what is off, or nothing where all is right: by the
// measure of [AsSet], since no scale sets less than half its division.
func (b bench) unless(c Correction, move func(off measure.Length) string) string {
	if b.right(c.Measured, c.Wants) {
		return ""
	}
	return move(c.Measured - c.Wants)
}

// stands is where the fence stands, to the near edge, when it was moved.
func (b bench) stands(by measure.Length) *measure.Length {
	near := b.fenceSays()[0].length + by
	return &near
}

func (b bench) unmeasured(flag, why string) plantext.Faults {
	return plantext.Faults{{
		Problem: fmt.Sprintf("run %s has no %s to measure: %s", b.Claimed.Number, flag, why),
		Remedy:  "leave --" + flag + " out",
	}}
}
