package search

import "fencecard/joinery"

// A chain of errands that wait for one another bounds an order from below. Two
// of a chain at one station are never in one ascent, so each goes up a ladder of
// its own. Where the chain leaves a fence distance or a bit and comes back to
// it, that must be set again.

// tail is what the chains that begin with an errand take at the least, counted
// from it on.
type tail struct {
	ladders joinery.Time // climbed at its station
	stays   int          // settings of its fence distance
	bits    int          // settings of its bit
}

// findTails works out the tail of every errand.
func (e *errands) findTails() {
	e.tails = make([]tail, len(e.list))
	order := e.lastFirst()
	after := make([]set, len(e.list)) // all that wait for it, directly or not
	for _, x := range order {
		after[x] = newSet(len(e.list))
		for _, y := range e.list[x].then {
			after[x].add(y)
			after[x].join(after[y])
		}
		e.tails[x] = e.tailOf(x, after)
	}
}

// tailOf works out one tail from those of the errands after it.
func (e *errands) tailOf(x int, after []set) tail {
	s := e.m.stations[e.list[x].station]
	t := tail{stays: 1, bits: 1}
	// What waits for something away from this fence distance, or this bit.
	offKey, offBit := newSet(len(e.list)), newSet(len(e.list))
	for y := range e.list {
		if !after[x].has(y) {
			continue
		}
		o := e.m.stations[e.list[y].station]
		if o.key != s.key {
			offKey.join(after[y])
		}
		if o.bit != s.bit {
			offBit.join(after[y])
		}
	}
	for y := range e.list {
		if !after[x].has(y) {
			continue
		}
		o := e.m.stations[e.list[y].station]
		if e.list[y].station == e.list[x].station {
			t.ladders = max(t.ladders, e.tails[y].ladders)
		}
		if o.key == s.key {
			t.stays = max(t.stays, e.tails[y].stays+again(offKey.has(y)))
		}
		if o.bit == s.bit {
			t.bits = max(t.bits, e.tails[y].bits+again(offBit.has(y)))
		}
	}
	t.ladders += e.heights(e.list[x].station, []int{x})
	return t
}

func again(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// lastFirst lists the errands so that each comes after all that wait for it.
func (e *errands) lastFirst() []int {
	order := make([]int, 0, len(e.list))
	seen := newSet(len(e.list))
	var visit func(x int)
	visit = func(x int) {
		if seen.has(x) {
			return
		}
		seen.add(x)
		for _, y := range e.list[x].then {
			visit(y)
		}
		order = append(order, x)
	}
	for x := range e.list {
		visit(x)
	}
	return order
}

// restAt is what is left to be spent at a station at the least: its ladders and
// blocks.
func (e *errands) restAt(l *leg, station int) joinery.Time {
	e.asked = e.asked[:0]
	var longest joinery.Time
	for _, x := range e.at[station] {
		if l.done.has(x) {
			continue
		}
		e.asked = gatherAsked(e.asked, e.list[x].demand, e.list[x].over)
		if e.tails != nil {
			longest = max(longest, e.tails[x].ladders)
		}
	}
	if len(e.asked) == 0 {
		return 0
	}
	return max(e.visits.least(station, e.asked), longest) + e.m.blockCost(e.m.stations[station])
}

// restOf is what is left to be spent for setting a key and its bit.
func (e *errands) restOf(l *leg, key, bit int) joinery.Time {
	minutes := e.m.problem.Minutes
	stays := e.most(l, e.ofKey[key], func(t tail) int { return t.stays })
	bits := e.most(l, e.ofBit[bit], func(t tail) int { return t.bits })
	return joinery.Time(stays)*minutes.Fence + joinery.Time(bits)*minutes.Bit
}

// most is the greatest count in the tails of what is left at some stations.
func (e *errands) most(l *leg, stations []int, count func(tail) int) int {
	most := 0
	for _, s := range stations {
		for _, x := range e.at[s] {
			switch {
			case l.done.has(x):
			case e.tails == nil:
				return 1
			default:
				most = max(most, count(e.tails[x]))
			}
		}
	}
	return most
}
