package search

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/model"
)

// islands splits the pending kinds into groups that share nothing that is
// still to be paid, and no ladder that is not a sum of rungs.
func (c *chooser) islands(und []pending) [][]pending {
	together := model.NewUnion(len(und))
	owner := map[int]int{} // of an element or ladder, the first kind that may need it
	for i, p := range und {
		claim := func(e int) {
			first, ok := owner[e]
			if !ok {
				owner[e] = i
				return
			}
			together.Join(first, i)
		}
		for _, w := range p.ways {
			way := &c.m.Kinds[p.kind].Ways[w]
			for _, e := range way.Elems {
				if !c.t.paid(e) {
					claim(e)
				}
			}
			for i := range way.Runs {
				r := &way.Runs[i]
				if !c.m.Stations[r.Station].Exact && !c.t.settled(r) {
					claim(-1 - r.Station)
				}
			}
		}
	}
	var islands [][]pending
	for _, members := range together.Groups() {
		var island []pending
		for _, i := range members {
			island = append(island, und[i])
		}
		islands = append(islands, island)
	}
	return islands
}

// each solves islands one by one; their costs add up.
func (c *chooser) each(islands [][]pending, limit joinery.Time) found {
	slices.SortStableFunc(islands, func(a, b []pending) int { return cmp.Compare(len(a), len(b)) })
	sum := found{picks: []pick{}}
	for _, island := range islands {
		f := c.solve(island, limit-sum.bound)
		sum.bound += f.bound
		if f.picks == nil {
			if sum.bound < limit {
				// The budget ran out before anything was found.
				sum.picks = nil
				continue
			}
			return found{bound: sum.bound}
		}
		if sum.picks != nil {
			sum.picks = append(sum.picks, f.picks...)
			sum.cost += f.cost
		}
	}
	return sum
}
