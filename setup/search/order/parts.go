package order

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/model"
)

// mostDepths is how many different demands at one station are told apart when
// a part of them is made.
const mostDepths = 10

// parts lists the parts of what is ready at a station that may be worth an ascent
// of their own. A part takes along what needs no rung more. What frees nothing
// it takes only where that is cheaper than another time.
func (e *Errands) parts(station int, ready model.Set) [][]int {
	key := ready.Key() // an errand is of one station
	if known, ok := e.known[key]; ok {
		return known
	}
	var list []int
	for _, x := range e.At[station] {
		if ready.Has(x) {
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
		if slices.ContainsFunc(g, func(x int) bool { return len(e.List[x].then) > 0 || e.List[x].twin >= 0 }) {
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
func (e *Errands) costs(station int, groups [][]int, part int) joinery.Time {
	return e.heights(station, members(groups, part))
}

// alike groups errands, which are by depth, by what they ask of the ladder. The
// runs of turned pieces stand alone: they oblige to the other run.
func (e *Errands) alike(list []int) [][]int {
	var groups [][]int
	joinable := false
	for i, x := range list {
		if !joinable || e.List[x].twin >= 0 || e.List[x].Demand != e.List[list[i-1]].Demand {
			groups = append(groups, nil)
		}
		joinable = e.List[x].twin < 0
		last := len(groups) - 1
		groups[last] = append(groups[last], x)
	}
	return groups
}

// close adds to a part every group that needs no rung more: left out, it could
// only make a later ladder longer.
func (e *Errands) close(station int, groups [][]int, part int) int {
	if s := e.M.Stations[station]; s.Uneven || s.Mixed {
		return part
	}
	cost := e.costs(station, groups, part)
	for i := range groups {
		if with := part | 1<<i; with != part && e.List[groups[i][0]].twin < 0 && e.costs(station, groups, with) == cost {
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
