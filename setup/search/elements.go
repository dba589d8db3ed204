package search

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// An element is something that is paid once by all who need it: a bit, a fence
// distance, a pair of blocks, or a rung of a station's ladder. Elements are
// numbered: bits, then keys, then stations, then rungs, station by station.
//
// A ladder is not a sum of rungs that one could name beforehand, so the rung
// elements only bound it from below; piling says how.

// piling is how the rungs of a station's ladder are bounded from below.
//
// Where every depth is within every cap, the ladder has a rung at each depth
// and no other: an element for each depth, and the bound is exact. Elsewhere
// the height is cut into windows as wide as the greatest cap; a ladder that
// goes above a window's floor has a rung in that window.
type piling struct {
	depths []joinery.Length // ascending
	single bool
	most   joinery.Length // the greatest cap
}

// windows counts the windows a depth reaches into.
func (p *piling) windows(depth joinery.Length) int {
	return int((depth + p.most - 1) / p.most)
}

// rungs numbers the rung elements of the piling.
func (p *piling) rungs() int {
	if p.single {
		return len(p.depths)
	}
	return p.windows(p.depths[len(p.depths)-1])
}

// numberElements settles every station's piling and numbers the elements.
func (m *model) numberElements() {
	m.eachRun(func(r *run) {
		p := &m.stations[r.station].piles
		if at, found := slices.BinarySearch(p.depths, r.demand.Depth); !found {
			p.depths = slices.Insert(p.depths, at, r.demand.Depth)
		}
		p.most = max(p.most, r.demand.Cap)
	})
	for i := range m.stations {
		m.stations[i].piles.single = true
	}
	m.eachRun(func(r *run) {
		p := &m.stations[r.station].piles
		p.single = p.single && p.depths[len(p.depths)-1] <= r.demand.Cap
	})
	minutes := m.problem.Minutes
	m.costs = slices.Concat(
		slices.Repeat([]joinery.Time{minutes.Bit}, m.bits),
		slices.Repeat([]joinery.Time{minutes.Fence}, len(m.keys)))
	for _, s := range m.stations {
		m.costs = append(m.costs, m.blockCost(s))
	}
	for i := range m.stations {
		s := &m.stations[i]
		s.uneven = m.isUneven(&s.piles)
		m.uneven = m.uneven || s.uneven
		s.first = len(m.costs)
		rungs := s.piles.rungs()
		m.costs = append(m.costs, slices.Repeat([]joinery.Time{minutes.Height}, rungs)...)
		m.rungAt = append(m.rungAt, slices.Repeat([]int{i}, rungs)...)
	}
	for _, c := range []joinery.Time{minutes.Bit, minutes.Fence, minutes.Height, minutes.Stop} {
		m.grain = gcd(m.grain, c)
	}
	m.grain = max(m.grain, 1)
	for i := range m.kinds {
		m.gather(&m.kinds[i])
	}
}

func (m *model) isUneven(p *piling) bool {
	below := p.depths[:len(p.depths)-1]
	return !p.single && slices.ContainsFunc(below, func(d joinery.Length) bool { return !m.problem.Scale.On(d) })
}

func (m *model) blockCost(s station) joinery.Time {
	if s.blocks == 0 {
		return 0
	}
	return m.problem.Minutes.Stop
}

func gcd(a, b joinery.Time) joinery.Time {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (m *model) eachRun(do func(*run)) {
	for i := range m.kinds {
		for j := range m.kinds[i].ways {
			for k := range m.kinds[i].ways[j].runs {
				do(&m.kinds[i].ways[j].runs[k])
			}
		}
	}
}

// gather lists the elements of a kind and of its ways. Elements that cost
// nothing are left out.
func (m *model) gather(k *kind) {
	for i := range k.ways {
		w := &k.ways[i]
		for _, r := range w.runs {
			s := &m.stations[r.station]
			w.elems = append(w.elems, s.bit, m.keyElement(s.key), m.stationElement(r.station))
			w.elems = m.appendRungs(w.elems, r)
		}
		slices.Sort(w.elems)
		w.elems = slices.DeleteFunc(slices.Compact(w.elems), func(e int) bool { return m.costs[e] == 0 })
		k.elems = append(k.elems, w.elems...)
	}
	slices.Sort(k.elems)
	k.elems = slices.Compact(k.elems)
	for i := range k.ways {
		w := &k.ways[i]
		w.at = make([]int, len(w.elems))
		for j, e := range w.elems {
			w.at[j], _ = slices.BinarySearch(k.elems, e)
		}
	}
}

func (m *model) keyElement(key int) int         { return m.bits + key }
func (m *model) stationElement(station int) int { return m.bits + len(m.keys) + station }

// appendRungs appends the rung elements that a run needs.
func (m *model) appendRungs(to []int, r run) []int {
	s := &m.stations[r.station]
	if s.piles.single {
		at, _ := slices.BinarySearch(s.piles.depths, r.demand.Depth)
		return append(to, s.first+at)
	}
	for i := range s.piles.windows(r.demand.Depth) {
		to = append(to, s.first+i)
	}
	return to
}

// roundUp returns the least cost not below t: costs are multiples of the grain.
func (m *model) roundUp(t joinery.Time) joinery.Time {
	return (t + m.grain - 1) / m.grain * m.grain
}

// pile is the demands on one station, as more and fewer runs are put there.
type pile struct {
	demands []ladder.Demand // by depth, then cap; each once
	runs    []int           // how many runs make each demand
	rungs   int             // of the ladder
}

// place finds a demand or where it would stand.
func (p *pile) place(d ladder.Demand) (int, bool) {
	return slices.BinarySearchFunc(p.demands, d, compareDemands)
}

// add puts one run on the pile and returns whether the demand is a new one.
func (p *pile) add(d ladder.Demand) bool {
	at, found := p.place(d)
	if found {
		p.runs[at]++
		return false
	}
	p.demands = slices.Insert(p.demands, at, d)
	p.runs = slices.Insert(p.runs, at, 1)
	return true
}

// remove takes one run off and returns whether the demand is gone.
func (p *pile) remove(d ladder.Demand) bool {
	at, _ := p.place(d)
	if p.runs[at]--; p.runs[at] > 0 {
		return false
	}
	p.demands = slices.Delete(p.demands, at, at+1)
	p.runs = slices.Delete(p.runs, at, at+1)
	return true
}
