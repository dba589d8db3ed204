package search

import (
	"cmp"
	"encoding/binary"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// model is a problem with like jobs made one, and everything that costs time
// numbered.
type model struct {
	problem  *Problem
	kinds    []kind
	keys     []key
	stations []station
	bits     int
	costs    []joinery.Time // of every element
	rungAt   []int          // the station of every rung element
	grain    joinery.Time   // every cost is a multiple of it
	tied     bool           // some kind waits for another
	uneven   bool           // some station is uneven
}

// key is a bit at a fence distance.
type key struct {
	bit   int
	fence joinery.Length
}

// station is a key with its blocks: what the runs of a climb share.
type station struct {
	key    int
	bit    int
	blocks int
	piles  piling
	uneven bool // more runs may need fewer rungs: a depth lies off the scale below another
	first  int  // its first rung element
}

// kind is jobs that are alike in everything that matters here: what is best
// for one is best for all of them.
type kind struct {
	jobs  []int
	ways  []way
	after []int // kinds
	tied  bool  // it waits for another or another waits for it
	elems []int // everything its ways may need
}

// way is a way of a kind. The two runs of a turned piece are one where they
// share a station.
type way struct {
	runs   []run
	turned bool
	elems  []int // what it needs, ascending
	at     []int // where these stand in the kind's elems
}

type run struct {
	station int
	demand  ladder.Demand
	of      []int // the runs of the problem's way
}

func newModel(p *Problem) *model {
	m := &model{problem: p}
	m.numberStations()
	m.numberKinds()
	m.numberElements()
	return m
}

// numberStations numbers keys and stations by bit, fence distance and blocks.
func (m *model) numberStations() {
	type place struct {
		key
		blocks int
	}
	seen := map[place]bool{}
	var places []place
	for _, j := range m.problem.Jobs {
		for _, w := range j.Ways {
			for _, r := range w.Runs {
				at := place{key{r.Bit, r.Fence}, r.Blocks}
				if !seen[at] {
					seen[at] = true
					places = append(places, at)
				}
			}
		}
	}
	slices.SortFunc(places, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.bit, b.bit), cmp.Compare(a.fence, b.fence), cmp.Compare(a.blocks, b.blocks))
	})
	for _, at := range places {
		if n := len(m.keys); n == 0 || m.keys[n-1] != at.key {
			m.keys = append(m.keys, at.key)
		}
		m.stations = append(m.stations, station{key: len(m.keys) - 1, bit: at.bit, blocks: at.blocks})
		m.bits = max(m.bits, at.bit+1)
	}
}

// numberKinds makes jobs that are alike one kind. Jobs that wait for one
// another are alike only as a whole group.
func (m *model) numberKinds() {
	stationOf := m.stationIndex()
	kindOf := make([]int, len(m.problem.Jobs))
	seen := map[string][]int{} // the kinds of a group, by what the group looks like
	for _, group := range groups(m.problem.Jobs) {
		looks := m.looks(group)
		if like, ok := seen[looks]; ok {
			for i, j := range group {
				kindOf[j] = like[i]
				m.kinds[like[i]].jobs = append(m.kinds[like[i]].jobs, j)
			}
			continue
		}
		var ids []int
		for _, j := range group {
			kindOf[j] = len(m.kinds)
			ids = append(ids, len(m.kinds))
			m.kinds = append(m.kinds, kind{jobs: []int{j}, ways: m.ways(&m.problem.Jobs[j], stationOf), tied: len(group) > 1})
		}
		for i, j := range group {
			for _, before := range m.problem.Jobs[j].After {
				m.kinds[ids[i]].after = append(m.kinds[ids[i]].after, kindOf[before])
			}
		}
		m.tied = m.tied || len(group) > 1
		seen[looks] = ids
	}
}

// stationKey is a station as the runs of a problem spell it.
type stationKey struct {
	bit    int
	fence  joinery.Length
	blocks int
}

func (m *model) stationIndex() map[stationKey]int {
	index := make(map[stationKey]int, len(m.stations))
	for i, s := range m.stations {
		index[stationKey{s.bit, m.keys[s.key].fence, s.blocks}] = i
	}
	return index
}

func (m *model) ways(j *Job, stationOf map[stationKey]int) []way {
	ways := make([]way, len(j.Ways))
	for i, w := range j.Ways {
		ways[i].turned = w.Turned
		for k, r := range w.Runs {
			next := run{stationOf[stationKey{r.Bit, r.Fence, r.Blocks}], r.Demand, []int{k}}
			if last := len(ways[i].runs) - 1; w.Turned && last >= 0 && ways[i].runs[last].station == next.station {
				ways[i].runs[last].of = append(ways[i].runs[last].of, k)
				continue
			}
			ways[i].runs = append(ways[i].runs, next)
		}
	}
	return ways
}

// groups puts jobs that wait for one another, directly or not, in one group,
// in the order of the jobs.
func groups(jobs []Job) [][]int {
	lead := make([]int, len(jobs))
	for i := range lead {
		lead[i] = i
	}
	find := func(i int) int {
		for lead[i] != i {
			lead[i] = lead[lead[i]]
			i = lead[i]
		}
		return i
	}
	for i, j := range jobs {
		for _, before := range j.After {
			a, b := find(i), find(before)
			lead[max(a, b)] = min(a, b)
		}
	}
	at := make(map[int]int, len(jobs))
	var all [][]int
	for i := range jobs {
		n, ok := at[find(i)]
		if !ok {
			n = len(all)
			at[find(i)] = n
			all = append(all, nil)
		}
		all[n] = append(all[n], i)
	}
	return all
}

// looks spells out everything about a group that matters.
func (m *model) looks(group []int) string {
	var b []byte
	number := func(n int) { b = binary.AppendVarint(b, int64(n)) }
	place := make(map[int]int, len(group))
	for i, j := range group {
		place[j] = i
	}
	for _, j := range group {
		job := &m.problem.Jobs[j]
		number(len(job.Ways))
		for _, w := range job.Ways {
			number(len(w.Runs))
			if w.Turned {
				number(-1)
			}
			for _, r := range w.Runs {
				number(r.Bit)
				number(int(r.Fence))
				number(r.Blocks)
				number(int(r.Demand.Depth))
				number(int(r.Demand.Cap))
			}
		}
		number(len(job.After))
		for _, before := range job.After {
			number(place[before])
		}
	}
	return string(b)
}
