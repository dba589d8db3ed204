package search

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/model"
)

// next returns the group of kinds to be settled next: one that is begun, else one
// whose kinds wait for one another or may take several runs; -1 where there is none with
// several ways left.
func (k *knot) next(und []pending) int {
	if group := k.begun(und); group >= 0 {
		return group
	}
	for _, p := range und {
		if kind := &k.m.Kinds[p.kind]; len(p.ways) > 1 && (kind.Tied || chained(kind, p.ways)) {
			return kind.Group
		}
	}
	return -1
}

// begun returns a group of kinds that wait for one another of which some are
// settled and some have several ways left, or -1.
func (k *knot) begun(und []pending) int {
	begun := map[int]bool{}
	for i, w := range k.way {
		if w >= 0 {
			begun[k.m.Kinds[i].Group] = true
		}
	}
	for _, p := range und {
		if g := k.m.Kinds[p.kind].Group; len(p.ways) > 1 && begun[g] {
			return g
		}
	}
	return -1
}

// split splits the pending kinds at the ways of one, those first that add
// least. The kind is one of the group, the one with the fewest ways; of group
// -1 any. It returns nothing where no kind there has several ways left.
func (k *knot) split(und []pending, group int) [][]pending {
	at := -1
	for i, p := range und {
		if len(p.ways) > 1 && (group < 0 || k.m.Kinds[p.kind].Group == group) && (at < 0 || len(p.ways) < len(und[at].ways)) {
			at = i
		}
	}
	if at < 0 {
		return nil
	}
	ways := k.m.Kinds[und[at].kind].Ways
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
func chained(k *model.Kind, ways []int) bool {
	return slices.ContainsFunc(ways, func(w int) bool { return len(k.Ways[w].Runs) > 1 })
}
