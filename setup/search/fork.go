package search

import (
	"slices"

	"fencecard/joinery"
)

// branch splits the pending kinds at a bit or key, taken or done without, or
// else at the ways of one kind.
func (c *chooser) branch(und []pending, limit joinery.Time) found {
	if e, ok := c.disputed(und); ok {
		return c.fork(und, e, limit)
	}
	at := 0
	for i, p := range und {
		if len(p.ways) < len(und[at].ways) {
			at = i
		}
	}
	total := found{bound: limit}
	for _, w := range und[at].ways {
		next := slices.Clone(und)
		next[at].ways = []int{w}
		c.take(&total, c.solve(next, limit), &limit)
	}
	return total
}

// fork tries an element paid and an element done without.
func (c *chooser) fork(und []pending, e int, limit joinery.Time) found {
	total := found{bound: limit}
	if without, ok := c.doWithout(und, e); ok {
		c.take(&total, c.solve(without, limit), &limit)
	}
	c.t.need(e)
	with := c.solve(und, limit-c.m.Costs[e])
	c.t.release(e)
	with.cost += c.m.Costs[e]
	with.bound += c.m.Costs[e]
	c.take(&total, with, &limit)
	return total
}

// take adds what a branch found to the total and lowers the limit.
func (c *chooser) take(total *found, f found, limit *joinery.Time) {
	total.bound = min(total.bound, f.bound)
	if f.picks != nil && f.cost < *limit {
		total.picks, total.cost = f.picks, f.cost
		*limit = f.cost
	}
}

// doWithout drops the ways that need an element; it fails where a kind has no
// other.
func (c *chooser) doWithout(und []pending, e int) ([]pending, bool) {
	left := make([]pending, len(und))
	for i, p := range und {
		left[i].kind = p.kind
		for _, w := range p.ways {
			if _, needs := slices.BinarySearch(c.m.Kinds[p.kind].Ways[w].Elems, e); !needs {
				left[i].ways = append(left[i].ways, w)
			}
		}
		if len(left[i].ways) == 0 {
			return nil, false
		}
	}
	return left, true
}

// disputed returns the bit, else the key, that most kinds might use and that
// nobody has paid; a key used by one kind alone is not worth a branch.
func (c *chooser) disputed(und []pending) (int, bool) {
	users := map[int]int{}
	for _, p := range und {
		seen := map[int]bool{}
		for _, w := range p.ways {
			for _, e := range c.m.Kinds[p.kind].Ways[w].Elems {
				if e < c.m.StationElement(0) && !seen[e] {
					seen[e] = true
					users[e]++
				}
			}
		}
	}
	best, most := -1, 0
	for e, n := range users {
		if c.t.paid(e) || e >= c.m.Bits && n < 2 {
			continue
		}
		if e < c.m.Bits {
			n += len(und) // bits first
		}
		if n > most || n == most && e < best {
			best, most = e, n
		}
	}
	return best, best >= 0
}
