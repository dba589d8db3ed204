package search

import (
	"container/heap"
	"slices"

	"fencecard/joinery"
)

// leg is a climb and all that came before it.
type leg struct {
	from  *leg
	trip  trip
	done  set
	spent joinery.Time
	rest  joinery.Time // every bit, key and station that is not through, paid once more
}

// trip is one climb: the errands made at a station.
type trip struct {
	station int // -1 before the first
	list    []int
}

// mostErrands is the size to which an order is searched; beyond it the order
// is made by going on at the least cost so far.
const mostErrands = 400

// mostLegs bounds one search for an order.
const mostLegs = 20_000

// order returns the last leg of the cheapest order, and the least that any
// order can cost: the same where the search went through.
func (e *errands) order(b *budget) (*leg, joinery.Time) {
	start := e.start()
	best := e.dive(start, b)
	low := e.least(start)
	if best.spent == low || len(e.stations) == 0 || e.size() > mostErrands {
		return best, low
	}
	return e.search(start, best, b)
}

func (e *errands) size() int {
	n := 0
	for _, s := range e.stations {
		n += len(e.at[s])
	}
	return n
}

// start is the table before anything is set.
func (e *errands) start() *leg {
	l := &leg{trip: trip{station: -1}, done: newSet(len(e.list))}
	for _, s := range e.stations {
		l.rest += e.climb(s, e.at[s]) + e.m.blockCost(e.m.stations[s])
	}
	minutes := e.m.problem.Minutes
	l.rest += joinery.Time(len(e.ofKey))*minutes.Fence + joinery.Time(len(e.ofBit))*minutes.Bit
	return l
}

// least is what an order through this leg costs at the least: what is left
// where the table stands needs no new setting.
func (e *errands) least(l *leg) joinery.Time {
	low := l.spent + l.rest
	if l.trip.station < 0 {
		return low
	}
	s, minutes := e.m.stations[l.trip.station], e.m.problem.Minutes
	if e.anyLeft(l, e.ofBit[s.bit]) {
		low -= minutes.Bit
	}
	if e.anyLeft(l, e.ofKey[s.key]) {
		low -= minutes.Fence
	}
	if len(e.left(l, l.trip.station)) > 0 {
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

// follow makes a trip.
func (e *errands) follow(l *leg, t trip) *leg {
	s := e.m.stations[t.station]
	minutes := e.m.problem.Minutes
	next := &leg{from: l, trip: t, done: slices.Clone(l.done), spent: l.spent, rest: l.rest}
	newBit, newKey := true, true
	if l.trip.station >= 0 {
		last := e.m.stations[l.trip.station]
		newBit, newKey = last.bit != s.bit, last.key != s.key
	}
	if newBit {
		next.spent += minutes.Bit
	}
	if newKey {
		next.spent += minutes.Fence
	}
	if newKey || l.trip.station != t.station {
		next.spent += e.m.blockCost(s)
	}
	next.spent += e.climb(t.station, t.list)
	next.rest -= e.climb(t.station, e.left(l, t.station))
	for _, x := range t.list {
		next.done.add(x)
	}
	if left := e.left(next, t.station); len(left) > 0 {
		next.rest += e.climb(t.station, left)
		return next
	}
	next.rest -= e.m.blockCost(s)
	if !e.anyLeft(next, e.ofKey[s.key]) {
		next.rest -= minutes.Fence
		if !e.anyLeft(next, e.ofBit[s.bit]) {
			next.rest -= minutes.Bit
		}
	}
	return next
}

// dive goes on at the least cost until all errands are made.
func (e *errands) dive(l *leg, b *budget) *leg {
	for l.rest > 0 || e.anyLeft(l, e.stations) {
		var best *leg
		for _, t := range e.trips(l) {
			if next := e.follow(l, t); best == nil || e.least(next) < e.least(best) {
				best = next
			}
		}
		b.spend(len(e.list))
		l = best
	}
	return l
}

// search finds the cheapest order: of all legs reached, the one that promises
// the least is gone on from first.
func (e *errands) search(start, best *leg, b *budget) (*leg, joinery.Time) {
	type state struct {
		done    string
		station int
	}
	reached := map[state]joinery.Time{}
	open, turn := &legHeap{}, 0
	push := func(l *leg) {
		low := e.least(l)
		if low >= best.spent {
			return
		}
		key := state{l.done.key(), l.trip.station}
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
		if p.low >= best.spent {
			break
		}
		if legs == mostLegs || !b.spend(4*len(e.list)) {
			return best, p.low
		}
		if !e.anyLeft(p.leg, e.stations) {
			best = p.leg
			continue
		}
		for _, t := range e.trips(p.leg) {
			push(e.follow(p.leg, t))
		}
	}
	if e.rough {
		return best, e.least(start)
	}
	return best, best.spent
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
