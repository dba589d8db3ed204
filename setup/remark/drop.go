package remark

import (
	"fmt"
	"math"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/joints"
	"fencecard/setup/remark/trade"
)

// drop is what it takes to lower the work of a run onto the bit, at its full
// height.
type drop struct {
	deck.Pivot
	tail measure.Length // before the bit's near edge
	hard bool
}

// pivots returns the drop of a run whose work pivots on its tail. A cut whose
// start is bored first, or into which the bit is raised, is not dropped on.
func pivots(r *deck.Run, shop *joinery.Shop) (drop, bool) {
	if !r.Pivots() {
		return drop{}, false
	}
	return drop{r.Dropping(), r.Tail(), r.HardDrop(shop.Rules)}, true
}

// worstDrop is the farthest tilt and the earliest mouth of a setup's drops, each
// of its own drop: the stricter holds for all, and is said once.
func worstDrop(u *deck.Setup, shop *joinery.Shop) deck.Pivot {
	var worst deck.Pivot
	for i := range u.Runs {
		if d, ok := pivots(&u.Runs[i], shop); ok {
			worst.Tilt, worst.Early = max(worst.Tilt, d.Tilt), max(worst.Early, d.Early)
		}
	}
	return worst
}

// tilt says the angle in whole degrees, no less than it is.
func (d drop) tilt() string {
	if d.Tilt >= 90 {
		return "on end, its tail over the bit"
	}
	return degrees(math.Ceil(d.Tilt))
}

// degrees says an angle in whole degrees.
func degrees(angle float64) string {
	if angle == 1 {
		return "1 degree"
	}
	return fmt.Sprintf("%.0f degrees", angle)
}

// stop says how low the back stop is: a square one k high holds the lower corner
// off by k tan(tilt), which is to be no more than a division. Where that is too low
// for a tail to stand against, only the lean is said. Heights and angles are said
// in few steps, so that one stop serves many runs.
func (d drop) stop(s measure.Scale) string {
	k := measure.Length(float64(s.Division) / math.Tan(d.Tilt*math.Pi/180))
	step := trade.StopStep.Of(s)
	leans := 5 * math.Ceil(d.Tilt/5)
	if k < step {
		return fmt.Sprintf("the back stop leans %.0f degrees away", leans)
	}
	return fmt.Sprintf("the back stop is no higher than %s, or leans %.0f degrees away", s.Say(min(k, 3*step)/step*step), leans)
}

// waysOut lists what a maker can do about a hard drop.
func waysOut(r *deck.Run, s measure.Scale) []string {
	var ways []string
	if side, gain := otherSide(r, s); side != joinery.NoSide {
		ways = append(ways, fmt.Sprintf("write fence: either, so that the %s may go to the fence, %s", side, gain))
	}
	ways = append(ways, fmt.Sprintf("leave the blank long at the %s", r.Leads.Opposite()))
	if r.Cut.Kind.Has("start") {
		ways = append(ways, "write start: hole and bore it first")
	}
	return ways
}

// otherSide returns the side opposite the one at the fence where the work would
// have a tail at least half as long again, and neither side is open. The other
// end leads then, so that its tail is what now lies before the cut.
func otherSide(r *deck.Run, s measure.Scale) (joinery.Side, string) {
	other, size := r.Step.Fence.Opposite(), r.Piece.Size
	if r.Cut.Fence.Either || r.Channel.OpenBeside(r.Step.Fence, size) || r.Channel.OpenBeside(other, size) {
		return joinery.NoSide, ""
	}
	switch tail := r.B; {
	case r.B == r.Length:
		return other, "and it is fed in"
	case 2*tail >= 3*r.Start.TailBeforeEdge:
		return other, "which leaves a tail of " + s.Say(tail)
	}
	return joinery.NoSide, ""
}

// either joins ways out as a sentence lists them.
func either(ways []string) string {
	if last := len(ways) - 1; last > 0 {
		return strings.Join(ways[:last], ", ") + ", or " + ways[last]
	}
	return strings.Join(ways, "")
}

// findSteepDrop looks for work that has to be tilted far to be lowered onto the
// bit, or whose tail leaves no room for a hand.
func findSteepDrop(w *work) []finding {
	var found []finding
	for _, m := range w.atTable() {
		r := m.runs[0]
		d, ok := pivots(r, w.shop)
		if !ok || !d.hard {
			continue
		}
		tail := "no tail"
		if d.tail > 0 {
			tail = w.text(d.tail) + " of tail"
		}
		early := ""
		if d.Early >= w.scale.Division {
			early = fmt.Sprintf(", and the mouth begins %s beyond its line at the %s", w.scale.Say(d.Early), r.Leads)
		}
		if d.Early >= r.A {
			early += ", where it breaks out"
		}
		found = append(found, finding{m.cut, fmt.Sprintf("to be lowered onto the bit for the %s, the piece is tilted %s, %s before the bit; over %.0f degrees or under %s it can slip or be snatched%s: %s",
			m.words(), d.tilt(), tail, deck.Steep, w.text(w.rules.HandDistance), early, either(waysOut(r, w.scale))), []string{"fence", "span", "at"}})
	}
	return found
}

// findEarlyMouth looks for drops in which the mouth of the cut begins so much
// beyond its line that it shows: beyond the shoulder of the joint, or by more
// than is pared away, or beyond the end of the piece.
func findEarlyMouth(w *work) []finding {
	var found []finding
	for _, m := range w.atTable() {
		r := m.runs[0]
		d, ok := pivots(r, w.shop)
		if !ok || d.hard || r.Channel.Section.Shaped() {
			continue // told with the drop, or it fades out anyway
		}
		least, hides := trade.EarlyMouth.Of(w.scale), "more than paring hides"
		if shoulder, known := hiding(r); known && shoulder > 0 {
			least, hides = max(least, shoulder), fmt.Sprintf("and the shoulder that is to hide it covers %s", w.text(shoulder))
		}
		switch {
		case d.Early >= r.A:
			hides = fmt.Sprintf("and only %s of wood is there, so it breaks out", w.text(r.A))
		case d.Early <= least:
			continue
		}
		found = append(found, finding{m.cut, fmt.Sprintf("as the piece comes down onto the bit, the mouth of the %s begins %s beyond its line at the %s, %s: %s",
			m.words(), w.scale.Say(d.Early), r.Leads, hides, either(waysOut(r, w.scale))), []string{"fence", "span", "at"}})
	}
	return found
}

// hiding returns how much the shoulder of a joint covers beyond the line of its
// cut at the end that leads: all of it, but for room that the cut has there.
func hiding(r *deck.Run) (measure.Length, bool) {
	if r.Joint == nil || r.Joint.Part.Cut == nil || r.Joint.Into.Cut != r.Cut {
		return 0, false
	}
	if reveal, ok := joints.RevealOf(r.Joint, r.Leads); ok {
		return max(0, r.A-reveal), true
	}
	return joints.ShoulderOf(r.Joint.Part, r.Leads), true
}
