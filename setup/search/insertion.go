package search

import (
	"math/rand/v2"
	"slices"

	"fencecard/joinery"
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
func (q *sequence) window(kind int) (from, to int) {
	from, to = 0, len(q.stops)
	for _, k := range q.m.kinds[kind].after {
		for _, s := range q.at[k] {
			from = max(from, s.index+1)
		}
	}
	for _, k := range q.then[kind] {
		for _, s := range q.at[k] {
			to = min(to, s.index)
		}
	}
	return from, to
}

// placing is how places are looked for.
type placing struct {
	random *rand.Rand
	late   bool // of equal places the latest, else the earliest
	b      *budget

	gaps   []int // room to work in
	places []place
}

// blink is how many places there are to one that is passed over, so that other
// answers are come upon.
const blink = 50

// mostRuns bounds the runs of a way that is tried; a kind keeps a longer one.
const mostRuns = 12

// cheapest finds the cheapest places for a kind that is taken out; ok is false
// where there is none.
func (q *sequence) cheapest(kind int, p *placing) (best insertion, ok bool) {
	from, to := q.window(kind)
	if from > to {
		return best, false
	}
	for w := range q.m.kinds[kind].ways {
		way := &q.m.kinds[kind].ways[w]
		if way.turned && len(way.runs) > 1 || len(way.runs) > mostRuns {
			continue
		}
		limit := noLimit
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
func (q *sequence) placesFor(kind, w, from, to int, limit joinery.Time, p *placing) (insertion, bool) {
	way := &q.m.kinds[kind].ways[w]
	base := way.own
	for _, f := range way.fits {
		if q.fits[f] == 0 {
			base += q.m.problem.Minutes.Fit
		}
	}
	if base >= limit {
		return insertion{}, false
	}
	places := q.candidates(q.m.stations[way.runs[0].station].bit, from, to, p)
	n := len(places)
	p.b.spend(n * len(way.runs))
	reached := slices.Repeat([]joinery.Time{base}, n+1) // by places, what it takes to have made so many runs before it
	var chosen [][]int
	for i := range way.runs {
		r := &way.runs[i]
		alone := q.visits.cost(r.station, []asked{{r.demand, r.over}})
		next, choice := make([]joinery.Time, n+1), make([]int, n+1)
		next[0], choice[0] = noLimit, -1
		for at, place := range places {
			next[at+1], choice[at+1] = next[at], choice[at]
			// A run in a gap may share it with the run before; one at a stop may not.
			before, price := reached[at+1], noLimit
			if !place.gap {
				before, price = reached[at], q.joining(q.stops[place.stop], r)
			} else if !q.splits(place.stop) {
				price = q.detour(place.stop, r.station) + alone
			}
			if price == noLimit || before == noLimit || p.random.IntN(blink) == 0 {
				continue
			}
			if cost := before + price; cost < next[at+1] || cost == next[at+1] && p.late {
				next[at+1], choice[at+1] = cost, at
			}
		}
		reached, chosen = next, append(chosen, choice)
	}
	if reached[n] >= limit {
		return insertion{}, false
	}
	found := insertion{way: w, cost: reached[n], places: make([]place, len(way.runs))}
	for i, upTo := len(way.runs)-1, n; i >= 0; i-- {
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
func (q *sequence) candidates(bit, from, to int, p *placing) []place {
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
		gaps = append(gaps, q.turns[first], q.turns[last-1], q.turns[first+p.random.IntN(last-first)])
	}
	gaps = append(gaps, from, to)
	slices.Sort(gaps)
	p.gaps = slices.Compact(gaps)
	places := p.places[:0]
	for _, g := range p.gaps {
		places = append(places, place{g, true})
		if g < to && q.m.stations[q.stops[g].station].bit == bit {
			places = append(places, place{g, false})
		}
	}
	p.places = places
	return places
}

// joining is what a run takes at a stop that is there already.
func (q *sequence) joining(s *stop, r *run) joinery.Time {
	if s.station != r.station {
		return noLimit
	}
	if !q.m.stations[s.station].mixed && s.pile.covers(r.demand) {
		return 0
	}
	s.pile.add(r)
	price := q.visits.cost(s.station, s.pile.asked) - s.heights
	s.pile.remove(r)
	return price
}

// splits reports whether a stop before stop i would come between the two runs of
// a piece that is turned.
func (q *sequence) splits(i int) bool {
	before, after := q.station(i-1), q.station(i)
	if before < 0 || after < 0 || q.m.stations[before].key != q.m.stations[after].key {
		return false
	}
	for _, r := range q.stops[i].runs {
		if w := &q.m.kinds[r.kind].ways[q.way[r.kind]]; w.turned && len(w.runs) > 1 {
			return true
		}
	}
	return false
}

// putIn puts a kind in where it was found to be cheapest.
func (q *sequence) putIn(kind int, in insertion) {
	q.way[kind] = in.way
	q.at[kind] = make([]*stop, len(in.places))
	q.pay(kind, in.way, 1)
	for i := len(in.places) - 1; i >= 0; i-- {
		p := in.places[i]
		s := &stop{}
		if p.gap {
			s = q.insert(p.stop, q.m.kinds[kind].ways[in.way].runs[i].station)
		} else {
			s = q.stops[p.stop]
		}
		q.put(s, kindRun{kind, i})
	}
	q.number()
}
