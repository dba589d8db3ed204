package search

// islands splits the pending kinds into groups that share nothing that is
// still to be paid, and no ladder that is not a sum of rungs.
func (c *chooser) islands(und []pending) [][]pending {
	lead := make([]int, len(und))
	for i := range lead {
		lead[i] = i
	}
	find := func(i int) int {
		for lead[i] != i {
			lead[i] = lead[lead[i]]
			i = lead[i]
		}
		return i
	}
	owner := map[int]int{} // of an element or ladder, the first kind that may need it
	for i, p := range und {
		claim := func(e int) {
			first, ok := owner[e]
			if !ok {
				owner[e] = i
				return
			}
			a, b := find(first), find(i)
			lead[max(a, b)] = min(a, b)
		}
		for _, w := range p.ways {
			way := &c.m.kinds[p.kind].ways[w]
			for _, e := range way.elems {
				if !c.t.paid(e) {
					claim(e)
				}
			}
			for _, r := range way.runs {
				if !c.m.stations[r.station].piles.single && !c.covered(r) {
					claim(-1 - r.station)
				}
			}
		}
	}
	at := map[int]int{}
	var all [][]pending
	for i, p := range und {
		n, ok := at[find(i)]
		if !ok {
			n = len(all)
			at[find(i)] = n
			all = append(all, nil)
		}
		all[n] = append(all[n], p)
	}
	return all
}

// covered reports whether a run adds no rung whatever else comes to its
// station: its depth is asked for there already by one whose cap is no greater.
func (c *chooser) covered(r run) bool {
	p := &c.t.piles[r.station]
	at, found := p.place(r.demand)
	if found {
		return true
	}
	return at > 0 && p.demands[at-1].Depth == r.demand.Depth
}
