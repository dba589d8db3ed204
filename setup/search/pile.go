package search

import (
	"cmp"
	"slices"

	"fencecard/setup/ladder"
)

// pile is the demands on one station, as more and fewer runs are put there.
type pile struct {
	demands []ladder.Demand // by depth, then cap; each once
	runs    []int           // how many runs make each demand
	rungs   int             // of the ladder
	needed  int             // regions that need a rung
}

// place finds a demand or where it would stand.
func (p *pile) place(d ladder.Demand) (int, bool) {
	return slices.BinarySearchFunc(p.demands, d, compareDemands)
}

// add puts one run on the pile and returns whether the demand is a new one.
func (p *pile) add(d ladder.Demand) bool {
	at, found := p.place(d)
	if found {
		p.runs[at]++
		return false
	}
	p.demands = slices.Insert(p.demands, at, d)
	p.runs = slices.Insert(p.runs, at, 1)
	return true
}

// remove takes one run off and returns whether the demand is gone.
func (p *pile) remove(d ladder.Demand) bool {
	at, _ := p.place(d)
	if p.runs[at]--; p.runs[at] > 0 {
		return false
	}
	p.demands = slices.Delete(p.demands, at, at+1)
	p.runs = slices.Delete(p.runs, at, at+1)
	return true
}

// covers reports whether a run adds no rung whatever else comes to the pile:
// its depth is asked for there already by one whose cap is no greater.
func (p *pile) covers(d ladder.Demand) bool {
	at, found := p.place(d)
	return found || at > 0 && p.demands[at-1].Depth == d.Depth
}

func compareDemands(a, b ladder.Demand) int {
	return cmp.Or(cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Cap, b.Cap))
}
