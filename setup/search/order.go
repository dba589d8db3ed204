package search

import (
	"container/heap"
	"math"
	"slices"

	"fencecard/joinery"
)

// leg is an ascent and all that came before it.
type leg struct {
	from   *leg
	ascent ascent
	done   set
	spent  joinery.Time
	rest   joinery.Time // what is left takes at the least, with everything set anew
}

// ascent is one going up a ladder: the errands made at a station.
type ascent struct {
	station int // -1 before the first
	list    []int
}

// mostErrands is the size to which an order is searched; beyond it the order
// is made by going on at the least cost so far.
const mostErrands = 400

// mostLegs bounds one search for an order.
const mostLegs = 20_000

// order returns the last leg of the cheapest order, and the least that any order
// can cost, which is its cost where the search went through. The leg is nil where
// no order costs less than the limit, or none is found while the steps last.
func (e *errands) order(limit joinery.Time, b *budget) (*leg, joinery.Time) {
	start := e.start()
	low := e.least(start)
	if low >= limit {
		return nil, low
	}
	best := e.quick(start, b)
	if best == nil {
		return nil, low
	}
	if best.spent == low || len(e.stations) == 0 || e.size() > mostErrands {
		return best, low
	}
	return e.search(start, best, limit, b)
}

// noLimit is more than any order costs.
const noLimit = joinery.Time(math.MaxInt64)

func (e *errands) size() int {
	n := 0
	for _, s := range e.stations {
		n += len(e.at[s])
	}
	return n
}

// start is the table before anything is set.
func (e *errands) start() *leg {
	l := &leg{ascent: ascent{station: -1}, done: newSet(len(e.list))}
	for _, s := range e.stations {
		l.rest += e.restAt(l, s)
	}
	minutes := e.m.problem.Minutes
	for _, stations := range e.ofKey {
		l.rest += joinery.Time(e.most(l, stations, func(t tail) int { return t.stays })) * minutes.Fence
	}
	for _, stations := range e.ofBit {
		l.rest += joinery.Time(e.most(l, stations, func(t tail) int { return t.bits })) * minutes.Bit
	}
	return l
}

// least is what an order through this leg costs at the least: what is left
// where the table stands needs no new setting.
func (e *errands) least(l *leg) joinery.Time {
	low := l.spent + l.rest
	if l.ascent.station < 0 {
		return low
	}
	s, minutes := e.m.stations[l.ascent.station], e.m.problem.Minutes
	if e.anyLeft(l, e.ofBit[s.bit]) {
		low -= minutes.Bit
	}
	if e.anyLeft(l, e.ofKey[s.key]) {
		low -= minutes.Fence
	}
	if e.anyLeft(l, []int{l.ascent.station}) {
		low -= e.m.blockCost(s)
	}
	return low
}

// left lists the errands of a station not yet made, by depth.
func (e *errands) left(l *leg, station int) []int {
	var left []int
	for _, x := range e.at[station] {
		if !l.done.has(x) {
			left = append(left, x)
		}
	}
	return left
}

func (e *errands) anyLeft(l *leg, stations []int) bool {
	for _, s := range stations {
		for _, x := range e.at[s] {
			if !l.done.has(x) {
				return true
			}
		}
	}
	return false
}

// follow makes an ascent.
func (e *errands) follow(l *leg, t ascent) *leg {
	s := e.m.stations[t.station]
	minutes := e.m.problem.Minutes
	next := &leg{from: l, ascent: t, done: slices.Clone(l.done), spent: l.spent, rest: l.rest}
	newBit, newKey := true, true
	if l.ascent.station >= 0 {
		last := e.m.stations[l.ascent.station]
		newBit, newKey = last.bit != s.bit, last.key != s.key
	}
	if newBit {
		next.spent += minutes.Bit
	}
	if newKey {
		next.spent += minutes.Fence
	}
	if newKey || l.ascent.station != t.station {
		next.spent += e.m.blockCost(s)
	}
	next.spent += e.heights(t.station, t.list)
	next.rest -= e.restAt(l, t.station) + e.restOf(l, s.key, s.bit)
	for _, x := range t.list {
		next.done.add(x)
	}
	next.rest += e.restAt(next, t.station) + e.restOf(next, s.key, s.bit)
	return next
}

// quick finds a good order without search, or nil where the steps do not last.
func (e *errands) quick(start *leg, b *budget) *leg {
	best := e.dive(start, 0, b)
	if best != nil && best.spent > e.least(start) {
		if other := e.dive(start, e.m.problem.Minutes.Fence/10, b); other != nil && other.spent < best.spent {
			best = other
		}
	}
	return best
}

// dive goes on at the least cost until all errands are made. An ascent is charged
// for every errand it leaves waiting at its fence distance: they make it come
// back. Of equal ascents it takes the one that leaves the fewest.
func (e *errands) dive(l *leg, charge joinery.Time, b *budget) *leg {
	for e.anyLeft(l, e.stations) {
		var best *leg
		var least joinery.Time
		var fewest int
		for _, t := range e.next(l) {
			next := e.follow(l, t)
			waiting := e.countLeft(next, e.ofKey[e.m.stations[t.station].key])
			low := e.least(next) + joinery.Time(waiting)*charge
			if best == nil || low < least || low == least && waiting < fewest {
				best, least, fewest = next, low, waiting
			}
		}
		if !b.spend(4 * len(e.list)) {
			return nil
		}
		l = best
	}
	return l
}

func (e *errands) countLeft(l *leg, stations []int) int {
	n := 0
	for _, s := range stations {
		n += len(e.left(l, s))
	}
	return n
}

// search finds the cheapest order below a limit: of all legs reached, the one
// that promises the least is gone on from first.
func (e *errands) search(start, best *leg, limit joinery.Time, b *budget) (*leg, joinery.Time) {
	type state struct {
		done    string
		station int
	}
	reached := map[state]joinery.Time{}
	open, turn := &legHeap{}, 0
	limit = min(limit, best.spent)
	push := func(l *leg) {
		low := e.least(l)
		if low >= limit {
			return
		}
		key := state{l.done.key(), l.ascent.station}
		if before, ok := reached[key]; ok && before <= l.spent {
			return
		}
		reached[key] = l.spent
		turn++
		heap.Push(open, promise{low, turn, l})
	}
	push(start)
	for legs := 0; open.Len() > 0; legs++ {
		p := heap.Pop(open).(promise)
		if p.low >= limit {
			break
		}
		if legs == mostLegs || !b.spend(16*len(e.list)) {
			return best, p.low
		}
		if !e.anyLeft(p.leg, e.stations) {
			best, limit = p.leg, p.leg.spent
			continue
		}
		for _, t := range e.next(p.leg) {
			push(e.follow(p.leg, t))
		}
	}
	if e.rough {
		return best, e.least(start)
	}
	return best, limit
}

// promise is a leg by what an order through it costs at the least.
type promise struct {
	low  joinery.Time
	turn int
	leg  *leg
}

type legHeap []promise

func (h legHeap) Len() int { return len(h) }
func (h legHeap) Less(i, j int) bool {
	if h[i].low != h[j].low {
		return h[i].low < h[j].low
	}
	// Of equal promises the later is nearer its end.
	return h[i].turn > h[j].turn
}
func (h legHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }

// Push and Pop are for package heap.
func (h *legHeap) Push(x any) { *h = append(*h, x.(promise)) }

// Pop removes the last element, for package heap.
func (h *legHeap) Pop() any {
	old := *h
	last := old[len(old)-1]
	*h = old[:len(old)-1]
	return last
}
