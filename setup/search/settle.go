package search

import "slices"

// settle takes every kind with one way left into the tally, and pays whatever
// all the ways of a kind need. It returns what is still pending, what it took,
// and how to take it all out again.
func (c *chooser) settle(und []pending) (left []pending, settled []pick, undo func()) {
	var paid []int
	for _, p := range und {
		if len(p.ways) == 1 {
			settled = append(settled, pick{p.kind, p.ways[0]})
			c.t.add(&c.m.Kinds[p.kind].Ways[p.ways[0]])
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
			c.t.remove(&c.m.Kinds[p.kind].Ways[p.way])
		}
	}
}

// common lists the bits and keys that every way left to a kind needs.
func (c *chooser) common(p pending) []int {
	var common []int
	ways := c.m.Kinds[p.kind].Ways
	for _, e := range ways[p.ways[0]].Elems {
		if e >= c.m.StationElement(0) {
			break
		}
		everywhere := true
		for _, w := range p.ways[1:] {
			if _, found := slices.BinarySearch(ways[w].Elems, e); !found {
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
