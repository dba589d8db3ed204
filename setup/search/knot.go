package search

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/budget"
)

// knot finds the cheapest ways where the order costs something: a branch and
// bound over the ways of the kinds that wait for one another, and then over
// those of the others.
//
// Its bound is that of the chooser, everything paid once, and on top the
// surcharge: what ordering the settled kinds that wait costs beyond paying
// everything once. The sum is a bound because, wherever runs of kinds that wait
// may be made twice, ladders are counted by their rung elements only: of these,
// a run brings a set of ascents together at least what it brings to one.
type knot struct {
	*chooser
	s          *solver
	way        []int // of every settled kind, -1 of the others
	surcharges map[string]known
}

// unknot searches for something cheaper than the solver's best and returns the
// bound it proved.
func (s *solver) unknot(u *unordered) joinery.Time {
	used, fair := s.m.Uses(u.choice), s.m.Uses(u.fair)
	for at := range used {
		if len(used[at]) == 0 {
			used[at] = fair[at]
		}
	}
	if s.choice != nil {
		for at, ascents := range s.order.uses() {
			if len(ascents) > 0 {
				used[at] = ascents
			}
		}
	}
	s.m.NumberElements(used)
	k := &knot{
		chooser:    newChooser(s.m, s.b),
		s:          s,
		way:        slices.Repeat([]int{-1}, len(s.m.Kinds)),
		surcharges: map[string]known{},
	}
	k.soften()
	return k.search(allOf(s.m), 0)
}

// soften marks the stations where more than one kind that waits may be made.
func (k *knot) soften() {
	by := make([]int, len(k.m.Stations)) // the first such kind, plus one
	for i := range k.m.Kinds {
		if !k.m.Kinds[i].Tied {
			continue
		}
		for _, w := range k.m.Kinds[i].Ways {
			for _, r := range w.Runs {
				if by[r.Station] != 0 && by[r.Station] != i+1 {
					k.t.soft[r.Station] = true
				}
				by[r.Station] = i + 1
			}
		}
	}
}

// search tries the pending kinds beyond what is settled, keeps in the solver
// what is cheaper than its best, and returns a bound on everything it covers.
func (k *knot) search(und []pending, extra joinery.Time) joinery.Time {
	n, leave, ok := k.enter(und, k.s.cost, extra)
	defer leave()
	if ok && len(n.und) == 0 {
		return k.s.try(k.way)
	}
	if !ok || k.b.Ended != budget.Through {
		return n.bound
	}
	group := k.next(n.und)
	if group < 0 {
		if b, through := k.untied(n.und, n.spent); through {
			return max(n.bound, b)
		}
	}
	branches := k.split(n.und, group)
	if len(branches) == 0 { // all have one way now
		branches = [][]pending{n.und}
	}
	bound := k.s.cost
	for _, next := range branches {
		bound = min(bound, k.search(next, n.extra))
	}
	return max(n.bound, bound)
}

// untied finishes a choice whose kinds that wait are all settled, by paying
// everything once. It is through with it where the order then costs nothing
// beyond the surcharge, or where the bound is too high.
func (k *knot) untied(und []pending, low joinery.Time) (bound joinery.Time, through bool) {
	f := k.solve(und, k.s.cost-low)
	if f.picks != nil {
		choice := slices.Clone(k.way)
		for _, p := range f.picks {
			choice[p.kind] = p.way
		}
		k.s.try(choice)
	}
	bound = low + f.bound
	return bound, bound >= k.s.cost || k.b.Ended != budget.Through
}
