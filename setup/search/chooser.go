package search

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
)

// chooser finds the cheapest ways where everything is paid once and the order
// costs nothing: a branch and bound.
type chooser struct {
	m       *model.Model
	t       *tally // what is settled on the way down
	b       *budget.Budget
	memory  [][]int64 // shares of every kind, from one node to the next
	numbers []int     // by element, for share
}

func newChooser(m *model.Model, b *budget.Budget) *chooser {
	c := &chooser{m: m, t: newTally(m), b: b, numbers: make([]int, len(m.Costs))}
	c.memory = make([][]int64, len(m.Kinds))
	for i := range m.Kinds {
		c.memory[i] = slices.Repeat([]int64{-1}, len(m.Kinds[i].Elems))
	}
	return c
}

// allOf returns every kind with every way.
func allOf(m *model.Model) []pending {
	und := make([]pending, len(m.Kinds))
	for i := range und {
		und[i] = pending{i, make([]int, len(m.Kinds[i].Ways))}
		for w := range und[i].ways {
			und[i].ways[w] = w
		}
	}
	return und
}

// pick is a way settled for a kind.
type pick struct{ kind, way int }

// found is what a search of some pending kinds came to. Costs are those beyond
// the tally's.
type found struct {
	picks []pick // nil where nothing below the limit was found
	cost  joinery.Time
	bound joinery.Time // nothing below it exists
}

// better keeps the cheaper of two.
func (f *found) better(picks []pick, cost joinery.Time) {
	if f.picks == nil || cost < f.cost {
		f.picks, f.cost = picks, cost
	}
}

// solve looks for the cheapest ways of the pending kinds below a limit. What it
// finds may be dearer where the budget runs out, and is nothing where all that
// is left costs the limit or more.
func (c *chooser) solve(und []pending, limit joinery.Time) found {
	before := c.t.cost()
	und, settled, undo := c.settle(und)
	defer undo()
	base := c.t.cost() - before
	if len(und) == 0 {
		return found{settled, base, base}
	}
	f := c.weigh(und, limit-base)
	f.bound += base
	if f.picks != nil {
		f.picks = append(f.picks, settled...)
		f.cost += base
	}
	return f
}

// mostFirst is how few kinds are tried with their first ways also.
const mostFirst = 40

// weigh bounds the pending kinds, drops ways, and goes on with the islands
// among what is left or branches.
func (c *chooser) weigh(und []pending, limit joinery.Time) found {
	s := c.share(und)
	excess := c.excess(und)
	low := c.m.RoundUp(s.improve(limit+excess-c.m.Coin+1, c.rounds(und), c.b)) - excess
	c.remember(s, und)
	if low >= limit {
		return found{bound: low}
	}
	f := found{bound: low}
	f.better(c.fair(und, s))
	if len(und) <= mostFirst {
		f.better(c.first(und))
	}
	if low >= f.cost || c.b.Ended != budget.Through {
		return f
	}
	limit = min(limit, f.cost)
	left, fewer := s.without(und, limit+excess-c.m.Coin)
	if slices.ContainsFunc(left, func(p pending) bool { return len(p.ways) == 0 }) {
		return c.close(f, limit)
	}
	var deeper found
	if islands := c.islands(left); len(islands) > 1 {
		deeper = c.each(islands, limit)
	} else if fewer {
		deeper = c.solve(left, limit)
	} else {
		deeper = c.branch(left, limit)
	}
	if deeper.picks != nil && deeper.cost < f.cost {
		f.picks, f.cost = deeper.picks, deeper.cost
	}
	return c.close(f, max(f.bound, deeper.bound))
}

// excess is what the tally's ladders cost beyond the rungs they need, where the
// pending kinds may make use of it.
func (c *chooser) excess(und []pending) joinery.Time {
	seen := map[int]bool{}
	var sum joinery.Time
	for _, p := range und {
		for _, w := range p.ways {
			runs := c.m.Kinds[p.kind].Ways[w].Runs
			for i := range runs {
				r := &runs[i]
				if !seen[r.Station] && !c.t.settled(r) {
					seen[r.Station] = true
					sum += c.t.excess(r.Station)
				}
			}
		}
	}
	return sum
}

// close settles the bound of what was found when nothing below it is left.
func (c *chooser) close(f found, bound joinery.Time) found {
	f.bound = bound
	if f.picks != nil {
		f.bound = min(bound, f.cost)
	}
	return f
}

// rounds is how often the shares are improved: often where they are new.
func (c *chooser) rounds(und []pending) int {
	for _, p := range und {
		if slices.Contains(c.memory[p.kind], -1) {
			return 400
		}
	}
	return 40
}

func (c *chooser) remember(s *shares, und []pending) {
	for i, p := range und {
		k := &s.kinds[i]
		for j, at := range k.at {
			c.memory[p.kind][at] = k.pays[j]
		}
	}
}
