package search

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// pile is the demands on one station, as more and fewer runs are put there.
type pile struct {
	asked  []asked // by depth, then cap; each demand once
	runs   []int   // how many runs make each demand
	cost   joinery.Time
	needed int // regions that need a rung
}

// demands lists the demands.
func (p *pile) demands() []ladder.Demand {
	list := make([]ladder.Demand, len(p.asked))
	for i, a := range p.asked {
		list[i] = a.Demand
	}
	return list
}

// place finds a demand or where it would stand.
func (p *pile) place(d ladder.Demand) (int, bool) {
	return slices.BinarySearchFunc(p.asked, d, func(a asked, d ladder.Demand) int { return compareDemands(a.Demand, d) })
}

// add puts one run on the pile and returns whether the demand is a new one.
func (p *pile) add(r *run) bool {
	at, found := p.place(r.demand)
	if found {
		p.runs[at]++
		p.asked[at].over += r.over
		return false
	}
	p.asked = slices.Insert(p.asked, at, asked{r.demand, r.over})
	p.runs = slices.Insert(p.runs, at, 1)
	return true
}

// remove takes one run off and returns whether the demand is gone.
func (p *pile) remove(r *run) bool {
	at, _ := p.place(r.demand)
	p.asked[at].over -= r.over
	if p.runs[at]--; p.runs[at] > 0 {
		return false
	}
	p.asked = slices.Delete(p.asked, at, at+1)
	p.runs = slices.Delete(p.runs, at, at+1)
	return true
}

// covers reports whether a run adds no rung whatever else comes to the pile:
// its depth is asked for there already by one whose cap is no greater, and whose
// wood begins no higher.
func (p *pile) covers(d ladder.Demand) bool {
	at, found := p.place(d)
	for at--; !found && at >= 0 && p.asked[at].Depth == d.Depth; at-- {
		found = p.asked[at].From <= d.From
	}
	return found
}

func compareDemands(a, b ladder.Demand) int {
	return cmp.Or(cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Cap, b.Cap), cmp.Compare(a.From, b.From))
}
