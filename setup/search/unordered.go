package search

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
)

// unordered looks for the cheapest ways where everything is paid once and the
// order costs nothing.
type unordered struct {
	m      *model.Model
	b      *budget.Budget
	choice []int // the best found, the way of each kind
	fair   []int // the way of each kind that is cheapest at its shares
	cost   joinery.Time
	bound  joinery.Time // nothing below it exists
}

// unordered starts from the first way of every kind.
func (s *solver) unordered() *unordered {
	u := &unordered{m: s.m, b: s.b}
	first := make([]int, len(s.m.Kinds))
	t := newTally(s.m)
	for k := range first {
		t.add(&s.m.Kinds[k].Ways[0])
	}
	u.choice, u.fair, u.cost = first, slices.Clone(first), t.cost()
	u.weigh()
	if u.bound < u.cost {
		lent := u.b.Part(u.b.Left / proveShare)
		u.prove(lent, u.cost)
		u.b.GiveBack(lent)
	}
	return u
}

const (
	weighRounds = 600 // how often the shares are improved at first
	weighShare  = 2   // one part in so many of the steps may go into that
)

// weigh bounds all choices by shares, and keeps the choice these lead to.
func (u *unordered) weigh() {
	c := newChooser(u.m, u.b)
	und, settled, undo := c.settle(allOf(u.m))
	defer undo()
	if len(und) == 0 {
		u.keep(settled, c.t.cost())
		u.bound = u.cost
		return
	}
	s := c.share(und)
	base := c.t.cost() - c.excess(und)
	lent := u.b.Part(u.b.Left / weighShare)
	u.bound = base + u.m.RoundUp(s.improve(u.cost-base-u.m.Coin+1, weighRounds, lent))
	u.b.GiveBack(lent)
	for i, p := range und {
		u.fair[p.kind] = s.kinds[i].names[s.kinds[i].best]
	}
	picks, cost := c.fair(und, s)
	u.keep(append(picks, settled...), c.t.cost()+cost)
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

// proveShare leaves one part in so many of the steps to a first proof; the others are
// for the order, and for better answers where the proof does not come through.
const proveShare = 8

// prove finds the cheapest choice below a limit by branch and bound.
func (u *unordered) prove(b *budget.Budget, limit joinery.Time) {
	limit = min(limit, u.cost)
	f := newChooser(u.m, b).solve(allOf(u.m), limit)
	if f.picks != nil {
		u.keep(f.picks, f.cost)
	}
	u.bound = max(u.bound, min(f.bound, limit))
}
