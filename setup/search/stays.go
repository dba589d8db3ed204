package search

import (
	"cmp"
	"slices"

	"fencecard/setup/ladder"
)

// stay is the ascents made without moving the fence.
type stay struct {
	key, bit int
	ascents  []ascent
}

// stays gathers the whole order: the legs that were searched, and the idle
// errands put in with their bit, the fence ascending where it may.
func (e *errands) stays(last *leg) []stay {
	var all []stay
	for l := last; l.from != nil; l = l.from {
		s := e.m.stations[l.ascent.station]
		if n := len(all); n > 0 && all[n-1].key == s.key {
			all[n-1].ascents = append(all[n-1].ascents, l.ascent)
			continue
		}
		all = append(all, stay{s.key, s.bit, []ascent{l.ascent}})
	}
	slices.Reverse(all)
	for i := range all {
		slices.Reverse(all[i].ascents)
	}
	idle := e.idleStays()
	if len(all) == 0 {
		return idle
	}
	for _, s := range idle {
		all = slices.Insert(all, placeFor(s, all), s)
	}
	return all
}

// idleStays lists the stays of the idle errands, by key.
func (e *errands) idleStays() []stay {
	var idle []stay
	for _, at := range e.idle {
		id := e.list[at[0]].station
		s := e.m.stations[id]
		if n := len(idle); n == 0 || idle[n-1].key != s.key {
			idle = append(idle, stay{key: s.key, bit: s.bit})
		}
		last := &idle[len(idle)-1]
		last.ascents = append(last.ascents, ascent{id, at})
	}
	return idle
}

// placeFor finds where a stay goes in: among the first stays with its bit,
// before one with the fence farther out, or else between two bits.
func placeFor(s stay, all []stay) int {
	at := slices.IndexFunc(all, func(o stay) bool { return o.bit == s.bit })
	if at < 0 {
		for i := range all {
			if all[i].bit > s.bit && (i == 0 || all[i-1].bit != all[i].bit) {
				return i
			}
		}
		return len(all)
	}
	for at < len(all) && all[at].bit == s.bit && all[at].key < s.key {
		at++
	}
	return at
}

// spelt spells the order out for every job of every kind.
func (e *errands) spelt(last *leg) []Ascent {
	var ascents []Ascent
	for _, s := range e.stays(last) {
		for _, t := range s.ascents {
			ascents = append(ascents, e.part(t)...)
		}
	}
	return ascents
}

// part parts what is made at one station into ascents.
func (e *errands) part(t ascent) []Ascent {
	var list []asked
	var errands [][]int // of each that is asked
	for _, x := range t.list {
		list = gatherAsked(list, e.list[x].demand, e.list[x].over)
		if len(list) > len(errands) {
			errands = append(errands, nil)
		}
		errands[len(list)-1] = append(errands[len(list)-1], x)
	}
	if e.m.plain(t.station, list) {
		return []Ascent{e.spell(t)}
	}
	parts := e.m.visit(t.station, list).parts
	if parts == nil {
		return []Ascent{e.spell(t)}
	}
	var ascents []Ascent
	for _, set := range parts {
		one := ascent{station: t.station}
		for i := range list {
			if set&(1<<i) != 0 {
				one.list = append(one.list, errands[i]...)
			}
		}
		ascents = append(ascents, e.spell(one))
	}
	return ascents
}

// spell lists the runs of one ascent, by job.
func (e *errands) spell(t ascent) Ascent {
	var c Ascent
	for _, x := range t.list {
		for _, r := range e.list[x].runs {
			k := &e.m.kinds[r.kind]
			for _, job := range k.jobs {
				for _, run := range k.ways[e.choice[r.kind]].runs[r.run].of {
					c = append(c, JobRun{job, run})
				}
			}
		}
	}
	slices.SortFunc(c, func(a, b JobRun) int {
		return cmp.Or(cmp.Compare(a.Job, b.Job), cmp.Compare(a.Run, b.Run))
	})
	return c
}

// uses lists, by station, the demands of its ascents.
func (o ordered) uses() [][][]ladder.Demand {
	used := make([][][]ladder.Demand, len(o.m.stations))
	for _, s := range o.stays(o.last) {
		for _, t := range s.ascents {
			used[t.station] = append(used[t.station], o.demands(t.list))
		}
	}
	return used
}
