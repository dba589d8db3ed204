package search

import (
	"cmp"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// tally is what a growing and shrinking choice of ways costs when every bit,
// key, pair of blocks and ladder is paid once, whatever the order.
type tally struct {
	m     *model
	bits  []int  // by how many runs each is needed, or paid ahead
	keys  []int  // the same
	piles []pile // by station
	soft  []bool // stations whose ladder is only bounded from below
	cost  joinery.Time
}

// newTally is empty. Its ladders are counted to the last rung.
func newTally(m *model) *tally {
	return &tally{
		m:     m,
		bits:  make([]int, m.bits),
		keys:  make([]int, len(m.keys)),
		piles: make([]pile, len(m.stations)),
		soft:  make([]bool, len(m.stations)),
	}
}

// newBoundingTally is empty, and what it costs never falls as ways are added.
func newBoundingTally(m *model) *tally {
	t := newTally(m)
	for i := range m.stations {
		t.soft[i] = m.stations[i].uneven
	}
	return t
}

// add takes a way in.
func (t *tally) add(w *way) {
	for i := range w.runs {
		r := &w.runs[i]
		s := &t.m.stations[r.station]
		t.need(s.bit)
		t.need(t.m.keyElement(s.key))
		p := &t.piles[r.station]
		if len(p.demands) == 0 {
			t.cost += t.m.blockCost(*s)
		}
		if p.add(r.demand) {
			t.climb(r.station)
		}
	}
}

// remove takes a way out again.
func (t *tally) remove(w *way) {
	for i := range w.runs {
		r := &w.runs[i]
		s := &t.m.stations[r.station]
		t.release(s.bit)
		t.release(t.m.keyElement(s.key))
		p := &t.piles[r.station]
		if p.remove(r.demand) {
			t.climb(r.station)
		}
		if len(p.demands) == 0 {
			t.cost -= t.m.blockCost(*s)
		}
	}
}

// price returns what a way would add to the cost.
func (t *tally) price(w *way) joinery.Time {
	before := t.cost
	t.add(w)
	price := t.cost - before
	t.remove(w)
	return price
}

// need pays a bit or key, release gives it back.
func (t *tally) need(element int) {
	n := t.count(element)
	if *n++; *n == 1 {
		t.cost += t.m.costs[element]
	}
}

func (t *tally) release(element int) {
	n := t.count(element)
	if *n--; *n == 0 {
		t.cost -= t.m.costs[element]
	}
}

func (t *tally) count(element int) *int {
	if element < t.m.bits {
		return &t.bits[element]
	}
	return &t.keys[element-t.m.bits]
}

// climb counts the rungs of a station's ladder anew.
func (t *tally) climb(station int) {
	p := &t.piles[station]
	t.cost -= joinery.Time(p.rungs) * t.m.problem.Minutes.Height
	if t.soft[station] {
		p.rungs = t.m.fewestRungs(station, p.demands)
	} else {
		p.rungs = ladder.Count(p.demands, t.m.problem.Scale)
	}
	t.cost += joinery.Time(p.rungs) * t.m.problem.Minutes.Height
}

// fewestRungs counts the rung elements of some demands, sorted by depth.
func (m *model) fewestRungs(station int, demands []ladder.Demand) int {
	if len(demands) == 0 {
		return 0
	}
	s := &m.stations[station]
	if !s.piles.single {
		return s.piles.windows(demands[len(demands)-1].Depth)
	}
	n := 1
	for i := 1; i < len(demands); i++ {
		if demands[i].Depth != demands[i-1].Depth {
			n++
		}
	}
	return n
}

// paid reports whether an element is paid for by what is in the tally.
func (t *tally) paid(element int) bool {
	m := t.m
	if element < m.bits+len(m.keys) {
		return *t.count(element) > 0
	}
	if element < m.stationElement(len(m.stations)) {
		return len(t.piles[element-m.stationElement(0)].demands) > 0
	}
	s := m.rungAt[element-m.stations[0].first]
	p := t.piles[s].demands
	if len(p) == 0 {
		return false
	}
	piles, rung := &m.stations[s].piles, element-m.stations[s].first
	if !piles.single {
		return rung < piles.windows(p[len(p)-1].Depth)
	}
	at, _ := t.piles[s].place(ladder.Demand{Depth: piles.depths[rung]})
	return at < len(p) && p[at].Depth == piles.depths[rung]
}

func compareDemands(a, b ladder.Demand) int {
	return cmp.Or(cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Cap, b.Cap))
}
