package search

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// unordered looks for the cheapest ways where everything is paid once and the
// order costs nothing.
type unordered struct {
	m      *model
	b      *budget
	choice []int // the best found, the way of each kind
	cost   joinery.Time
	bound  joinery.Time      // nothing below it exists
	seen   [][]ladder.Demand // by station, the demands of the longest ascent that any choice had there
}

// unordered starts from the first way of every kind.
func (s *solver) unordered() *unordered {
	u := &unordered{m: s.m, b: s.b, seen: make([][]ladder.Demand, len(s.m.stations))}
	first := make([]int, len(s.m.kinds))
	t := newTally(s.m)
	for k := range first {
		t.add(&s.m.kinds[k].ways[0])
	}
	u.choice, u.cost = first, t.cost()
	u.fitRegions()
	if u.bound < u.cost {
		u.mend()
	}
	if u.bound < u.cost {
		u.prove()
	}
	return u
}

const (
	mostCuts   = 8   // how often the regions are cut anew
	cutRounds  = 600 // how often the shares are improved for each
	mostStales = 2   // how many cuts may raise the bound by nothing
	cutShare   = 2   // one part in so many of the steps may go into all of it
)

// fitRegions cuts the regions to the choices that the shares lead to: where
// these put demands on a station that the best choice leaves out, its regions
// are cut for them, lest its ladder seem shorter than it is.
func (u *unordered) fitRegions() {
	whole := u.b
	u.b = whole.part(whole.left / cutShare)
	defer func() {
		whole.giveBack(u.b)
		u.b = whole
	}()
	var best [][][]ladder.Demand
	for cut, stale := 0, 0; cut == 0 || cut < mostCuts && stale < mostStales && u.b.ended == Through; cut++ {
		used := u.uses()
		u.m.numberElements(used)
		low, fair := u.weigh()
		if low > u.bound || cut == 0 {
			u.bound, best, stale = low, used, 0
		} else {
			stale++
		}
		if u.bound >= u.cost {
			break
		}
		u.see(fair)
	}
	u.m.numberElements(best)
}

// uses lists, by station, the ascent that its regions are cut for.
func (u *unordered) uses() [][][]ladder.Demand {
	used := u.m.uses(u.choice)
	for s, seen := range u.seen {
		if len(used[s]) == 0 && len(seen) > 0 {
			used[s] = [][]ladder.Demand{seen}
		}
	}
	return used
}

// see remembers the demands of a choice.
func (u *unordered) see(choice []int) {
	for s, ascents := range u.m.uses(choice) {
		if len(ascents) > 0 && len(ascents[0]) > len(u.seen[s]) {
			u.seen[s] = ascents[0]
		}
	}
}

// weigh bounds all choices by shares, and returns the choice these lead to. It
// keeps what it comes upon that is cheaper.
func (u *unordered) weigh() (low joinery.Time, fair []int) {
	c := newChooser(u.m, u.b)
	und, settled, undo := c.settle(u.m.all())
	defer undo()
	fair = slices.Clone(u.choice)
	for _, p := range settled {
		fair[p.kind] = p.way
	}
	if len(und) == 0 {
		u.choice, u.cost = fair, c.t.cost()
		return u.cost, fair
	}
	s := c.share(und)
	base := c.t.cost() - c.excess(und)
	low = base + u.m.roundUp(s.raise(u.cost-base-u.m.grain+1, cutRounds, u.b))
	for i, p := range und {
		fair[p.kind] = s.kinds[i].names[s.kinds[i].best]
	}
	picks, cost := c.fair(und, s)
	u.keep(append(picks, settled...), c.t.cost()+cost)
	return low, fair
}

// keep keeps picks for all kinds that cost less than the best choice.
func (u *unordered) keep(picks []pick, cost joinery.Time) {
	if cost >= u.cost {
		return
	}
	u.cost, u.choice = cost, slices.Clone(u.choice)
	for _, p := range picks {
		u.choice[p.kind] = p.way
	}
}

// proveShare leaves one part in so many of the steps to a proof, where the order
// must still be found.
const proveShare = 3

// prove finds the cheapest choice by branch and bound.
func (u *unordered) prove() {
	steps := u.b.left
	if u.m.tied {
		steps /= proveShare
	}
	lent := u.b.part(steps)
	defer u.b.giveBack(lent)
	f := newChooser(u.m, lent).solve(u.m.all(), u.cost)
	if f.picks != nil {
		u.keep(f.picks, f.cost)
	}
	u.bound = max(u.bound, min(f.bound, u.cost))
}
