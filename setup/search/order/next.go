package order

import (
	"slices"

	"fencecard/setup/search/model"
)

// next lists the ascents worth trying next. Where one of them can be put off
// by no better order it is the only one:
//
//   - all that is left where the table stands, if none of it must wait: later
//     it would need at least the same ascent;
//   - else, where nothing there is ready, a station at this fence distance that
//     can be finished; else a fence distance of this bit that can be: moved
//     forward from wherever a better order had it, it costs no more;
//   - else, where nothing for this bit is ready, a bit that can be finished in
//     one go.
func (e *Errands) next(trail *Trail) []Ascent {
	if trail.ascent.Station >= 0 {
		if ascents, only := e.here(trail); only {
			return ascents
		}
	}
	if trail.ascent.Station < 0 || !e.anyReady(trail, e.ofBit[e.M.Stations[trail.ascent.Station].Bit]) {
		for b, stations := range e.ofBit {
			if e.bitReady(trail, stations) {
				return e.onBit(trail, b)
			}
		}
	}
	return e.anywhere(trail, e.stations)
}

// anywhere lists the ascents worth trying at any of the stations.
func (e *Errands) anywhere(trail *Trail, stations []int) []Ascent {
	var all []Ascent
	for _, s := range stations {
		all = append(all, e.ascentsAt(trail, s)...)
	}
	return all
}

// here looks for an ascent that should come next where the table stands: at its
// station, its key or its bit.
func (e *Errands) here(trail *Trail) ([]Ascent, bool) {
	s := e.M.Stations[trail.ascent.Station]
	if e.owesTwin(trail, e.ofKey[s.Key]) {
		return e.anywhere(trail, e.ofKey[s.Key]), true
	}
	if e.through(trail, trail.ascent.Station) {
		return e.ascentsAt(trail, trail.ascent.Station), true
	}
	if e.anyReady(trail, []int{trail.ascent.Station}) {
		return nil, false
	}
	for _, k := range e.ofKey[s.Key] {
		if e.through(trail, k) {
			return e.ascentsAt(trail, k), true
		}
	}
	if e.anyReady(trail, e.ofKey[s.Key]) {
		return nil, false
	}
	if k, ok := e.wholeKey(trail, s.Bit); ok {
		return e.ascentsAt(trail, k), true
	}
	return nil, false
}

// onBit lists the ascents worth trying with one bit.
func (e *Errands) onBit(trail *Trail, bit int) []Ascent {
	if s, ok := e.wholeKey(trail, bit); ok {
		return e.ascentsAt(trail, s)
	}
	return e.anywhere(trail, e.ofBit[bit])
}

// wholeKey returns a station of the first fence distance of a bit where
// nothing that is left must wait.
func (e *Errands) wholeKey(trail *Trail, bit int) (int, bool) {
	stations := e.ofBit[bit]
	for i := 0; i < len(stations); {
		key := e.M.Stations[stations[i]].Key
		first, whole := -1, true
		for ; i < len(stations) && e.M.Stations[stations[i]].Key == key; i++ {
			if len(e.left(trail, stations[i])) == 0 {
				continue
			}
			whole = whole && e.through(trail, stations[i])
			if first < 0 {
				first = stations[i]
			}
		}
		if whole && first >= 0 {
			return first, true
		}
	}
	return 0, false
}

// ready reports whether an errand may be made now.
func (e *Errands) ready(trail *Trail, x int) bool {
	return !trail.done.Has(x) && trail.done.HasAll(e.List[x].before)
}

func (e *Errands) anyReady(trail *Trail, stations []int) bool {
	for _, s := range stations {
		for _, x := range e.At[s] {
			if e.ready(trail, x) {
				return true
			}
		}
	}
	return false
}

// allReady reports whether something is left at a station and none of it must
// wait.
func (e *Errands) allReady(trail *Trail, station int) bool {
	left := e.left(trail, station)
	for _, x := range left {
		if !e.ready(trail, x) {
			return false
		}
	}
	return len(left) > 0
}

// through reports whether a station can be finished now, and with it the
// stations of the other runs of turned pieces.
func (e *Errands) through(trail *Trail, station int) bool {
	if !e.allReady(trail, station) {
		return false
	}
	for _, x := range e.left(trail, station) {
		if twin := e.List[x].twin; twin >= 0 && !trail.done.Has(twin) && !e.allReady(trail, e.List[twin].station) {
			return false
		}
	}
	return true
}

// owesTwin reports whether a piece must still be turned at one of the stations,
// its other run being made: the fence stays until it is.
func (e *Errands) owesTwin(trail *Trail, stations []int) bool {
	for _, s := range stations {
		for _, x := range e.At[s] {
			if twin := e.List[x].twin; twin >= 0 && !trail.done.Has(x) && trail.done.Has(twin) {
				return true
			}
		}
	}
	return false
}

// bitReady reports whether something is left for a bit, and whether all of it
// waits for nothing but what this bit makes.
func (e *Errands) bitReady(trail *Trail, stations []int) bool {
	with := slices.Clone(trail.done)
	any := false
	for _, s := range stations {
		for _, x := range e.At[s] {
			any = any || !with.Has(x)
			with.Add(x)
		}
	}
	if !any {
		return false
	}
	for _, s := range stations {
		for _, x := range e.At[s] {
			if !with.HasAll(e.List[x].before) {
				return false
			}
		}
	}
	return true
}

// ascentsAt lists the ascents worth trying at one station: all that is left if it
// can be finished, else every part of what is ready that frees something.
func (e *Errands) ascentsAt(trail *Trail, station int) []Ascent {
	if e.through(trail, station) {
		return []Ascent{{station, e.left(trail, station)}}
	}
	ready := model.NewSet(len(e.List))
	for _, x := range e.At[station] {
		if e.ready(trail, x) {
			ready.Add(x)
		}
	}
	if ready.Empty() {
		return nil
	}
	var ascents []Ascent
	for _, list := range e.parts(station, ready) {
		ascents = append(ascents, Ascent{station, list})
	}
	return ascents
}
