package search

import (
	"slices"

	"fencecard/joinery"
)

// trips lists the climbs worth trying next. Where one of them can be put off
// by no better order it is the only one:
//
//   - all that is left where the table stands, if none of it must wait: later
//     it would need at least the same climb;
//   - else, where nothing there is ready, a station at this fence distance that
//     can be finished; else a fence distance of this bit that can be: moved
//     forward from wherever a better order had it, it costs no more;
//   - else, where nothing for this bit is ready, a bit that can be finished in
//     one go.
func (e *errands) trips(l *leg) []trip {
	if l.trip.station >= 0 {
		if trips, only := e.here(l); only {
			return trips
		}
	}
	if l.trip.station < 0 || !e.anyReady(l, e.ofBit[e.m.stations[l.trip.station].bit]) {
		for b, stations := range e.ofBit {
			if e.bitReady(l, stations) {
				return e.onBit(l, b)
			}
		}
	}
	return e.anywhere(l, e.stations)
}

// anywhere lists the climbs worth trying at any of the stations.
func (e *errands) anywhere(l *leg, stations []int) []trip {
	var all []trip
	for _, s := range stations {
		all = append(all, e.climbsAt(l, s)...)
	}
	return all
}

// here looks for a climb that should come next where the table stands: at its
// station, its key or its bit.
func (e *errands) here(l *leg) ([]trip, bool) {
	s := e.m.stations[l.trip.station]
	if e.owesTwin(l, e.ofKey[s.key]) {
		return e.anywhere(l, e.ofKey[s.key]), true
	}
	if e.through(l, l.trip.station) {
		return e.climbsAt(l, l.trip.station), true
	}
	if e.anyReady(l, []int{l.trip.station}) {
		return nil, false
	}
	for _, k := range e.ofKey[s.key] {
		if e.through(l, k) {
			return e.climbsAt(l, k), true
		}
	}
	if e.anyReady(l, e.ofKey[s.key]) {
		return nil, false
	}
	if k, ok := e.wholeKey(l, s.bit); ok {
		return e.climbsAt(l, k), true
	}
	return nil, false
}

// onBit lists the climbs worth trying with one bit.
func (e *errands) onBit(l *leg, bit int) []trip {
	if s, ok := e.wholeKey(l, bit); ok {
		return e.climbsAt(l, s)
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

// mostDepths is how many different demands at one station are told apart when
// a part of them is made.
const mostDepths = 10

// climbsAt lists the climbs worth trying at one station: all that is left if it
// can be finished, else every part of what is ready that frees something.
func (e *errands) climbsAt(l *leg, station int) []trip {
	if e.through(l, station) {
		return []trip{{station, e.left(l, station)}}
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
	var trips []trip
	for _, list := range e.parts(station, ready) {
		trips = append(trips, trip{station, list})
	}
	return trips
}

// parts lists the parts of what is ready at a station that may be worth a climb
// of their own. A part takes along what needs no rung more. What frees nothing
// it takes only where that is cheaper than another time.
func (e *errands) parts(station int, ready set) [][]int {
	key := string(rune(station)) + ready.key()
	if known, ok := e.known[key]; ok {
		return known
	}
	var list []int
	for _, x := range e.at[station] {
		if ready.has(x) {
			list = append(list, x)
		}
	}
	alike := e.alike(list)
	if len(alike) > mostDepths {
		e.rough = true
		e.known[key] = [][]int{list}
		return e.known[key]
	}
	freeing := 0 // what lets others begin, or is one run of a turned piece
	for i, g := range alike {
		if slices.ContainsFunc(g, func(x int) bool { return len(e.list[x].then) > 0 || e.list[x].twin >= 0 }) {
			freeing |= 1 << i
		}
	}
	var parts [][]int
	tried := make([]bool, 1<<len(alike))
	for part := 1; part < len(tried); part++ {
		closed := e.close(station, alike, part)
		idle := closed &^ freeing
		if tried[closed] || closed == idle || idle != 0 && e.costs(station, alike, closed)-e.costs(station, alike, closed&freeing) >= e.costs(station, alike, idle) {
			continue
		}
		tried[closed] = true
		parts = append(parts, members(alike, closed))
	}
	e.known[key] = parts
	return parts
}

// costs is what the ladder for a part costs.
func (e *errands) costs(station int, groups [][]int, part int) joinery.Time {
	return e.climb(station, members(groups, part))
}

// alike groups errands, which are by depth, by what they ask of the ladder. The
// runs of turned pieces stand alone: they oblige to the other run.
func (e *errands) alike(list []int) [][]int {
	var groups [][]int
	joinable := false
	for i, x := range list {
		if !joinable || e.list[x].twin >= 0 || e.list[x].demand != e.list[list[i-1]].demand {
			groups = append(groups, nil)
		}
		joinable = e.list[x].twin < 0
		last := len(groups) - 1
		groups[last] = append(groups[last], x)
	}
	return groups
}

// close adds to a part every group that needs no rung more: left out, it could
// only make a later ladder longer.
func (e *errands) close(station int, groups [][]int, part int) int {
	if e.m.stations[station].uneven {
		return part
	}
	cost := e.costs(station, groups, part)
	for i := range groups {
		if with := part | 1<<i; with != part && e.list[groups[i][0]].twin < 0 && e.costs(station, groups, with) == cost {
			part = with
		}
	}
	return part
}

// members lists the errands of the groups in a part, by depth.
func members(groups [][]int, part int) []int {
	var list []int
	for i, g := range groups {
		if part&(1<<i) != 0 {
			list = append(list, g...)
		}
	}
	return list
}
