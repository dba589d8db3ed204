package search

import "slices"

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
func (e *errands) next(l *leg) []ascent {
	if l.ascent.station >= 0 {
		if ascents, only := e.here(l); only {
			return ascents
		}
	}
	if l.ascent.station < 0 || !e.anyReady(l, e.ofBit[e.m.stations[l.ascent.station].bit]) {
		for b, stations := range e.ofBit {
			if e.bitReady(l, stations) {
				return e.onBit(l, b)
			}
		}
	}
	return e.anywhere(l, e.stations)
}

// anywhere lists the ascents worth trying at any of the stations.
func (e *errands) anywhere(l *leg, stations []int) []ascent {
	var all []ascent
	for _, s := range stations {
		all = append(all, e.ascentsAt(l, s)...)
	}
	return all
}

// here looks for an ascent that should come next where the table stands: at its
// station, its key or its bit.
func (e *errands) here(l *leg) ([]ascent, bool) {
	s := e.m.stations[l.ascent.station]
	if e.owesTwin(l, e.ofKey[s.key]) {
		return e.anywhere(l, e.ofKey[s.key]), true
	}
	if e.through(l, l.ascent.station) {
		return e.ascentsAt(l, l.ascent.station), true
	}
	if e.anyReady(l, []int{l.ascent.station}) {
		return nil, false
	}
	for _, k := range e.ofKey[s.key] {
		if e.through(l, k) {
			return e.ascentsAt(l, k), true
		}
	}
	if e.anyReady(l, e.ofKey[s.key]) {
		return nil, false
	}
	if k, ok := e.wholeKey(l, s.bit); ok {
		return e.ascentsAt(l, k), true
	}
	return nil, false
}

// onBit lists the ascents worth trying with one bit.
func (e *errands) onBit(l *leg, bit int) []ascent {
	if s, ok := e.wholeKey(l, bit); ok {
		return e.ascentsAt(l, s)
	}
	return e.anywhere(l, e.ofBit[bit])
}

// wholeKey returns a station of the first fence distance of a bit where
// nothing that is left must wait.
func (e *errands) wholeKey(l *leg, bit int) (int, bool) {
	stations := e.ofBit[bit]
	for i := 0; i < len(stations); {
		key := e.m.stations[stations[i]].key
		first, whole := -1, true
		for ; i < len(stations) && e.m.stations[stations[i]].key == key; i++ {
			if len(e.left(l, stations[i])) == 0 {
				continue
			}
			whole = whole && e.through(l, stations[i])
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
func (e *errands) ready(l *leg, x int) bool {
	return !l.done.has(x) && l.done.hasAll(e.list[x].before)
}

func (e *errands) anyReady(l *leg, stations []int) bool {
	for _, s := range stations {
		for _, x := range e.at[s] {
			if e.ready(l, x) {
				return true
			}
		}
	}
	return false
}

// allReady reports whether something is left at a station and none of it must
// wait.
func (e *errands) allReady(l *leg, station int) bool {
	left := e.left(l, station)
	for _, x := range left {
		if !e.ready(l, x) {
			return false
		}
	}
	return len(left) > 0
}

// through reports whether a station can be finished now, and with it the
// stations of the other runs of turned pieces.
func (e *errands) through(l *leg, station int) bool {
	if !e.allReady(l, station) {
		return false
	}
	for _, x := range e.left(l, station) {
		if twin := e.list[x].twin; twin >= 0 && !l.done.has(twin) && !e.allReady(l, e.list[twin].station) {
			return false
		}
	}
	return true
}

// owesTwin reports whether a piece must still be turned at one of the stations,
// its other run being made: the fence stays until it is.
func (e *errands) owesTwin(l *leg, stations []int) bool {
	for _, s := range stations {
		for _, x := range e.at[s] {
			if twin := e.list[x].twin; twin >= 0 && !l.done.has(x) && l.done.has(twin) {
				return true
			}
		}
	}
	return false
}

// bitReady reports whether something is left for a bit, and whether all of it
// waits for nothing but what this bit makes.
func (e *errands) bitReady(l *leg, stations []int) bool {
	with := slices.Clone(l.done)
	any := false
	for _, s := range stations {
		for _, x := range e.at[s] {
			any = any || !with.has(x)
			with.add(x)
		}
	}
	if !any {
		return false
	}
	for _, s := range stations {
		for _, x := range e.at[s] {
			if !with.hasAll(e.list[x].before) {
				return false
			}
		}
	}
	return true
}

// ascentsAt lists the ascents worth trying at one station: all that is left if it
// can be finished, else every part of what is ready that frees something.
func (e *errands) ascentsAt(l *leg, station int) []ascent {
	if e.through(l, station) {
		return []ascent{{station, e.left(l, station)}}
	}
	ready := newSet(len(e.list))
	for _, x := range e.at[station] {
		if e.ready(l, x) {
			ready.add(x)
		}
	}
	if ready.empty() {
		return nil
	}
	var ascents []ascent
	for _, list := range e.parts(station, ready) {
		ascents = append(ascents, ascent{station, list})
	}
	return ascents
}
