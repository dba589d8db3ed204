package search

import (
	"cmp"
	"slices"

	"fencecard/joinery"
)

// waits reports whether some kinds of a group have several ways left.
func (k *knot) waits(und []pending, group int) bool {
	return slices.ContainsFunc(und, func(p pending) bool { return len(p.ways) > 1 && k.m.kinds[p.kind].group == group })
}

// begun returns a group of kinds that wait for one another of which some are
// settled and some have several ways left, or -1.
func (k *knot) begun(und []pending) int {
	begun := map[int]bool{}
	for i, w := range k.way {
		if w >= 0 {
			begun[k.m.kinds[i].group] = true
		}
	}
	for _, p := range und {
		if g := k.m.kinds[p.kind].group; len(p.ways) > 1 && begun[g] {
			return g
		}
	}
	return -1
}

// hardest returns the group of kinds that wait for one another whose settling
// raises the bound the most, and that bound; -1 where there is none.
func (k *knot) hardest(n *node) (group int, bound joinery.Time) {
	group = -1
	seen := map[int]bool{}
	for _, p := range n.und {
		kind := &k.m.kinds[p.kind]
		if seen[kind.group] || len(p.ways) == 1 || !kind.tied && !kind.chained(p.ways) {
			continue
		}
		seen[kind.group] = true
		if b := k.probe(n, kind.group); group < 0 || b > bound {
			group, bound = kind.group, b
		}
		if bound >= k.s.cost {
			k.killer = group
			break
		}
	}
	return group, bound
}

// mostProbes is how many nodes are looked at to see what a group costs.
const mostProbes = 60

// probe bounds what settling one group leads to.
func (k *knot) probe(n *node, group int) joinery.Time {
	p := probe{k, group, mostProbes}
	return p.search(n.und, k.s.cost, n.extra)
}

// probe is a search of the ways of one group alone.
type probe struct {
	*knot
	group int
	left  int // nodes that may still be looked at
}

func (p *probe) search(und []pending, limit, extra joinery.Time) joinery.Time {
	n, leave, ok := p.enter(und, limit, extra)
	defer leave()
	p.left--
	ways := p.split(n.und, p.group)
	if !ok || p.left < 0 || len(ways) == 0 || p.b.ended != Through {
		return n.bound
	}
	bound := limit
	for _, next := range ways {
		bound = min(bound, p.search(next, bound, n.extra))
	}
	return max(n.bound, bound)
}

// split splits the pending kinds at the ways of one, those first that add
// least. The kind is one of the group, the one with the fewest ways; of group
// -1 any. It returns nothing where no kind there has several ways left.
func (k *knot) split(und []pending, group int) [][]pending {
	at := -1
	for i, p := range und {
		if len(p.ways) > 1 && (group < 0 || k.m.kinds[p.kind].group == group) && (at < 0 || len(p.ways) < len(und[at].ways)) {
			at = i
		}
	}
	if at < 0 {
		return nil
	}
	ways := k.m.kinds[und[at].kind].ways
	prices := map[int]joinery.Time{}
	for _, w := range und[at].ways {
		prices[w] = k.t.price(&ways[w])
	}
	names := slices.Clone(und[at].ways)
	slices.SortStableFunc(names, func(a, b int) int { return cmp.Compare(prices[a], prices[b]) })
	branches := make([][]pending, len(names))
	for i, w := range names {
		branches[i] = slices.Clone(und)
		branches[i][at].ways = []int{w}
	}
	return branches
}

// chained reports whether some of a kind's ways are chains.
func (k *kind) chained(ways []int) bool {
	return slices.ContainsFunc(ways, func(w int) bool { return len(k.ways[w].runs) > 1 })
}
