// Package order puts the runs of chosen ways into the order that costs least: the
// most promising partial order gone on from first, or, in big problems, each run put
// where it is cheapest. How it belongs to the whole is told in package search.
package order

import (
	"container/heap"
	"math"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
)

// Trail is an ascent and all that came before it.
type Trail struct {
	from   *Trail
	ascent Ascent
	done   model.Set
	Spent  joinery.Time
	rest   joinery.Time // what is left takes at the least, with everything set anew
}

// Ascent is one going up a ladder: the errands made at a station.
type Ascent struct {
	Station int // -1 before the first
	List    []int
}

// mostErrands is the size to which an order is searched; beyond it the order
// is made by going on at the least cost so far.
const mostErrands = 400

// mostTrails bounds one search for an order.
const mostTrails = 20_000

// Order returns the last trail of the cheapest order, and the least that any order
// can cost, which is its cost where the search went through. The trail is nil where
// no order costs less than the limit, or none is found while the steps last.
func (e *Errands) Order(limit joinery.Time, b *budget.Budget) (*Trail, joinery.Time) {
	start := e.Start()
	low := e.least(start)
	if low >= limit {
		return nil, low
	}
	best := e.Quick(start, b)
	if best == nil {
		return nil, low
	}
	if best.Spent == low || len(e.stations) == 0 || e.size() > mostErrands {
		return best, low
	}
	return e.search(start, best, limit, b)
}

// NoLimit is more than any order costs.
const NoLimit = joinery.Time(math.MaxInt64)

func (e *Errands) size() int {
	n := 0
	for _, s := range e.stations {
		n += len(e.At[s])
	}
	return n
}

// Start is the table before anything is set.
func (e *Errands) Start() *Trail {
	trail := &Trail{ascent: Ascent{Station: -1}, done: model.NewSet(len(e.List))}
	for _, s := range e.stations {
		trail.rest += e.restAt(trail, s)
	}
	minutes := e.M.Problem.Minutes
	for _, stations := range e.ofKey {
		trail.rest += joinery.Time(e.most(trail, stations, func(c chain) int { return c.stays })) * minutes.Fence
	}
	for _, stations := range e.ofBit {
		trail.rest += joinery.Time(e.most(trail, stations, func(c chain) int { return c.bits })) * minutes.Bit
	}
	return trail
}

// least is what an order through this trail costs at the least: what is left
// where the table stands needs no new setting.
func (e *Errands) least(trail *Trail) joinery.Time {
	low := trail.Spent + trail.rest
	if trail.ascent.Station < 0 {
		return low
	}
	s, minutes := e.M.Stations[trail.ascent.Station], e.M.Problem.Minutes
	if e.anyLeft(trail, e.ofBit[s.Bit]) {
		low -= minutes.Bit
	}
	if e.anyLeft(trail, e.ofKey[s.Key]) {
		low -= minutes.Fence
	}
	if e.anyLeft(trail, []int{trail.ascent.Station}) {
		low -= e.M.BlockCost(s)
	}
	return low
}

// left lists the errands of a station not yet made, by depth.
func (e *Errands) left(trail *Trail, station int) []int {
	var left []int
	for _, x := range e.At[station] {
		if !trail.done.Has(x) {
			left = append(left, x)
		}
	}
	return left
}

func (e *Errands) anyLeft(trail *Trail, stations []int) bool {
	for _, s := range stations {
		for _, x := range e.At[s] {
			if !trail.done.Has(x) {
				return true
			}
		}
	}
	return false
}

// Follow makes an ascent.
func (e *Errands) Follow(trail *Trail, a Ascent) *Trail {
	s := e.M.Stations[a.Station]
	minutes := e.M.Problem.Minutes
	next := &Trail{from: trail, ascent: a, done: slices.Clone(trail.done), Spent: trail.Spent, rest: trail.rest}
	newBit, newKey := true, true
	if trail.ascent.Station >= 0 {
		last := e.M.Stations[trail.ascent.Station]
		newBit, newKey = last.Bit != s.Bit, last.Key != s.Key
	}
	if newBit {
		next.Spent += minutes.Bit
	}
	if newKey {
		next.Spent += minutes.Fence
	}
	if newKey || trail.ascent.Station != a.Station {
		next.Spent += e.M.BlockCost(s)
	}
	next.Spent += e.heights(a.Station, a.List)
	next.rest -= e.restAt(trail, a.Station) + e.restOf(trail, s.Key, s.Bit)
	for _, x := range a.List {
		next.done.Add(x)
	}
	next.rest += e.restAt(next, a.Station) + e.restOf(next, s.Key, s.Bit)
	return next
}

// Quick finds a good order without search, or nil where the steps do not last.
func (e *Errands) Quick(start *Trail, b *budget.Budget) *Trail {
	best := e.dive(start, 0, b)
	if best != nil && best.Spent > e.least(start) {
		if other := e.dive(start, e.M.Problem.Minutes.Fence/10, b); other != nil && other.Spent < best.Spent {
			best = other
		}
	}
	return best
}

// dive goes on at the least cost until all errands are made. An ascent is charged
// for every errand it leaves waiting at its fence distance: they make it come
// back. Of equal ascents it takes the one that leaves the fewest.
func (e *Errands) dive(trail *Trail, charge joinery.Time, b *budget.Budget) *Trail {
	for e.anyLeft(trail, e.stations) {
		var best *Trail
		var least joinery.Time
		var fewest int
		for _, a := range e.next(trail) {
			next := e.Follow(trail, a)
			waiting := e.countLeft(next, e.ofKey[e.M.Stations[a.Station].Key])
			low := e.least(next) + joinery.Time(waiting)*charge
			if best == nil || low < least || low == least && waiting < fewest {
				best, least, fewest = next, low, waiting
			}
		}
		if !b.Spend(4 * len(e.List)) {
			return nil
		}
		trail = best
	}
	return trail
}

func (e *Errands) countLeft(trail *Trail, stations []int) int {
	n := 0
	for _, s := range stations {
		n += len(e.left(trail, s))
	}
	return n
}

// search finds the cheapest order below a limit: of all trails reached, the one
// that promises the least is gone on from first.
func (e *Errands) search(start, best *Trail, limit joinery.Time, b *budget.Budget) (*Trail, joinery.Time) {
	type state struct {
		done    string
		station int
	}
	reached := map[state]joinery.Time{}
	open, turn := &trailHeap{}, 0
	limit = min(limit, best.Spent)
	push := func(trail *Trail) {
		low := e.least(trail)
		if low >= limit {
			return
		}
		key := state{trail.done.Key(), trail.ascent.Station}
		if before, ok := reached[key]; ok && before <= trail.Spent {
			return
		}
		reached[key] = trail.Spent
		turn++
		heap.Push(open, promise{low, turn, trail})
	}
	push(start)
	for trails := 0; open.Len() > 0; trails++ {
		p := heap.Pop(open).(promise)
		if p.low >= limit {
			break
		}
		if trails == mostTrails || !b.Spend(16*len(e.List)) {
			return best, p.low
		}
		if !e.anyLeft(p.trail, e.stations) {
			best, limit = p.trail, p.trail.Spent
			continue
		}
		for _, a := range e.next(p.trail) {
			push(e.Follow(p.trail, a))
		}
	}
	if e.rough {
		return best, e.least(start)
	}
	return best, limit
}

// promise is a trail by what an order through it costs at the least.
type promise struct {
	low   joinery.Time
	turn  int
	trail *Trail
}

type trailHeap []promise

func (h trailHeap) Len() int { return len(h) }
func (h trailHeap) Less(i, j int) bool {
	if h[i].low != h[j].low {
		return h[i].low < h[j].low
	}
	// Of equal promises the later is nearer its end.
	return h[i].turn > h[j].turn
}
func (h trailHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }

// Push and Pop are for package heap.
func (h *trailHeap) Push(x any) { *h = append(*h, x.(promise)) }

// Pop removes the last element, for package heap.
func (h *trailHeap) Pop() any {
	old := *h
	last := old[len(old)-1]
	*h = old[:len(old)-1]
	return last
}
