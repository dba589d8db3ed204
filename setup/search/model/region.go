package model

import (
	"cmp"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
)

// A ladder is not a sum of rungs that one could name beforehand, but it can be
// bounded by one. Cut the height of a station into regions. A run needs a
// region if every ladder that serves it has a rung there: the region where its
// depth lies, and those below that are no lower than its cap, as far down as its
// wood begins. As regions do not overlap, a ladder has a rung for each that is
// needed by any of its runs.

// region is the heights above lo, up to and with hi.
type region struct{ lo, hi measure.Length }

// needed reports whether a demand needs a rung in the region.
func (r region) needed(d ladder.Demand) bool {
	return r.lo < d.Depth && d.Depth <= r.hi || !d.Section.Shaped() && d.From <= r.lo && r.hi <= d.Depth && r.hi-r.lo >= d.Cap
}

// regions cuts the height so that the ladders in use are bounded as closely as
// can be; all are the demands that might be there, sorted. It is exact where
// every depth is within every cap: the ladder then has a rung at each depth and
// no other.
func regions(all []ladder.Demand, used [][]ladder.Demand) (cut []region, exact bool) {
	deepest := all[len(all)-1].Depth
	if all[0].Section.Shaped() {
		// What a pass takes there is no depth: a rung at each depth is all that is sure.
		for _, d := range all {
			if len(cut) == 0 || d.Depth > cut[len(cut)-1].hi {
				from := measure.Length(0)
				if len(cut) > 0 {
					from = cut[len(cut)-1].hi
				}
				cut = append(cut, region{from, d.Depth})
			}
		}
		return cut, false
	}
	least := slices.MinFunc(all, func(a, b ladder.Demand) int { return cmp.Compare(a.Cap, b.Cap) })
	if deepest <= least.Cap {
		return cutAt(nil, all, deepest), true
	}
	top := slices.MinFunc(all, func(a, b ladder.Demand) int { return cmp.Compare(a.From, b.From) }).From
	if len(used) > 0 {
		longest := slices.MaxFunc(used, func(a, b []ladder.Demand) int {
			return cmp.Compare(len(cutAt(nil, a, deepest)), len(cutAt(nil, b, deepest)))
		})
		cut = cutAt(nil, longest, deepest)
		top = cut[len(cut)-1].hi
	}
	if top < deepest {
		most := slices.MaxFunc(all, func(a, b ladder.Demand) int { return cmp.Compare(a.Cap, b.Cap) })
		cut = windows(cut, top, deepest, most.Cap)
	}
	return split(cut, all, used), false
}

// split cuts regions once more at depths that fall inside them, where no
// ladder in use and no single demand is then bounded less closely.
func split(cut []region, all []ladder.Demand, used [][]ladder.Demand) []region {
	closeness := func(cut []region) (together, alone int) {
		for _, ascent := range used {
			together += needed(cut, ascent)
		}
		for _, d := range all {
			alone += needed(cut, []ladder.Demand{d})
		}
		return together, alone
	}
	together, alone := closeness(cut)
	for _, d := range all {
		at := slices.IndexFunc(cut, func(r region) bool { return r.lo < d.Depth && d.Depth < r.hi })
		if at < 0 {
			continue
		}
		finer := slices.Insert(slices.Clone(cut), at, region{cut[at].lo, d.Depth})
		finer[at+1].lo = d.Depth
		if t, a := closeness(finer); t >= together && a >= alone {
			cut, together, alone = finer, t, a
		}
	}
	return cut
}

// needed counts the regions that some demands need.
func needed(cut []region, demands []ladder.Demand) int {
	n := 0
	for _, r := range cut {
		if slices.ContainsFunc(demands, r.needed) {
			n++
		}
	}
	return n
}

// NeededBy counts the regions that some runs need.
func NeededBy(cut []region, list []Asked) int {
	n := 0
	for _, r := range cut {
		if slices.ContainsFunc(list, func(a Asked) bool { return r.needed(a.Demand) }) {
			n++
		}
	}
	return n
}

// cutAt appends regions that end at every depth, each no higher than the least
// cap of the demands from there on. The demands must be sorted.
func cutAt(cut []region, demands []ladder.Demand, most measure.Length) []region {
	from := measure.Length(0)
	for i, d := range demands {
		if d.Depth == from {
			continue
		}
		least, low := most, d.From
		for _, deeper := range demands[i:] {
			least, low = min(least, deeper.Cap), min(low, deeper.From)
		}
		if from < low {
			cut, from = append(cut, region{from, low}), low
		}
		cut = windows(cut, from, d.Depth, least)
		from = d.Depth
	}
	return cut
}

// windows appends regions of one height.
func windows(cut []region, from, to, height measure.Length) []region {
	for ; from+height < to; from += height {
		cut = append(cut, region{from, from + height})
	}
	return append(cut, region{from, to})
}
