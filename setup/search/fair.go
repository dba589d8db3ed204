package search

import "fencecard/joinery"

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
	before := c.t.cost()
	for _, p := range picks {
		c.t.add(&c.m.Kinds[p.kind].Ways[p.way])
	}
	for again := true; again; {
		again = false
		for i := range picks {
			if c.cheaper(&picks[i], und[i].ways) {
				again = true
			}
			if !c.b.Spend(4 * len(und[i].ways)) {
				again = false
				break
			}
		}
	}
	cost := c.t.cost() - before
	for _, p := range picks {
		c.t.remove(&c.m.Kinds[p.kind].Ways[p.way])
	}
	return picks, cost
}

// cheaper changes a pick in the tally to the cheapest of the ways.
func (c *chooser) cheaper(p *pick, ways []int) bool {
	kind := &c.m.Kinds[p.kind]
	c.t.remove(&kind.Ways[p.way])
	best, least := p.way, c.t.price(&kind.Ways[p.way])
	for _, w := range ways {
		if price := c.t.price(&kind.Ways[w]); price < least {
			best, least = w, price
		}
	}
	c.t.add(&kind.Ways[best])
	changed := best != p.way
	p.way = best
	return changed
}
