package search

import (
	"cmp"
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
	regionAt []int          // the station of every region
	grain    joinery.Time   // every cost is a multiple of it
	groups   int            // how many groups of kinds there are
	tied     bool           // some kind waits for another
	fits     int            // trials of fit
	fixed    joinery.Time   // what the cutting takes whatever the ways; all costs are beyond it

	visits map[string]visit
	asked  []ladder.Demand // room to work in
}

// key is a bit at a fence distance.
type key struct {
	bit   int
	fence joinery.Length
}

// station is a key with its blocks: what the runs of an ascent share.
type station struct {
	key     int
	bit     int
	blocks  int
	raised  bool
	demands []ladder.Demand // all that may be asked of it, by depth
	uneven  bool            // more runs may need fewer rungs: a depth lies off the scale below another
	mixed   bool            // a ladder for several runs may have one take more passes than alone
	regions []region        // how its ladder is bounded
	exact   bool            // the bound is the ladder
	first   int             // the element of its first region
}

// kind is jobs that are alike in everything that matters here: what is best
// for one is best for all of them.
type kind struct {
	jobs   []int
	pieces int // in all its jobs
	ways   []way
	after  []int // kinds
	group  int   // kinds that wait for one another, directly or not
	tied   bool  // it waits for another or another waits for it
	elems  []int // everything its ways may need
}

// way is a way of a kind. The two runs of a turned piece are one where they
// share a station.
type way struct {
	runs   []run
	turned bool
	fits   []int
	own    joinery.Time // what its cutting takes for all jobs of the kind, beyond the way that takes the least
	elems  []int        // what it needs, ascending
	at     []int        // where these stand in the kind's elems
}

type run struct {
	station int
	demand  ladder.Demand
	times   int          // how often a piece goes over the bit at each height
	over    joinery.Time // what that takes for all jobs of the kind
	of      []int        // the runs of the problem's way
}

func newModel(p *Problem) *model {
	m := &model{problem: p, visits: map[string]visit{}}
	m.numberStations()
	m.numberKinds()
	m.priceCutting()
	m.gatherDemands()
	m.numberElements(m.uses(make([]int, len(m.kinds))))
	return m
}

// uses lists, by station, the demands of a choice of ways, as one ascent.
func (m *model) uses(choice []int) [][][]ladder.Demand {
	piles := make([]pile, len(m.stations))
	for k, w := range choice {
		for _, r := range m.kinds[k].ways[w].runs {
			piles[r.station].add(&r)
		}
	}
	used := make([][][]ladder.Demand, len(piles))
	for i := range piles {
		if len(piles[i].asked) > 0 {
			used[i] = [][]ladder.Demand{piles[i].demands()}
		}
	}
	return used
}

// numberStations numbers keys and stations by bit, fence distance and blocks.
func (m *model) numberStations() {
	seen := map[stationKey]bool{}
	var places []stationKey
	for _, j := range m.problem.Jobs {
		for _, w := range j.Ways {
			for _, r := range w.Runs {
				at := keyOf(r)
				if !seen[at] {
					seen[at] = true
					places = append(places, at)
				}
			}
		}
	}
	slices.SortFunc(places, func(a, b stationKey) int {
		return cmp.Or(cmp.Compare(a.bit, b.bit), cmp.Compare(a.fence, b.fence), cmp.Compare(a.blocks, b.blocks), compareRaised(a.raised, b.raised))
	})
	for _, at := range places {
		if n := len(m.keys); n == 0 || m.keys[n-1] != at.key {
			m.keys = append(m.keys, at.key)
		}
		m.stations = append(m.stations, station{key: len(m.keys) - 1, bit: at.bit, blocks: at.blocks, raised: at.raised})
		m.bits = max(m.bits, at.bit+1)
	}
}

// stationKey is a station as the runs of a problem spell it.
type stationKey struct {
	key
	blocks int
	raised bool
}

func keyOf(r Run) stationKey { return stationKey{key{r.Bit, r.Fence}, r.Blocks, r.Raised} }

// compareRaised puts what lies on the table first.
func compareRaised(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

func (m *model) stationIndex() map[stationKey]int {
	index := make(map[stationKey]int, len(m.stations))
	for i, s := range m.stations {
		index[stationKey{m.keys[s.key], s.blocks, s.raised}] = i
	}
	return index
}

func (m *model) ways(j *Job, pieces int, stationOf map[stationKey]int) []way {
	ways := make([]way, len(j.Ways))
	for i, w := range j.Ways {
		ways[i].turned, ways[i].fits = w.Turned, w.Fits
		for k, r := range w.Runs {
			next := run{station: stationOf[keyOf(r)], demand: r.Demand, times: r.Over / pieces, of: []int{k}}
			if last := len(ways[i].runs) - 1; w.Turned && last >= 0 && ways[i].runs[last].station == next.station {
				ways[i].runs[last].of = append(ways[i].runs[last].of, k)
				ways[i].runs[last].times += r.Over / pieces
				continue
			}
			ways[i].runs = append(ways[i].runs, next)
		}
	}
	return ways
}
