package search

import (
	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// tally is what a growing and shrinking choice of ways costs when every bit,
// key, pair of blocks and ladder is paid once, whatever the order.
type tally struct {
	m      *model
	counts []int        // by how many ways each element is needed, or paid ahead
	piles  []pile       // by station
	soft   []bool       // stations whose ladders count by the rungs they need only
	others joinery.Time // bits, keys and blocks
	rungs  joinery.Time
}

func newTally(m *model) *tally {
	return &tally{m: m, counts: make([]int, len(m.costs)), piles: make([]pile, len(m.stations)), soft: make([]bool, len(m.stations))}
}

// cost is what the choice costs.
func (t *tally) cost() joinery.Time { return t.others + t.rungs }

// add takes a way in.
func (t *tally) add(w *way) { t.put(w, t.need, (*pile).add) }

// remove takes a way out again.
func (t *tally) remove(w *way) { t.put(w, t.release, (*pile).remove) }

// put changes the elements of a way and its demands, in or out.
func (t *tally) put(w *way, element func(int), demand func(*pile, ladder.Demand) bool) {
	for _, e := range w.elems {
		element(e)
	}
	for i := range w.runs {
		r := &w.runs[i]
		if demand(&t.piles[r.station], r.demand) {
			t.recount(r.station)
		}
	}
}

// price returns what a way would add to the cost.
func (t *tally) price(w *way) joinery.Time {
	before := t.cost()
	t.add(w)
	price := t.cost() - before
	t.remove(w)
	return price
}

// need pays an element, release gives it back.
func (t *tally) need(element int) {
	if t.counts[element]++; t.counts[element] == 1 {
		t.pay(element, 1)
	}
}

func (t *tally) release(element int) {
	if t.counts[element]--; t.counts[element] == 0 {
		t.pay(element, -1)
	}
}

func (t *tally) pay(element, times int) {
	first := t.m.firstRegion()
	if element < first {
		t.others += joinery.Time(times) * t.m.costs[element]
		return
	}
	station := t.m.regionAt[element-first]
	t.piles[station].needed += times
	if t.soft[station] {
		t.recount(station)
	}
}

// recount counts the rungs of a station's ladder anew.
func (t *tally) recount(station int) {
	p := &t.piles[station]
	before := p.rungs
	if t.soft[station] {
		p.rungs = p.needed
	} else {
		p.rungs = ladder.Count(p.demands, t.m.problem.Scale)
	}
	t.rungs += joinery.Time(p.rungs-before) * t.m.problem.Minutes.Height
}

// paid reports whether an element is paid for by what is in the tally.
func (t *tally) paid(element int) bool { return t.counts[element] > 0 }

// excess is what the ladder of a station costs beyond the rungs it needs. More
// ways may come to use it, so it is no bound.
func (t *tally) excess(station int) joinery.Time {
	p := &t.piles[station]
	return joinery.Time(p.rungs-p.needed) * t.m.problem.Minutes.Height
}
