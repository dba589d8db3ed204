package order

import (
	"fencecard/joinery"
	"fencecard/setup/search/model"
)

// A chain of errands that wait for one another bounds an order from below. Two
// of a chain at one station are never in one ascent, so each goes up a ladder of
// its own. Where the chain leaves a fence distance or a bit and comes back to
// it, that must be set again.

// chain is what the longest chains that begin with an errand take at the least, counted
// from it on.
type chain struct {
	ladders joinery.Time // climbed at its station
	stays   int          // settings of its fence distance
	bits    int          // settings of its bit
}

// findChains works out the chains of every errand.
func (e *Errands) findChains() {
	e.chains = make([]chain, len(e.List))
	order := e.lastFirst()
	after := make([]model.Set, len(e.List)) // all that wait for it, directly or not
	for _, x := range order {
		after[x] = model.NewSet(len(e.List))
		for _, y := range e.List[x].then {
			after[x].Add(y)
			after[x].Join(after[y])
		}
		e.chains[x] = e.chainOf(x, after)
	}
}

// chainOf works out those of one from those of the errands after it.
func (e *Errands) chainOf(x int, after []model.Set) chain {
	s := e.M.Stations[e.List[x].station]
	c := chain{stays: 1, bits: 1}
	// What waits for something away from this fence distance, or this bit.
	offKey, offBit := model.NewSet(len(e.List)), model.NewSet(len(e.List))
	for y := range e.List {
		if !after[x].Has(y) {
			continue
		}
		o := e.M.Stations[e.List[y].station]
		if o.Key != s.Key {
			offKey.Join(after[y])
		}
		if o.Bit != s.Bit {
			offBit.Join(after[y])
		}
	}
	for y := range e.List {
		if !after[x].Has(y) {
			continue
		}
		o := e.M.Stations[e.List[y].station]
		if e.List[y].station == e.List[x].station {
			c.ladders = max(c.ladders, e.chains[y].ladders)
		}
		if o.Key == s.Key {
			c.stays = max(c.stays, e.chains[y].stays+again(offKey.Has(y)))
		}
		if o.Bit == s.Bit {
			c.bits = max(c.bits, e.chains[y].bits+again(offBit.Has(y)))
		}
	}
	c.ladders += e.heights(e.List[x].station, []int{x})
	return c
}

func again(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// lastFirst lists the errands so that each comes after all that wait for it.
func (e *Errands) lastFirst() []int {
	order := make([]int, 0, len(e.List))
	seen := model.NewSet(len(e.List))
	var visit func(x int)
	visit = func(x int) {
		if seen.Has(x) {
			return
		}
		seen.Add(x)
		for _, y := range e.List[x].then {
			visit(y)
		}
		order = append(order, x)
	}
	for x := range e.List {
		visit(x)
	}
	return order
}

// restAt is what is left to be spent at a station at the least: its ladders and
// blocks.
func (e *Errands) restAt(trail *Trail, station int) joinery.Time {
	e.asked = e.asked[:0]
	var longest joinery.Time
	for _, x := range e.At[station] {
		if trail.done.Has(x) {
			continue
		}
		e.asked = model.GatherAsked(e.asked, e.List[x].Demand, e.List[x].over)
		if e.chains != nil {
			longest = max(longest, e.chains[x].ladders)
		}
	}
	if len(e.asked) == 0 {
		return 0
	}
	return max(e.visits.Least(station, e.asked), longest) + e.M.BlockCost(e.M.Stations[station])
}

// restOf is what is left to be spent for setting a key and its bit.
func (e *Errands) restOf(trail *Trail, key, bit int) joinery.Time {
	minutes := e.M.Problem.Minutes
	stays := e.most(trail, e.ofKey[key], func(c chain) int { return c.stays })
	bits := e.most(trail, e.ofBit[bit], func(c chain) int { return c.bits })
	return joinery.Time(stays)*minutes.Fence + joinery.Time(bits)*minutes.Bit
}

// most is the greatest count in the chains of what is left at some stations.
func (e *Errands) most(trail *Trail, stations []int, count func(chain) int) int {
	most := 0
	for _, s := range stations {
		for _, x := range e.At[s] {
			switch {
			case trail.done.Has(x):
			case e.chains == nil:
				return 1
			default:
				most = max(most, count(e.chains[x]))
			}
		}
	}
	return most
}
