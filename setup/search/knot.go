package search

import (
	"cmp"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// knot finds the cheapest ways where the order costs something: a branch and
// bound over the ways of the kinds that wait for one another, and then over
// those of the others.
//
// Its bound is that of the chooser, everything paid once, and on top the
// surcharge: what ordering the settled kinds that wait costs beyond paying
// everything once. The sum is a bound because, wherever runs of kinds that wait
// may be made twice, ladders are counted by their rung elements only: of these,
// a run brings a set of climbs together at least what it brings to one.
type knot struct {
	*chooser
	s          *solver
	way        []int // of every settled kind, -1 of the others
	surcharges map[string]joinery.Time
}

// unknot searches for something cheaper than the solver's best and returns the
// bound it proved.
func (s *solver) unknot() joinery.Time {
	k := &knot{newChooser(s.m, s.b), s, slices.Repeat([]int{-1}, len(s.m.kinds)), map[string]joinery.Time{}}
	k.soften()
	return k.search(s.m.all())
}

// soften marks the stations where more than one kind that waits may be made.
func (k *knot) soften() {
	by := make([]int, len(k.m.stations)) // the first such kind, plus one
	for i := range k.m.kinds {
		if !k.m.kinds[i].tied {
			continue
		}
		for _, w := range k.m.kinds[i].ways {
			for _, r := range w.runs {
				if by[r.station] != 0 && by[r.station] != i+1 {
					k.t.soft[r.station] = true
				}
				by[r.station] = i + 1
			}
		}
	}
}

// search tries the pending kinds beyond what is settled, keeps in the solver
// what is cheaper than its best, and returns a bound on everything it covers.
func (k *knot) search(und []pending) joinery.Time {
	und, settled, undo := k.settle(und)
	defer undo()
	for _, p := range settled {
		k.way[p.kind] = p.way
	}
	defer func() {
		for _, p := range settled {
			k.way[p.kind] = -1
		}
	}()
	low := k.t.cost + k.surcharge()
	if low >= k.s.cost {
		return low
	}
	if len(und) == 0 {
		return k.s.try(k.way)
	}
	s := k.share(und)
	room := k.s.cost - low
	bound := low + k.m.roundUp(s.fit(room-k.m.grain+1, k.rounds(und), k.b))
	k.remember(s, und)
	if bound >= k.s.cost || k.b.ended != Through {
		return bound
	}
	left, _ := s.without(und, room-k.m.grain)
	if slices.ContainsFunc(left, func(p pending) bool { return len(p.ways) == 0 }) {
		return k.s.cost
	}
	if !slices.ContainsFunc(left, func(p pending) bool { return k.m.kinds[p.kind].tied }) {
		if b, through := k.untied(left, low); through {
			return max(bound, b)
		}
	}
	return max(bound, k.branch(left))
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
	return bound, bound >= k.s.cost || k.b.ended != Through
}

// branch tries the ways of one kind, those first that add least: a kind that
// waits while there is one, else one with most runs.
func (k *knot) branch(und []pending) joinery.Time {
	at := slices.IndexFunc(und, func(p pending) bool { return len(p.ways) > 1 })
	if at < 0 {
		return k.search(und)
	}
	for i, p := range und {
		if len(p.ways) > 1 && k.before(p, und[at]) {
			at = i
		}
	}
	ways := k.m.kinds[und[at].kind].ways
	prices := map[int]joinery.Time{}
	for _, w := range und[at].ways {
		prices[w] = k.t.price(&ways[w])
	}
	names := slices.Clone(und[at].ways)
	slices.SortStableFunc(names, func(a, b int) int { return cmp.Compare(prices[a], prices[b]) })
	bound := k.s.cost
	for _, w := range names {
		next := slices.Clone(und)
		next[at].ways = []int{w}
		bound = min(bound, k.search(next))
	}
	return bound
}

// before reports whether one kind is branched on before another.
func (k *knot) before(p, q pending) bool {
	a, b := &k.m.kinds[p.kind], &k.m.kinds[q.kind]
	if a.tied != b.tied {
		return a.tied
	}
	return len(p.ways) < len(q.ways)
}

// surcharge is what ordering the settled kinds that wait costs at the least
// beyond paying everything once.
func (k *knot) surcharge() joinery.Time {
	choice := slices.Repeat([]int{-1}, len(k.way))
	for i, w := range k.way {
		if k.m.kinds[i].tied {
			choice[i] = w
		}
	}
	key := fmt.Sprint(choice)
	if known, ok := k.surcharges[key]; ok {
		return known
	}
	e := newErrands(k.m, choice, func(station int, demands []ladder.Demand) int {
		if !k.t.soft[station] {
			return 0
		}
		return k.m.fewestRungs(station, demands)
	})
	_, low := e.order(k.b)
	k.surcharges[key] = low - e.start().rest
	return k.surcharges[key]
}
