package search

import (
	"cmp"
	"slices"

	"fencecard/joinery"
)

// chooser finds the cheapest ways where everything is paid once and the order
// costs nothing: a branch and bound.
type chooser struct {
	m       *model
	t       *tally // what is settled on the way down
	b       *budget
	memory  [][]int64 // shares of every kind, from one node to the next
	numbers []int     // by element, for share
}

func newChooser(m *model, b *budget) *chooser {
	c := &chooser{m: m, t: newBoundingTally(m), b: b, numbers: make([]int, len(m.costs))}
	c.memory = make([][]int64, len(m.kinds))
	for i := range m.kinds {
		c.memory[i] = slices.Repeat([]int64{-1}, len(m.kinds[i].elems))
	}
	return c
}

// all returns every kind with every way.
func (m *model) all() []pending {
	und := make([]pending, len(m.kinds))
	for i := range und {
		und[i] = pending{i, make([]int, len(m.kinds[i].ways))}
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
	before := c.t.cost
	und, settled, undo := c.settle(und)
	defer undo()
	base := c.t.cost - before
	if base >= limit {
		return found{bound: base}
	}
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

// weigh bounds the pending kinds, drops ways, and goes on with the islands
// among what is left or branches.
func (c *chooser) weigh(und []pending, limit joinery.Time) found {
	s := c.share(und)
	low := c.m.roundUp(s.fit(limit-c.m.grain+1, c.rounds(und), c.b))
	c.remember(s, und)
	if low >= limit {
		return found{bound: low}
	}
	f := found{bound: low}
	f.better(c.fair(und, s))
	f.better(c.first(und))
	if low >= f.cost || c.b.ended != Through {
		return f
	}
	limit = min(limit, f.cost)
	left, fewer := s.without(und, limit-c.m.grain)
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

// settle takes every kind with one way left into the tally, and pays whatever
// all the ways of a kind need. It returns what is still pending, what it took,
// and how to take it all out again.
func (c *chooser) settle(und []pending) (left []pending, settled []pick, undo func()) {
	var paid []int
	for _, p := range und {
		if len(p.ways) == 1 {
			settled = append(settled, pick{p.kind, p.ways[0]})
			c.t.add(&c.m.kinds[p.kind].ways[p.ways[0]])
			continue
		}
		left = append(left, p)
		for _, e := range c.common(p) {
			paid = append(paid, e)
			c.t.need(e)
		}
	}
	return left, settled, func() {
		for _, e := range paid {
			c.t.release(e)
		}
		for _, p := range settled {
			c.t.remove(&c.m.kinds[p.kind].ways[p.way])
		}
	}
}

// common lists the bits and keys that every way left to a kind needs.
func (c *chooser) common(p pending) []int {
	var common []int
	ways := c.m.kinds[p.kind].ways
	for _, e := range ways[p.ways[0]].elems {
		if e >= c.m.stationElement(0) {
			break
		}
		everywhere := true
		for _, w := range p.ways[1:] {
			if _, found := slices.BinarySearch(ways[w].elems, e); !found {
				everywhere = false
				break
			}
		}
		if everywhere {
			common = append(common, e)
		}
	}
	return common
}

// fair takes the way that every kind finds cheapest at its shares, and mends
// that kind by kind.
func (c *chooser) fair(und []pending, s *shares) ([]pick, joinery.Time) {
	picks := make([]pick, len(und))
	for i := range und {
		picks[i] = pick{und[i].kind, s.kinds[i].names[s.kinds[i].best]}
	}
	return c.mend(und, picks)
}

// first takes the first way left to every kind and mends that.
func (c *chooser) first(und []pending) ([]pick, joinery.Time) {
	picks := make([]pick, len(und))
	for i, p := range und {
		picks[i] = pick{p.kind, p.ways[0]}
	}
	return c.mend(und, picks)
}

// mend changes one kind's way at a time for a cheaper one while that helps.
func (c *chooser) mend(und []pending, picks []pick) ([]pick, joinery.Time) {
	before := c.t.cost
	for _, p := range picks {
		c.t.add(&c.m.kinds[p.kind].ways[p.way])
	}
	for again := true; again; {
		again = false
		for i := range picks {
			if c.cheaper(&picks[i], und[i].ways) {
				again = true
			}
			if !c.b.spend(4 * len(und[i].ways)) {
				again = false
				break
			}
		}
	}
	cost := c.t.cost - before
	for _, p := range picks {
		c.t.remove(&c.m.kinds[p.kind].ways[p.way])
	}
	return picks, cost
}

// cheaper changes a pick in the tally to the cheapest of the ways.
func (c *chooser) cheaper(p *pick, ways []int) bool {
	kind := &c.m.kinds[p.kind]
	c.t.remove(&kind.ways[p.way])
	best, least := p.way, c.t.price(&kind.ways[p.way])
	for _, w := range ways {
		if price := c.t.price(&kind.ways[w]); price < least {
			best, least = w, price
		}
	}
	c.t.add(&kind.ways[best])
	changed := best != p.way
	p.way = best
	return changed
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
	with := c.solve(und, limit-c.m.costs[e])
	c.t.release(e)
	with.cost += c.m.costs[e]
	with.bound += c.m.costs[e]
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
			if _, needs := slices.BinarySearch(c.m.kinds[p.kind].ways[w].elems, e); !needs {
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
			for _, e := range c.m.kinds[p.kind].ways[w].elems {
				if e < c.m.stationElement(0) && !seen[e] {
					seen[e] = true
					users[e]++
				}
			}
		}
	}
	best, most := -1, 0
	for e, n := range users {
		if c.t.paid(e) || e >= c.m.bits && n < 2 {
			continue
		}
		if e < c.m.bits {
			n += len(und) // bits first
		}
		if n > most || n == most && e < best {
			best, most = e, n
		}
	}
	return best, best >= 0
}
