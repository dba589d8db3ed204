package remark

import (
	"fmt"
	"math"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
	"fencecard/setup/solid"
)

// findShortEnd looks for stopped cuts whose bit is buried so deep in the fence
// that the round of the bit never reaches the line in the wood.
func findShortEnd(w *work) []finding {
	var found []finding
	for _, m := range w.atTable() {
		c := m.runs[0]
		inside := c.Channel.Width - c.Step.Bit.True()/2 // the bit's centre, from the open face
		if c.Start == nil && c.Stop == nil || m.cut.Kind.Walled || c.Channel.Section.Shaped() || inside >= 0 {
			continue
		}
		r, off := c.Step.Bit.True().Millimetres()/2, inside.Millimetres()
		short := measure.FromMillimetres(r - math.Sqrt(r*r-off*off))
		if short < w.scale.Division/2 {
			continue
		}
		found = append(found, finding{m.cut, fmt.Sprintf("the %s bit is buried in the fence beyond its centre, so the stopped %s ends about %s short of its line: square the end by hand, or use a bit of %s or less",
			c.Step.Bit.Name, m.cut.Kind, w.text(short), w.text(2*c.Channel.Width)), []string{"width"}})
	}
	return found
}

// findTrapped looks for cuts that are open on the side away from the fence:
// the wood runs between bit and fence, and the teeth throw it.
func findTrapped(w *work) []finding {
	var found []finding
	for _, m := range w.atTable() {
		r := m.runs[0]
		if !trapped(r) {
			continue
		}
		ch, away := facing(r), r.Step.Fence.Opposite()
		found = append(found, finding{m.cut, fmt.Sprintf("the %s is open at the %s, so %s of wood runs between the bit and the fence and the bit may throw it: write fence: %s",
			m.words(), away, w.text(ch.Setback), away), []string{"fence", "setback"}})
	}
	return found
}

// trapped reports whether the run's channel is open away from the fence only.
func trapped(r *deck.Run) bool {
	ch, size := facing(r), r.Piece.Size
	return !ch.OpenBeside(r.Step.Fence, size) && ch.OpenBeside(r.Step.Fence.Opposite(), size)
}

// facing returns the run's channel as measured from the side at the fence.
func facing(r *deck.Run) joinery.Channel {
	if r.Step.Fence == r.Channel.Near {
		return r.Channel
	}
	return r.Channel.Reversed(r.Piece.Size)
}

// before visits the channels that are finished in earlier setups than a run.
// What is made by hand comes last, unless the run's cut waits for it.
func (w *work) before(r *deck.Run, visit func(*made)) {
	for _, m := range w.cuts {
		last := len(m.runs) - 1
		if last >= 0 && m.runs[last].Setup < r.Setup || last < 0 && slices.Contains(r.Cut.After, m.cut.Name) {
			visit(m)
		}
	}
}

// findLostReference looks for cuts that are set from a face or an end that an
// earlier cut has taken away.
func findLostReference(w *work) []finding {
	var found []finding
	for _, m := range w.atTable() {
		for _, side := range m.references() {
			if taker := w.taken(m.runs[0], side); taker != nil {
				found = append(found, finding{m.cut, fmt.Sprintf("the %s is set from the %s, which the %s has taken away by then: cut this one first (%s)",
					m.words(), side, taker.words(), first(m, taker)), []string{"setback", "span"}})
			}
		}
	}
	return found
}

// references lists the sides a channel's run is set from: the side at the
// fence and, where there is a mark, the two ends.
func (m *made) references() []joinery.Side {
	r := m.runs[0]
	sides := []joinery.Side{r.Step.Fence}
	if r.Start != nil || r.Stop != nil {
		sides = append(sides, r.Leads, r.Leads.Opposite())
	}
	return sides
}

// taken returns an earlier cut of another name that leaves nothing of a side.
func (w *work) taken(r *deck.Run, side joinery.Side) *made {
	var taker *made
	w.before(r, func(m *made) {
		box, whole := m.box, solid.Whole(w.piece.Size)
		d := side.Dimension()
		at := touches(box, side, w.piece.Size)
		box[d] = whole[d]
		if m.cut != r.Cut && at && box == whole {
			taker = m
		}
	})
	return taker
}

// findNarrowBearing looks at what rides the table and the fence when a run is
// run, less what earlier cuts have taken away.
func findNarrowBearing(w *work) []finding {
	var found []finding
	for _, m := range w.atTable() {
		r := m.runs[0]
		across, up := r.Step.Fence.Dimension(), r.Step.Down.Dimension()
		bearings := []struct {
			on    string
			side  joinery.Side
			wide  joinery.Dimension
			least trade.Limit
		}{{"table", r.Step.Down, across, trade.NarrowOnTable}, {"fence", r.Step.Fence, up, trade.LowAtFence}}
		for _, b := range bearings {
			left, taker := w.bearing(r, b.side, b.wide)
			least := b.least.Of(w.scale)
			if left >= least || left == 0 { // nothing left is told as a lost reference
				continue
			}
			found = append(found, finding{m.cut, fmt.Sprintf("for the %s %s of the %s rides the %s%s, under %s: %s",
				m.words(), w.only(left), b.side, b.on, by(taker), w.text(least), bearingWayOut(taker, m)), []string{"fence", "in", "at"}})
		}
		found = append(found, w.ownBearing(m)...)
		found = append(found, w.standing(m)...)
		found = append(found, w.swinging(m)...)
	}
	return found
}

func by(taker *made) string {
	if taker == nil {
		return ""
	}
	return " after the " + taker.words()
}

func bearingWayOut(taker, m *made) string {
	if taker == nil {
		return "clamp a wider block to the piece, or cut the joint in wider stock and rip it afterwards"
	}
	return fmt.Sprintf("cut this one first (%s), or fill the gap with a strip", first(m, taker))
}

// first says how to have a cut made before another one.
func first(m, taker *made) string {
	if slices.Contains(m.cut.After, taker.cut.Name) {
		return "take after: " + taker.cut.Name + " away from it"
	}
	return fmt.Sprintf("in %q write after: %s", taker.cut.Name, m.cut.Name)
}

// bearing returns how much of a side still bears, measured along one
// dimension, and the last of the earlier cuts that narrowed it. A cut counts
// that runs along at least two thirds of the piece's way past the bit.
func (w *work) bearing(r *deck.Run, side joinery.Side, wide joinery.Dimension) (measure.Length, *made) {
	run, size := r.Leads.Dimension(), w.piece.Size
	var gone []solid.Range
	var taker *made
	w.before(r, func(m *made) {
		box := m.box
		if m.cut != r.Cut && touches(box, side, size) && 3*box[run].Long() >= 2*size[run] {
			gone, taker = append(gone, box[wide]), m
		}
	})
	left := size[wide] - covered(gone)
	if left == size[wide] {
		taker = nil
	}
	return left, taker
}

// covered returns the length that ranges cover together.
func covered(ranges []solid.Range) measure.Length {
	slices.SortFunc(ranges, func(a, b solid.Range) int { return int(min(1, max(-1, a.Lo-b.Lo))) })
	var sum, reached measure.Length
	for _, r := range ranges {
		r.Lo = max(r.Lo, reached)
		if r.Hi > r.Lo {
			sum += r.Hi - r.Lo
			reached = r.Hi
		}
	}
	return sum
}
