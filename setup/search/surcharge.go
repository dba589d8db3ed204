package search

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/model"
	"fencecard/setup/search/order"
)

// node is where a search of pending kinds stands when their ways are weighed.
type node struct {
	und   []pending
	extra joinery.Time // the surcharge of what is settled
	spent joinery.Time // what is settled costs, the surcharge with it
	bound joinery.Time
}

// enter settles what can be, bounds what is pending and drops ways that lead
// to the limit. It fails where all of them do, the bound telling so. Extra is a
// surcharge that is known already.
func (k *knot) enter(und []pending, limit, extra joinery.Time) (n node, leave func(), ok bool) {
	und, settled, undo := k.settle(und)
	for _, p := range settled {
		k.way[p.kind] = p.way
	}
	leave = func() {
		for _, p := range settled {
			k.way[p.kind] = -1
		}
		undo()
	}
	low := k.t.cost() - k.excess(und)
	shares := k.share(und)
	if len(und) > 0 {
		low += k.m.RoundUp(shares.improve(limit-low-extra-k.m.Coin+1, k.rounds(und), k.b))
		k.remember(shares, und)
	}
	if low+extra < limit {
		extra = max(extra, k.surcharge(limit-low))
	}
	n.und, n.extra, n.spent, n.bound = und, extra, k.t.cost()+extra, low+extra
	if n.bound >= limit || len(und) == 0 {
		return n, leave, n.bound < limit
	}
	n.und, _ = shares.without(und, limit-n.spent+k.excess(und)-k.m.Coin)
	if slices.ContainsFunc(n.und, func(p pending) bool { return len(p.ways) == 0 }) {
		n.bound = limit
		return n, leave, false
	}
	return n, leave, true
}

// known is a surcharge worked out before: all of it, or as much as was asked
// for.
type known struct {
	extra joinery.Time
	all   bool
}

// surcharge is what ordering the settled kinds that wait or are chains costs at
// the least beyond paying everything once. It may stop short once it comes to
// enough.
func (k *knot) surcharge(enough joinery.Time) joinery.Time {
	choice := slices.Repeat([]int{-1}, len(k.way))
	for i, w := range k.way {
		if w >= 0 && (k.m.Kinds[i].Tied || chained(&k.m.Kinds[i], []int{w})) {
			choice[i] = w
		}
	}
	key := fmt.Sprint(choice)
	if s, ok := k.surcharges[key]; ok && (s.all || s.extra >= enough) {
		return s.extra
	}
	rungs := func(station int, list []model.Asked) joinery.Time {
		if !k.t.soft[station] {
			return 0
		}
		return joinery.Time(model.NeededBy(k.m.Stations[station].Regions, list)) * k.m.Problem.Minutes.Height
	}
	e := order.NewErrands(k.m, choice, model.Pricing{Cost: rungs, Least: rungs})
	once := e.Once()
	_, low := e.Order(once+enough, k.b)
	k.surcharges[key] = known{low - once, low < once+enough}
	return low - once
}
