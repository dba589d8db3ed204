package search

import (
	"fencecard/joinery"
	"fencecard/setup/search/model"
)

// tally is what a growing and shrinking choice of ways costs when every bit,
// key, pair of blocks and ladder is paid once, whatever the order.
type tally struct {
	m      *model.Model
	counts []int        // by how many ways each element is needed, or paid ahead
	piles  []model.Pile // by station
	soft   []bool       // stations whose ladders count by the rungs they need only
	others joinery.Time // bits, keys, blocks, trials of fit and the cutting
	visits joinery.Time // one to each station
}

func newTally(m *model.Model) *tally {
	return &tally{m: m, counts: make([]int, len(m.Costs)), piles: make([]model.Pile, len(m.Stations)), soft: make([]bool, len(m.Stations))}
}

// cost is what the choice costs.
func (t *tally) cost() joinery.Time { return t.others + t.visits }

// add takes a way in.
func (t *tally) add(w *model.ReadyWay) { t.put(w, 1, t.need, (*model.Pile).Add) }

// remove takes a way out again.
func (t *tally) remove(w *model.ReadyWay) { t.put(w, -1, t.release, (*model.Pile).Remove) }

// put changes the elements of a way and its demands, in or out.
func (t *tally) put(w *model.ReadyWay, times joinery.Time, element func(int), demand func(*model.Pile, *model.ReadyRun) bool) {
	t.others += times * w.Own
	for _, e := range w.Elems {
		element(e)
	}
	for i := range w.Runs {
		r := &w.Runs[i]
		if demand(&t.piles[r.Station], r) || t.m.Stations[r.Station].Mixed {
			t.recount(r.Station)
		}
	}
}

// price returns what a way would add to the cost.
func (t *tally) price(w *model.ReadyWay) joinery.Time {
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
	first := t.m.FirstRegion()
	if element < first {
		t.others += joinery.Time(times) * t.m.Costs[element]
		return
	}
	station := t.m.RegionAt[element-first]
	t.piles[station].Needed += times
	if t.soft[station] {
		t.recount(station)
	}
}

// recount works out the visit to a station anew.
func (t *tally) recount(station int) {
	p := &t.piles[station]
	before := p.Cost
	if t.soft[station] {
		p.Cost = joinery.Time(p.Needed) * t.m.Problem.Minutes.Height
	} else {
		p.Cost = t.m.AtLeast(station, p.Asked)
	}
	t.visits += p.Cost - before
}

// paid reports whether an element is paid for by what is in the tally.
func (t *tally) paid(element int) bool { return t.counts[element] > 0 }

// excess is what the visit to a station costs beyond the rungs it needs. More
// ways may come to use it, so it is no bound.
func (t *tally) excess(station int) joinery.Time {
	p := &t.piles[station]
	return p.Cost - joinery.Time(p.Needed)*t.m.Problem.Minutes.Height
}

// settled reports whether a run adds nothing to the visit to its station, and
// takes nothing from it, whatever else comes there.
func (t *tally) settled(r *model.ReadyRun) bool {
	return !t.m.Stations[r.Station].Mixed && t.piles[r.Station].Covers(r.Demand)
}
