package search

import "fencecard/joinery"

// tally is what a growing and shrinking choice of ways costs when every bit,
// key, pair of blocks and ladder is paid once, whatever the order.
type tally struct {
	m      *model
	counts []int        // by how many ways each element is needed, or paid ahead
	piles  []pile       // by station
	soft   []bool       // stations whose ladders count by the rungs they need only
	others joinery.Time // bits, keys, blocks, trials of fit and the cutting
	visits joinery.Time // one to each station
}

func newTally(m *model) *tally {
	return &tally{m: m, counts: make([]int, len(m.costs)), piles: make([]pile, len(m.stations)), soft: make([]bool, len(m.stations))}
}

// cost is what the choice costs.
func (t *tally) cost() joinery.Time { return t.others + t.visits }

// add takes a way in.
func (t *tally) add(w *way) { t.put(w, 1, t.need, (*pile).add) }

// remove takes a way out again.
func (t *tally) remove(w *way) { t.put(w, -1, t.release, (*pile).remove) }

// put changes the elements of a way and its demands, in or out.
func (t *tally) put(w *way, times joinery.Time, element func(int), demand func(*pile, *run) bool) {
	t.others += times * w.own
	for _, e := range w.elems {
		element(e)
	}
	for i := range w.runs {
		r := &w.runs[i]
		if demand(&t.piles[r.station], r) || t.m.stations[r.station].mixed {
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

// recount works out the visit to a station anew.
func (t *tally) recount(station int) {
	p := &t.piles[station]
	before := p.cost
	if t.soft[station] {
		p.cost = joinery.Time(p.needed) * t.m.problem.Minutes.Height
	} else {
		p.cost = t.m.atLeast(station, p.asked)
	}
	t.visits += p.cost - before
}

// paid reports whether an element is paid for by what is in the tally.
func (t *tally) paid(element int) bool { return t.counts[element] > 0 }

// excess is what the visit to a station costs beyond the rungs it needs. More
// ways may come to use it, so it is no bound.
func (t *tally) excess(station int) joinery.Time {
	p := &t.piles[station]
	return p.cost - joinery.Time(p.needed)*t.m.problem.Minutes.Height
}

// settled reports whether a run adds nothing to the visit to its station, and
// takes nothing from it, whatever else comes there.
func (t *tally) settled(r *run) bool {
	return !t.m.stations[r.station].mixed && t.piles[r.station].covers(r.demand)
}
