// Package ladder finds the heights of a bit: the fewest that bring several cuts
// at one setup, of different depths and woods, each to its full depth with no
// pass deeper than its cap.
//
// The bit climbs from the table through every height once. Heights between the
// depths asked for lie on the shop's own scale, so that they can be set by eye.
package ladder

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Demand is what one run asks of the ladder it climbs.
type Demand struct {
	Depth measure.Length // the full depth
	Cap   measure.Length // the greatest depth of one pass, on the scale, above 0
	Every bool           // it takes every rung up to its depth, not as few as its cap allows
	From  measure.Length // where its wood begins, on the scale, a recess being cut that deep; 0 at the table
	// Section is that of a shaped edge; Cap is then the most wood of one pass, as
	// [measure.Strip]. Demands of one bit and fence distance have one section.
	Section joinery.Section
}

// Passes is how many rungs the demand uses of any ladder at the least.
func (d Demand) Passes() int { return int((d.takes(d.From, d.Depth) + d.Cap - 1) / d.Cap) }

// takes is what a pass from one height to another takes, in the measure of the cap.
func (d Demand) takes(from, to measure.Length) measure.Length {
	if !d.Section.Shaped() {
		return to - from
	}
	return measure.Strip(d.Section.Area(to)) - measure.Strip(d.Section.Area(from))
}

// Of returns the heights of the bit for all demands, climbing. Every demand's
// depth is a rung. From one depth to the next the rungs between are as few as
// the smallest cap among the demands that still go deeper allows, and lie on the
// coarsest division that needs no more of them, in equal steps but for the first
// and the last: 1/4, 1/2, 3/4, 1 is set more surely than 5/16, 5/8, 15/16, 1. No
// ladder has fewer. The same demands have the same ladder wherever the fence is.
//
// Two ladders together serve the demands of both, so more demands never need
// more rungs than they would apart. Nor can they need fewer, but for depths off
// the scale: such a depth is a rung where the scale has none, and may save one.
func Of(demands []Demand, scale measure.Scale) []measure.Length {
	byDepth := slices.Clone(demands)
	slices.SortFunc(byDepth, func(a, b Demand) int { return cmp.Compare(a.Depth, b.Depth) })
	held := make([]hold, len(byDepth))
	var above hold
	for i := len(byDepth) - 1; i >= 0; i-- {
		above.by(byDepth[i])
		held[i] = above
	}
	var ladder []measure.Length
	var from measure.Length
	for i, d := range byDepth {
		if d.Depth > from {
			switch h := held[i]; {
			case d.Section.Shaped():
				d.Cap = h.most
				ladder = append(ladder, bites(from, d, scale)...)
			case h.throughout(from):
				ladder = climb(ladder, max(from, h.low), d.Depth, h.most, scale)
			default:
				ladder = append(ladder, past(from, byDepth[i:], scale)...)
			}
			from = d.Depth
		}
	}
	return ladder
}

// Count returns how many heights the ladder of the demands has, without
// writing it. The demands must be sorted by depth.
func Count(byDepth []Demand, scale measure.Scale) int {
	rungs := measure.Length(0)
	var h hold
	for i := len(byDepth) - 1; i >= 0; i-- {
		d := byDepth[i]
		h.by(d)
		from := measure.Length(0)
		if i > 0 {
			from = byDepth[i-1].Depth
		}
		if d.Depth > from {
			switch {
			case d.Section.Shaped():
				d.Cap = h.most
				rungs += measure.Length(len(bites(from, d, scale)))
			case h.throughout(from):
				rungs += steps(max(from, h.low), d.Depth, h.most, scale)
			default:
				rungs += measure.Length(len(past(from, byDepth[i:], scale)))
			}
		}
	}
	return int(rungs)
}

// hold is what holds for the rungs below some demands.
type hold struct {
	most  measure.Length // the smallest cap; 0 for no demand
	begin measure.Length // where the wood with that cap begins
	low   measure.Length // where any wood begins
}

// by takes one more demand in.
func (h *hold) by(d Demand) {
	switch {
	case h.most == 0:
		*h = hold{d.Cap, d.From, d.From}
	case d.Cap < h.most:
		h.most, h.begin = d.Cap, d.From
	case d.Cap == h.most:
		h.begin = min(h.begin, d.From)
	}
	h.low = min(h.low, d.From)
}

// throughout reports whether the smallest cap holds from a height on, or from
// where any wood begins above it.
func (h hold) throughout(from measure.Length) bool { return h.begin <= max(from, h.low) }

// climb appends the rungs above from up to to, no step deeper than most.
func climb(ladder []measure.Length, from, to, most measure.Length, scale measure.Scale) []measure.Length {
	n := steps(from, to, most, scale)
	if n == 1 {
		return append(ladder, to)
	}
	if first, step, ok := coarsest(from, to, n, most, scale); ok {
		for ; n > 1; n-- {
			ladder = append(ladder, first)
			first += step
		}
		return append(ladder, to)
	}
	for ; n > 1; n-- {
		next := scale.Round(from + (to-from)/n)
		// Rounding must neither deepen this step nor leave too much above it.
		next = max(next, lowest(to, n-1, most, scale))
		next = min(next, scale.Floor(from+most))
		ladder = append(ladder, next)
		from = next
	}
	return append(ladder, to)
}

// steps counts the fewest steps from one height to another, all heights
// between lying on the scale. Most must be a whole number of divisions.
func steps(from, to, most measure.Length, scale measure.Scale) measure.Length {
	if to-from <= most {
		return 1
	}
	first := scale.Floor(from + most)
	return 1 + (to-first+most-1)/most
}

// lowest returns the least height on the scale from which n steps reach to.
func lowest(to, n, most measure.Length, scale measure.Scale) measure.Length {
	return scale.Ceil(to - n*most)
}

// Used returns the heights of a ladder that one demand uses: every one up to its
// depth, or else the fewest that reach it, each as high as its own cap allows.
func Used(ladder []measure.Length, d Demand) []measure.Length {
	var used []measure.Length
	at := d.From
	for i, rung := range ladder {
		if rung > d.Depth {
			break
		}
		if rung <= d.From {
			continue
		}
		last := rung == d.Depth
		if last || d.Every || ladder[i+1] > d.Depth || d.takes(at, ladder[i+1]) > d.Cap {
			used = append(used, rung)
			at = rung
		}
	}
	return used
}
