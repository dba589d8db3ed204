package search

import (
	"slices"

	"fencecard/joinery"
)

// sequence is a whole answer that jobs can be taken out of and put back into, at
// the price of what changes there and nothing else.
type sequence struct {
	m      *model
	visits pricing
	then   [][]int // by kind, the kinds that wait for it
	stops  []*stop // in running order
	way    []int   // of every kind; -1 where it is taken out
	at     [][]*stop
	fits   []int        // how many kinds need each trial of fit
	cost   joinery.Time // of what is put in
	ofBit  [][]int      // by bit, its stops
	turns  []int        // gaps where the bit is changed, the ends included
}

// stop is one visit in a sequence.
type stop struct {
	station int
	index   int
	runs    []kindRun
	pile    pile
	heights joinery.Time
}

func newSequence(m *model) *sequence {
	q := &sequence{m: m, visits: m.truly(), then: make([][]int, len(m.kinds)),
		way: slices.Repeat([]int{-1}, len(m.kinds)), at: make([][]*stop, len(m.kinds)), fits: make([]int, m.fits), ofBit: make([][]int, m.bits)}
	for k := range m.kinds {
		for _, before := range m.kinds[k].after {
			q.then[before] = append(q.then[before], k)
		}
	}
	return q
}

// load puts in an answer: its ways, and the stations with the runs made there.
func (q *sequence) load(way []int, visits []visited) {
	q.stops, q.cost = nil, 0
	clear(q.fits)
	for k := range q.m.kinds {
		q.way[k] = way[k]
		q.at[k] = make([]*stop, len(q.m.kinds[k].ways[way[k]].runs))
		q.pay(k, way[k], 1)
	}
	for _, v := range visits {
		s := q.insert(len(q.stops), v.station)
		for _, r := range v.runs {
			q.join(s, r)
		}
		q.recount(s)
	}
	q.number()
}

// visited is a station and the runs made there at one visit.
type visited struct {
	station int
	runs    []kindRun
}

// spelt lists the visits.
func (q *sequence) spelt() []visited {
	all := make([]visited, len(q.stops))
	for i, s := range q.stops {
		all[i] = visited{s.station, slices.Clone(s.runs)}
	}
	return all
}

func (q *sequence) number() {
	for b := range q.ofBit {
		q.ofBit[b] = q.ofBit[b][:0]
	}
	q.turns = q.turns[:0]
	last := -1
	for i, s := range q.stops {
		s.index = i
		bit := q.m.stations[s.station].bit
		q.ofBit[bit] = append(q.ofBit[bit], i)
		if bit != last {
			q.turns = append(q.turns, i)
		}
		last = bit
	}
	q.turns = append(q.turns, len(q.stops))
}

// pay counts what a way costs wherever it is put.
func (q *sequence) pay(kind, way, times int) {
	w := &q.m.kinds[kind].ways[way]
	q.cost += joinery.Time(times) * w.own
	for _, f := range w.fits {
		q.fits[f] += times
		if q.fits[f] == 0 && times < 0 || q.fits[f] == 1 && times > 0 {
			q.cost += joinery.Time(times) * q.m.problem.Minutes.Fit
		}
	}
}

// move is what setting a station takes after another; -1 stands for none.
func (q *sequence) move(from, to int) joinery.Time {
	if to < 0 {
		return 0
	}
	minutes, next := q.m.problem.Minutes, &q.m.stations[to]
	switch {
	case from < 0 || q.m.stations[from].bit != next.bit:
		return minutes.Bit + minutes.Fence + q.m.blockCost(*next)
	case q.m.stations[from].key != next.key:
		return minutes.Fence + q.m.blockCost(*next)
	case from != to:
		return q.m.blockCost(*next)
	}
	return 0
}

// station returns the station of a stop, -1 before the first and after the last.
func (q *sequence) station(i int) int {
	if i < 0 || i >= len(q.stops) {
		return -1
	}
	return q.stops[i].station
}

// detour is what a new stop takes in a gap, the one before stop i.
func (q *sequence) detour(i, station int) joinery.Time {
	before, after := q.station(i-1), q.station(i)
	return q.move(before, station) + q.move(station, after) - q.move(before, after)
}

// insert makes a new stop before stop i.
func (q *sequence) insert(i, station int) *stop {
	q.cost += q.detour(i, station)
	s := &stop{station: station}
	q.stops = slices.Insert(q.stops, i, s)
	return s
}

// put puts a run into a stop.
func (q *sequence) put(s *stop, r kindRun) {
	q.join(s, r)
	q.recount(s)
}

// join is put without its price.
func (q *sequence) join(s *stop, r kindRun) {
	s.runs = append(s.runs, r)
	s.pile.add(&q.m.kinds[r.kind].ways[q.way[r.kind]].runs[r.run])
	q.at[r.kind][r.run] = s
}

func (q *sequence) recount(s *stop) {
	q.cost -= s.heights
	s.heights = 0
	if len(s.runs) > 0 {
		s.heights = q.visits.cost(s.station, s.pile.asked)
	}
	q.cost += s.heights
}

// takeOut takes a kind out, and the stops that only it needed.
func (q *sequence) takeOut(kind int) {
	way := q.way[kind]
	for i, s := range q.at[kind] {
		s.runs = slices.DeleteFunc(s.runs, func(r kindRun) bool { return r.kind == kind && r.run == i })
		s.pile.remove(&q.m.kinds[kind].ways[way].runs[i])
		q.recount(s)
		if len(s.runs) == 0 {
			q.stops = slices.Delete(q.stops, s.index, s.index+1)
			q.cost -= q.detour(s.index, s.station)
			q.number()
		}
	}
	q.pay(kind, way, -1)
	q.way[kind], q.at[kind] = -1, nil
}
