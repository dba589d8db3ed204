// Package model is a [Problem] of the search and what is made ready of it before any
// search: kinds of jobs that are alike, stations, all that is paid once, and what the
// heights of runs made together cost.
package model

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
)

// Model is a problem with like jobs made one, and everything that costs time
// numbered.
type Model struct {
	Problem  *Problem
	Kinds    []Kind
	Keys     []key
	Stations []station
	Bits     int
	Costs    []joinery.Time // of every element
	RegionAt []int          // the station of every region
	Coin     joinery.Time   // every cost is a multiple of it
	Groups   int            // how many groups of kinds there are
	Tied     bool           // some kind waits for another
	Fits     int            // trials of fit
	Fixed    joinery.Time   // what the cutting takes whatever the ways; all costs are beyond it

	visits map[string]visit
	asked  []ladder.Demand // room to work in
}

// key is a bit at a fence distance.
type key struct {
	bit   int
	fence measure.Length
}

// station is a key with its blocks: what the runs of an ascent share.
type station struct {
	Key     int
	Bit     int
	blocks  int
	raised  bool
	demands []ladder.Demand // all that may be asked of it, by depth
	Uneven  bool            // more runs may need fewer rungs: a depth lies off the scale below another
	Mixed   bool            // a ladder for several runs may have one take more passes than alone
	Regions []region        // how its ladder is bounded
	Exact   bool            // the bound is the ladder
	first   int             // the element of its first region
}

// Kind is jobs that are alike in everything that matters here: what is best
// for one is best for all of them.
type Kind struct {
	Jobs   []int
	pieces int // in all its jobs
	Ways   []ReadyWay
	After  []int // kinds
	Group  int   // kinds that wait for one another, directly or not
	Tied   bool  // it waits for another or another waits for it
	Elems  []int // everything its ways may need
}

// ReadyWay is a way of a kind. The two runs of a turned piece are one where they
// share a station.
type ReadyWay struct {
	Runs   []ReadyRun
	Turned bool
	Fits   []int
	Own    joinery.Time // what its cutting takes for all jobs of the kind, beyond the way that takes the least
	Elems  []int        // what it needs, ascending
	At     []int        // where these stand in the kind's elems
}

// ReadyRun is one run of a way, ready to be compared.
type ReadyRun struct {
	Station int
	Demand  ladder.Demand
	times   int          // how often a piece goes over the bit at each height
	Over    joinery.Time // what that takes for all jobs of the kind
	Of      []int        // the runs of the problem's way
}

// New makes a problem ready.
func New(p *Problem) *Model {
	m := &Model{Problem: p, visits: map[string]visit{}}
	m.numberStations()
	m.numberKinds()
	m.priceCutting()
	m.gatherDemands()
	m.NumberElements(m.Uses(make([]int, len(m.Kinds))))
	return m
}

// Uses lists, by station, the demands of a choice of ways, as one ascent.
func (m *Model) Uses(choice []int) [][][]ladder.Demand {
	piles := make([]Pile, len(m.Stations))
	for k, w := range choice {
		for _, r := range m.Kinds[k].Ways[w].Runs {
			piles[r.Station].Add(&r)
		}
	}
	used := make([][][]ladder.Demand, len(piles))
	for i := range piles {
		if len(piles[i].Asked) > 0 {
			used[i] = [][]ladder.Demand{piles[i].demands()}
		}
	}
	return used
}

// numberStations numbers keys and stations by bit, fence distance and blocks.
func (m *Model) numberStations() {
	seen := map[stationKey]bool{}
	var places []stationKey
	for _, j := range m.Problem.Jobs {
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
		if n := len(m.Keys); n == 0 || m.Keys[n-1] != at.key {
			m.Keys = append(m.Keys, at.key)
		}
		m.Stations = append(m.Stations, station{Key: len(m.Keys) - 1, Bit: at.bit, blocks: at.blocks, raised: at.raised})
		m.Bits = max(m.Bits, at.bit+1)
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

func (m *Model) stationIndex() map[stationKey]int {
	index := make(map[stationKey]int, len(m.Stations))
	for i, s := range m.Stations {
		index[stationKey{m.Keys[s.Key], s.blocks, s.raised}] = i
	}
	return index
}

func (m *Model) ways(j *Job, pieces int, stationOf map[stationKey]int) []ReadyWay {
	ways := make([]ReadyWay, len(j.Ways))
	for i, w := range j.Ways {
		ways[i].Turned, ways[i].Fits = w.Turned, w.Fits
		for k, r := range w.Runs {
			next := ReadyRun{Station: stationOf[keyOf(r)], Demand: r.Demand, times: r.Over / pieces, Of: []int{k}}
			if last := len(ways[i].Runs) - 1; w.Turned && last >= 0 && ways[i].Runs[last].Station == next.Station {
				ways[i].Runs[last].Of = append(ways[i].Runs[last].Of, k)
				ways[i].Runs[last].times += r.Over / pieces
				continue
			}
			ways[i].Runs = append(ways[i].Runs, next)
		}
	}
	return ways
}
