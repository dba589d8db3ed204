package search

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// An element is something that is paid once by all who need it: a bit, a fence
// distance, a pair of blocks, a trial of fit, or a rung in a region of a station's
// ladder. Elements are numbered: bits, then keys, then stations, then trials, then
// regions, station by station.

// numberElements cuts every station's height into regions that fit the ascents
// in use, by station, and numbers the elements.
func (m *model) numberElements(used [][][]ladder.Demand) {
	minutes := m.problem.Minutes
	m.costs = slices.Concat(
		slices.Repeat([]joinery.Time{minutes.Bit}, m.bits),
		slices.Repeat([]joinery.Time{minutes.Fence}, len(m.keys)))
	for _, s := range m.stations {
		m.costs = append(m.costs, m.blockCost(s))
	}
	m.costs = append(m.costs, slices.Repeat([]joinery.Time{minutes.Fit}, m.fits)...)
	m.regionAt = nil
	for i := range m.stations {
		s := &m.stations[i]
		s.regions, s.exact = regions(s.demands, used[i])
		s.first = len(m.costs)
		m.costs = append(m.costs, slices.Repeat([]joinery.Time{minutes.Height}, len(s.regions))...)
		m.regionAt = append(m.regionAt, slices.Repeat([]int{i}, len(s.regions))...)
	}
	m.findGrain()
	for i := range m.kinds {
		m.gather(&m.kinds[i])
	}
}

func (m *model) findGrain() {
	minutes := m.problem.Minutes
	m.grain = 0
	for _, c := range []joinery.Time{minutes.Bit, minutes.Fence, minutes.Height, minutes.Stop, minutes.Fit} {
		m.grain = gcd(m.grain, c)
	}
	for i := range m.kinds {
		for _, w := range m.kinds[i].ways {
			m.grain = gcd(m.grain, w.own)
			for _, r := range w.runs {
				if m.stations[r.station].mixed {
					m.grain = gcd(m.grain, r.over)
				}
			}
		}
	}
	m.grain = max(m.grain, 1)
}

// gatherDemands lists what may be asked of each station, and finds the uneven
// ones.
func (m *model) gatherDemands() {
	for i := range m.kinds {
		for _, w := range m.kinds[i].ways {
			for _, r := range w.runs {
				s := &m.stations[r.station]
				if at, found := slices.BinarySearchFunc(s.demands, r.demand, compareDemands); !found {
					s.demands = slices.Insert(s.demands, at, r.demand)
				}
			}
		}
	}
	for i := range m.stations {
		s := &m.stations[i]
		deepest := s.demands[len(s.demands)-1].Depth
		s.uneven = slices.ContainsFunc(s.demands, func(d ladder.Demand) bool {
			return d.Depth < deepest && !m.problem.Scale.On(d.Depth)
		})
		s.mixed = m.mixes(s.demands)
	}
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

// gather lists the elements of a kind and of its ways. Elements that cost
// nothing are left out.
func (m *model) gather(k *kind) {
	k.elems = nil
	for i := range k.ways {
		w := &k.ways[i]
		w.elems = nil
		for _, f := range w.fits {
			w.elems = append(w.elems, m.stationElement(len(m.stations))+f)
		}
		for _, r := range w.runs {
			s := &m.stations[r.station]
			w.elems = append(w.elems, s.bit, m.keyElement(s.key), m.stationElement(r.station))
			for j, cut := range s.regions {
				if cut.needed(r.demand) {
					w.elems = append(w.elems, s.first+j)
				}
			}
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
func (m *model) firstRegion() int               { return m.stationElement(len(m.stations)) + m.fits }

// roundUp returns the least cost not below t: costs are multiples of the grain.
func (m *model) roundUp(t joinery.Time) joinery.Time {
	return (t + m.grain - 1) / m.grain * m.grain
}
