package order

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/model"
)

// Sequence is a whole answer that jobs can be taken out of and put back into, at
// the price of what changes there and nothing else.
type Sequence struct {
	M      *model.Model
	visits model.Pricing
	Then   [][]int // by kind, the kinds that wait for it
	Stops  []*Stop // in running order
	Way    []int   // of every kind; -1 where it is taken out
	at     [][]*Stop
	fits   []int        // how many kinds need each trial of fit
	Cost   joinery.Time // of what is put in
	ofBit  [][]int      // by bit, its stops
	turns  []int        // gaps where the bit is changed, the ends included
}

// Stop is one visit in a sequence.
type Stop struct {
	Station int
	index   int
	Runs    []KindRun
	pile    model.Pile
	heights joinery.Time
}

// NewSequence is an order without runs.
func NewSequence(m *model.Model) *Sequence {
	q := &Sequence{M: m, visits: m.Truly(), Then: make([][]int, len(m.Kinds)),
		Way: slices.Repeat([]int{-1}, len(m.Kinds)), at: make([][]*Stop, len(m.Kinds)), fits: make([]int, m.Fits), ofBit: make([][]int, m.Bits)}
	for k := range m.Kinds {
		for _, before := range m.Kinds[k].After {
			q.Then[before] = append(q.Then[before], k)
		}
	}
	return q
}

// Load puts in an answer: its ways, and the stations with the runs made there.
func (q *Sequence) Load(way []int, visits []Visited) {
	q.Stops, q.Cost = nil, 0
	clear(q.fits)
	for k := range q.M.Kinds {
		q.Way[k] = way[k]
		q.at[k] = make([]*Stop, len(q.M.Kinds[k].Ways[way[k]].Runs))
		q.pay(k, way[k], 1)
	}
	for _, v := range visits {
		s := q.insert(len(q.Stops), v.Station)
		for _, r := range v.Runs {
			q.join(s, r)
		}
		q.recount(s)
	}
	q.number()
}

// Visited is a station and the runs made there at one visit.
type Visited struct {
	Station int
	Runs    []KindRun
}

// Spelt lists the visits.
func (q *Sequence) Spelt() []Visited {
	all := make([]Visited, len(q.Stops))
	for i, s := range q.Stops {
		all[i] = Visited{s.Station, slices.Clone(s.Runs)}
	}
	return all
}

func (q *Sequence) number() {
	for b := range q.ofBit {
		q.ofBit[b] = q.ofBit[b][:0]
	}
	q.turns = q.turns[:0]
	last := -1
	for i, s := range q.Stops {
		s.index = i
		bit := q.M.Stations[s.Station].Bit
		q.ofBit[bit] = append(q.ofBit[bit], i)
		if bit != last {
			q.turns = append(q.turns, i)
		}
		last = bit
	}
	q.turns = append(q.turns, len(q.Stops))
}

// pay counts what a way costs wherever it is put.
func (q *Sequence) pay(kind, way, times int) {
	w := &q.M.Kinds[kind].Ways[way]
	q.Cost += joinery.Time(times) * w.Own
	for _, f := range w.Fits {
		q.fits[f] += times
		if q.fits[f] == 0 && times < 0 || q.fits[f] == 1 && times > 0 {
			q.Cost += joinery.Time(times) * q.M.Problem.Minutes.Fit
		}
	}
}

// move is what setting a station takes after another; -1 stands for none.
func (q *Sequence) move(from, to int) joinery.Time {
	if to < 0 {
		return 0
	}
	minutes, next := q.M.Problem.Minutes, &q.M.Stations[to]
	switch {
	case from < 0 || q.M.Stations[from].Bit != next.Bit:
		return minutes.Bit + minutes.Fence + q.M.BlockCost(*next)
	case q.M.Stations[from].Key != next.Key:
		return minutes.Fence + q.M.BlockCost(*next)
	case from != to:
		return q.M.BlockCost(*next)
	}
	return 0
}

// station returns the station of a stop, -1 before the first and after the last.
func (q *Sequence) station(i int) int {
	if i < 0 || i >= len(q.Stops) {
		return -1
	}
	return q.Stops[i].Station
}

// detour is what a new stop takes in a gap, the one before stop i.
func (q *Sequence) detour(i, station int) joinery.Time {
	before, after := q.station(i-1), q.station(i)
	return q.move(before, station) + q.move(station, after) - q.move(before, after)
}

// insert makes a new stop before stop i.
func (q *Sequence) insert(i, station int) *Stop {
	q.Cost += q.detour(i, station)
	s := &Stop{Station: station}
	q.Stops = slices.Insert(q.Stops, i, s)
	return s
}

// put puts a run into a stop.
func (q *Sequence) put(s *Stop, r KindRun) {
	q.join(s, r)
	q.recount(s)
}

// join is put without its price.
func (q *Sequence) join(s *Stop, r KindRun) {
	s.Runs = append(s.Runs, r)
	s.pile.Add(&q.M.Kinds[r.Kind].Ways[q.Way[r.Kind]].Runs[r.run])
	q.at[r.Kind][r.run] = s
}

func (q *Sequence) recount(s *Stop) {
	q.Cost -= s.heights
	s.heights = 0
	if len(s.Runs) > 0 {
		s.heights = q.visits.Cost(s.Station, s.pile.Asked)
	}
	q.Cost += s.heights
}

// TakeOut takes a kind out, and the stops that only it needed.
func (q *Sequence) TakeOut(kind int) {
	way := q.Way[kind]
	for i, s := range q.at[kind] {
		s.Runs = slices.DeleteFunc(s.Runs, func(r KindRun) bool { return r.Kind == kind && r.run == i })
		s.pile.Remove(&q.M.Kinds[kind].Ways[way].Runs[i])
		q.recount(s)
		if len(s.Runs) == 0 {
			q.Stops = slices.Delete(q.Stops, s.index, s.index+1)
			q.Cost -= q.detour(s.index, s.Station)
			q.number()
		}
	}
	q.pay(kind, way, -1)
	q.Way[kind], q.at[kind] = -1, nil
}
