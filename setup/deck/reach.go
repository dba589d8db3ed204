package deck

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Guide is what of the work is brought to a mark.
type Guide uint8

// The guides: the layout line, which meets an edge of the bit wherever the
// fence ends, or one end of the work, which meets a mark on the fence.
const (
	ByLine Guide = iota
	ByLead
	ByTail
)

// String gives a word: "line", "lead" or "tail".
func (g Guide) String() string { return [...]string{"line", "lead", "tail"}[g] }

// Reached is how a mark is set on a fence: the guide, and where it stands when
// the work is at the mark, from the bit's centre along the fence. Right, the
// infeed side, is positive. A layout line stands at the bit's edge.
type Reached struct {
	Guide Guide
	At    measure.Length
}

// Reach chooses the guide for the run's start mark or its stop mark, which it
// must have: the end that stands nearest to the bit on the usable fence, the
// tail to the right of the bit or the leading end to its left, for a short
// distance is the easier to measure; where neither does, the layout line. Of two
// as near, a start is measured to the tail and a stop to the leading end, where a
// stop would stand. A side of the fence that nobody measured is taken to reach as
// far as it must.
func (r *Run) Reach(stop bool, fence joinery.FenceReach) Reached {
	radius := r.Along() / 2
	on := func(past, side measure.Length) bool { return past > radius && (side == 0 || past <= side) }
	m, edge := r.Start, -radius
	if stop {
		m, edge = r.Stop, radius
	}
	lead, tail := on(m.LeadPastCentre, fence.Outfeed), on(m.TailBeforeCentre, fence.Infeed)
	switch {
	case lead && (!tail || m.LeadPastCentre < m.TailBeforeCentre || stop && m.LeadPastCentre == m.TailBeforeCentre):
		return Reached{ByLead, -m.LeadPastCentre}
	case tail:
		return Reached{ByTail, m.TailBeforeCentre}
	}
	return Reached{ByLine, edge}
}

// StopOffFence reports whether a stop to hold the work against stands beyond
// the usable fence: the back stop behind the tail end where the run starts, or
// the front stop before the leading end where it stops. The run must have that
// mark. A side of the fence that nobody measured is taken to reach that far.
func (r *Run) StopOffFence(stop bool, fence joinery.FenceReach) bool {
	if stop {
		return fence.Outfeed > 0 && r.Stop.LeadPastCentre > fence.Outfeed
	}
	return fence.Infeed > 0 && r.Start.TailBeforeCentre > fence.Infeed
}

// FenceMark is one mark of a setup, shared by all the runs that use it.
type FenceMark struct {
	Stop bool // the work is lifted off here, else dropped on
	Back bool // the back stop of a drop that is set by another mark
	Reached
	Line measure.Length // by the layout line: where it is, from the leading end of the work; else 0
	Runs []*Run         // in running order
}

// FenceMarks gives the different marks of some runs of one setup on a shop's
// fence, from left to right, and the back stops of drops whose mark is not the
// stop itself, where the fence reaches them.
func FenceMarks(runs []Run, shop *joinery.Shop) []FenceMark {
	var marks []FenceMark
	add := func(mark FenceMark) {
		for i := range marks {
			if marks[i].same(mark) {
				marks[i].Runs = append(marks[i].Runs, mark.Runs...)
				return
			}
		}
		marks = append(marks, mark)
	}
	for i := range runs {
		r := &runs[i]
		if r.Start != nil {
			at := r.against(false, shop)
			add(markAt(r, r.Start, at, false))
			stop := r.Start.TailBeforeCentre
			if at.Guide != ByTail && stop > r.Along()/2 && !r.StopOffFence(false, shop.Fence) {
				add(FenceMark{Back: true, Reached: Reached{ByTail, stop}, Runs: []*Run{r}})
			}
		}
		if r.Stop != nil {
			add(markAt(r, r.Stop, r.against(true, shop), true))
		}
	}
	slices.SortStableFunc(marks, func(a, b FenceMark) int { return cmp.Compare(a.At, b.At) })
	return marks
}

func markAt(r *Run, m *Mark, at Reached, stop bool) FenceMark {
	mark := FenceMark{Stop: stop, Reached: at, Runs: []*Run{r}}
	if at.Guide == ByLine {
		mark.Line = m.Line
	}
	return mark
}

// against is how a mark is set in a shop: by Reach, but in one with stop blocks
// against the block, where the fence reaches it.
func (r *Run) against(stop bool, shop *joinery.Shop) Reached {
	radius := r.Along() / 2
	switch block := shop.Stops == joinery.Blocks && !r.StopOffFence(stop, shop.Fence); {
	case block && stop && r.Stop.LeadPastCentre > radius:
		return Reached{ByLead, -r.Stop.LeadPastCentre}
	case block && !stop && r.Start.TailBeforeCentre > radius:
		return Reached{ByTail, r.Start.TailBeforeCentre}
	}
	return r.Reach(stop, shop.Fence)
}

func (m FenceMark) same(n FenceMark) bool {
	return m.Stop == n.Stop && m.Back == n.Back && m.Reached == n.Reached && m.Line == n.Line
}
