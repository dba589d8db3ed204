package order

import (
	"math/rand/v2"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
)

// insertion is where the runs of a way would go.
type insertion struct {
	way    int
	places []place // of every run
	cost   joinery.Time
}

// place is a stop, or the gap before one where a stop is to be made.
type place struct {
	stop int
	gap  bool
}

// window is the stops between those of the kinds that a kind waits for and those of
// the kinds that wait for it, both left out.
func (q *Sequence) window(kind int) (from, to int) {
	from, to = 0, len(q.Stops)
	for _, k := range q.M.Kinds[kind].After {
		for _, s := range q.at[k] {
			from = max(from, s.index+1)
		}
	}
	for _, k := range q.Then[kind] {
		for _, s := range q.at[k] {
			to = min(to, s.index)
		}
	}
	return from, to
}

// Placing is how places are looked for.
type Placing struct {
	Random *rand.Rand
	Late   bool // of equal places the latest, else the earliest
	B      *budget.Budget

	gaps   []int // room to work in
	places []place
}

// blink is how many places there are to one that is passed over, so that other
// answers are come upon.
const blink = 50

// MostRuns bounds the runs of a way that is tried; a kind keeps a longer one.
const MostRuns = 12

// Cheapest finds the cheapest places for a kind that is taken out; ok is false
// where there is none.
func (q *Sequence) Cheapest(kind int, p *Placing) (best insertion, ok bool) {
	from, to := q.window(kind)
	if from > to {
		return best, false
	}
	for w := range q.M.Kinds[kind].Ways {
		way := &q.M.Kinds[kind].Ways[w]
		if way.Turned && len(way.Runs) > 1 || len(way.Runs) > MostRuns {
			continue
		}
		limit := NoLimit
		if ok {
			limit = best.cost
		}
		if found, any := q.placesFor(kind, w, from, to, limit, p); any {
			best, ok = found, true
		}
	}
	return best, ok
}

// placesFor finds the cheapest places of one way, by the cheapest way to have made
// so many runs at each place or before it.
func (q *Sequence) placesFor(kind, w, from, to int, limit joinery.Time, p *Placing) (insertion, bool) {
	way := &q.M.Kinds[kind].Ways[w]
	base := way.Own
	for _, f := range way.Fits {
		if q.fits[f] == 0 {
			base += q.M.Problem.Minutes.Fit
		}
	}
	if base >= limit {
		return insertion{}, false
	}
	places := q.candidates(q.M.Stations[way.Runs[0].Station].Bit, from, to, p)
	n := len(places)
	p.B.Spend(n * len(way.Runs))
	reached := slices.Repeat([]joinery.Time{base}, n+1) // by places, what it takes to have made so many runs before it
	var chosen [][]int
	for i := range way.Runs {
		r := &way.Runs[i]
		alone := q.visits.Cost(r.Station, []model.Asked{{Demand: r.Demand, Over: r.Over}})
		next, choice := make([]joinery.Time, n+1), make([]int, n+1)
		next[0], choice[0] = NoLimit, -1
		for at, place := range places {
			next[at+1], choice[at+1] = next[at], choice[at]
			// A run in a gap may share it with the run before; one at a stop may not.
			before, price := reached[at+1], NoLimit
			if !place.gap {
				before, price = reached[at], q.joining(q.Stops[place.stop], r)
			} else if !q.splits(place.stop) {
				price = q.detour(place.stop, r.Station) + alone
			}
			if price == NoLimit || before == NoLimit || p.Random.IntN(blink) == 0 {
				continue
			}
			if cost := before + price; cost < next[at+1] || cost == next[at+1] && p.Late {
				next[at+1], choice[at+1] = cost, at
			}
		}
		reached, chosen = next, append(chosen, choice)
	}
	if reached[n] >= limit {
		return insertion{}, false
	}
	found := insertion{way: w, cost: reached[n], places: make([]place, len(way.Runs))}
	for i, upTo := len(way.Runs)-1, n; i >= 0; i-- {
		at := chosen[i][upTo]
		found.places[i] = places[at]
		upTo = at
		if places[at].gap {
			upTo = at + 1
		}
	}
	return found, true
}

// candidates lists the places in a window that are worth looking at for a bit: its
// stops, the gaps beside them, and of the others the first, the last and one more
// where the bit is changed.
func (q *Sequence) candidates(bit, from, to int, p *Placing) []place {
	gaps := p.gaps[:0]
	for _, i := range q.ofBit[bit] {
		if from <= i && i < to {
			gaps = append(gaps, i, i+1)
		}
	}
	first, _ := slices.BinarySearch(q.turns, from)
	last, found := slices.BinarySearch(q.turns, to)
	if found {
		last++
	}
	if first < last {
		gaps = append(gaps, q.turns[first], q.turns[last-1], q.turns[first+p.Random.IntN(last-first)])
	}
	gaps = append(gaps, from, to)
	slices.Sort(gaps)
	p.gaps = slices.Compact(gaps)
	places := p.places[:0]
	for _, g := range p.gaps {
		places = append(places, place{g, true})
		if g < to && q.M.Stations[q.Stops[g].Station].Bit == bit {
			places = append(places, place{g, false})
		}
	}
	p.places = places
	return places
}

// joining is what a run takes at a stop that is there already.
func (q *Sequence) joining(s *Stop, r *model.ReadyRun) joinery.Time {
	if s.Station != r.Station {
		return NoLimit
	}
	if !q.M.Stations[s.Station].Mixed && s.pile.Covers(r.Demand) {
		return 0
	}
	s.pile.Add(r)
	price := q.visits.Cost(s.Station, s.pile.Asked) - s.heights
	s.pile.Remove(r)
	return price
}

// splits reports whether a stop before stop i would come between the two runs of
// a piece that is turned.
func (q *Sequence) splits(i int) bool {
	before, after := q.station(i-1), q.station(i)
	if before < 0 || after < 0 || q.M.Stations[before].Key != q.M.Stations[after].Key {
		return false
	}
	for _, r := range q.Stops[i].Runs {
		if w := &q.M.Kinds[r.Kind].Ways[q.Way[r.Kind]]; w.Turned && len(w.Runs) > 1 {
			return true
		}
	}
	return false
}

// PutIn puts a kind in where it was found to be cheapest.
func (q *Sequence) PutIn(kind int, in insertion) {
	q.Way[kind] = in.way
	q.at[kind] = make([]*Stop, len(in.places))
	q.pay(kind, in.way, 1)
	for i := len(in.places) - 1; i >= 0; i-- {
		p := in.places[i]
		s := &Stop{}
		if p.gap {
			s = q.insert(p.stop, q.M.Kinds[kind].Ways[in.way].Runs[i].Station)
		} else {
			s = q.Stops[p.stop]
		}
		q.put(s, KindRun{kind, i})
	}
	q.number()
}
