package order

import (
	"cmp"
	"slices"

	"fencecard/setup/search/model"
)

// Stay is the ascents made without moving the fence.
type Stay struct {
	key, bit int
	Ascents  []Ascent
}

// Stays gathers the whole order: the trails that were searched, and the idle
// errands put in with their bit, the fence ascending where it may.
func (e *Errands) Stays(last *Trail) []Stay {
	var all []Stay
	for trail := last; trail.from != nil; trail = trail.from {
		s := e.M.Stations[trail.ascent.Station]
		if n := len(all); n > 0 && all[n-1].key == s.Key {
			all[n-1].Ascents = append(all[n-1].Ascents, trail.ascent)
			continue
		}
		all = append(all, Stay{s.Key, s.Bit, []Ascent{trail.ascent}})
	}
	slices.Reverse(all)
	for i := range all {
		slices.Reverse(all[i].Ascents)
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
func (e *Errands) idleStays() []Stay {
	var idle []Stay
	for _, at := range e.idle {
		id := e.List[at[0]].station
		s := e.M.Stations[id]
		if n := len(idle); n == 0 || idle[n-1].key != s.Key {
			idle = append(idle, Stay{key: s.Key, bit: s.Bit})
		}
		last := &idle[len(idle)-1]
		last.Ascents = append(last.Ascents, Ascent{id, at})
	}
	return idle
}

// placeFor finds where a stay goes in: among the first stays with its bit,
// before one with the fence farther out, or else between two bits.
func placeFor(s Stay, all []Stay) int {
	at := slices.IndexFunc(all, func(o Stay) bool { return o.bit == s.bit })
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

// Spelt spells the order out for every job of every kind.
func (e *Errands) Spelt(last *Trail) []model.Ascent {
	var ascents []model.Ascent
	for _, s := range e.Stays(last) {
		for _, a := range s.Ascents {
			ascents = append(ascents, e.part(a)...)
		}
	}
	return ascents
}

// part parts what is made at one station into ascents.
func (e *Errands) part(a Ascent) []model.Ascent {
	var list []model.Asked
	var errands [][]int // of each that is asked
	for _, x := range a.List {
		list = model.GatherAsked(list, e.List[x].Demand, e.List[x].over)
		if len(list) > len(errands) {
			errands = append(errands, nil)
		}
		errands[len(list)-1] = append(errands[len(list)-1], x)
	}
	if e.M.Plain(a.Station, list) {
		return []model.Ascent{e.spell(a)}
	}
	parts := e.M.Visit(a.Station, list).Parts
	if parts == nil {
		return []model.Ascent{e.spell(a)}
	}
	var ascents []model.Ascent
	for _, set := range parts {
		one := Ascent{Station: a.Station}
		for i := range list {
			if set&(1<<i) != 0 {
				one.List = append(one.List, errands[i]...)
			}
		}
		ascents = append(ascents, e.spell(one))
	}
	return ascents
}

// spell lists the runs of one ascent, by job.
func (e *Errands) spell(a Ascent) model.Ascent {
	var c model.Ascent
	for _, x := range a.List {
		for _, r := range e.List[x].Runs {
			k := &e.M.Kinds[r.Kind]
			for _, job := range k.Jobs {
				for _, run := range k.Ways[e.Choice[r.Kind]].Runs[r.run].Of {
					c = append(c, model.JobRun{Job: job, Run: run})
				}
			}
		}
	}
	slices.SortFunc(c, func(a, b model.JobRun) int {
		return cmp.Or(cmp.Compare(a.Job, b.Job), cmp.Compare(a.Run, b.Run))
	})
	return c
}
