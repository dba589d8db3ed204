package model

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// Pile is the demands on one station, as more and fewer runs are put there.
type Pile struct {
	Asked  []Asked // by depth, then cap; each demand once
	runs   []int   // how many runs make each demand
	Cost   joinery.Time
	Needed int // regions that need a rung
}

// demands lists the demands.
func (p *Pile) demands() []ladder.Demand {
	list := make([]ladder.Demand, len(p.Asked))
	for i, a := range p.Asked {
		list[i] = a.Demand
	}
	return list
}

// place finds a demand or where it would stand.
func (p *Pile) place(d ladder.Demand) (int, bool) {
	return slices.BinarySearchFunc(p.Asked, d, func(a Asked, d ladder.Demand) int { return CompareDemands(a.Demand, d) })
}

// Add puts one run on the pile and returns whether the demand is a new one.
func (p *Pile) Add(r *ReadyRun) bool {
	at, found := p.place(r.Demand)
	if found {
		p.runs[at]++
		p.Asked[at].Over += r.Over
		return false
	}
	p.Asked = slices.Insert(p.Asked, at, Asked{r.Demand, r.Over})
	p.runs = slices.Insert(p.runs, at, 1)
	return true
}

// Remove takes one run off and returns whether the demand is gone.
func (p *Pile) Remove(r *ReadyRun) bool {
	at, _ := p.place(r.Demand)
	p.Asked[at].Over -= r.Over
	if p.runs[at]--; p.runs[at] > 0 {
		return false
	}
	p.Asked = slices.Delete(p.Asked, at, at+1)
	p.runs = slices.Delete(p.runs, at, at+1)
	return true
}

// Covers reports whether a run adds no rung whatever else comes to the pile:
// its depth is asked for there already by one whose cap is no greater, and whose
// wood begins no higher.
func (p *Pile) Covers(d ladder.Demand) bool {
	at, found := p.place(d)
	for at--; !found && at >= 0 && p.Asked[at].Depth == d.Depth; at-- {
		found = p.Asked[at].From <= d.From
	}
	return found
}

// CompareDemands orders demands, the deepest last.
func CompareDemands(a, b ladder.Demand) int {
	return cmp.Or(cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Cap, b.Cap), cmp.Compare(a.From, b.From))
}
