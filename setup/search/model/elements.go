package model

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// An element is something that is paid once by all who need it: a bit, a fence
// distance, a pair of blocks, a trial of fit, or a rung in a region of a station's
// ladder. Elements are numbered: bits, then keys, then stations, then trials, then
// regions, station by station.

// NumberElements cuts every station's height into regions that fit the ascents
// in use, by station, and numbers the elements.
func (m *Model) NumberElements(used [][][]ladder.Demand) {
	minutes := m.Problem.Minutes
	m.Costs = slices.Concat(
		slices.Repeat([]joinery.Time{minutes.Bit}, m.Bits),
		slices.Repeat([]joinery.Time{minutes.Fence}, len(m.Keys)))
	for _, s := range m.Stations {
		m.Costs = append(m.Costs, m.BlockCost(s))
	}
	m.Costs = append(m.Costs, slices.Repeat([]joinery.Time{minutes.Fit}, m.Fits)...)
	m.RegionAt = nil
	for i := range m.Stations {
		s := &m.Stations[i]
		s.Regions, s.Exact = regions(s.demands, used[i])
		s.first = len(m.Costs)
		m.Costs = append(m.Costs, slices.Repeat([]joinery.Time{minutes.Height}, len(s.Regions))...)
		m.RegionAt = append(m.RegionAt, slices.Repeat([]int{i}, len(s.Regions))...)
	}
	m.findCoin()
	for i := range m.Kinds {
		m.gather(&m.Kinds[i])
	}
}

func (m *Model) findCoin() {
	minutes := m.Problem.Minutes
	m.Coin = 0
	for _, c := range []joinery.Time{minutes.Bit, minutes.Fence, minutes.Height, minutes.Stop, minutes.Fit} {
		m.Coin = gcd(m.Coin, c)
	}
	for i := range m.Kinds {
		for _, w := range m.Kinds[i].Ways {
			m.Coin = gcd(m.Coin, w.Own)
			for _, r := range w.Runs {
				if m.Stations[r.Station].Mixed {
					m.Coin = gcd(m.Coin, r.Over)
				}
			}
		}
	}
	m.Coin = max(m.Coin, 1)
}

// gatherDemands lists what may be asked of each station, and finds the uneven
// ones.
func (m *Model) gatherDemands() {
	for i := range m.Kinds {
		for _, w := range m.Kinds[i].Ways {
			for _, r := range w.Runs {
				s := &m.Stations[r.Station]
				if at, found := slices.BinarySearchFunc(s.demands, r.Demand, CompareDemands); !found {
					s.demands = slices.Insert(s.demands, at, r.Demand)
				}
			}
		}
	}
	for i := range m.Stations {
		s := &m.Stations[i]
		deepest := s.demands[len(s.demands)-1].Depth
		s.Uneven = slices.ContainsFunc(s.demands, func(d ladder.Demand) bool {
			return d.Depth < deepest && !m.Problem.Scale.On(d.Depth)
		})
		s.Mixed = m.mixes(s.demands)
	}
}

// BlockCost is what a station's pair of blocks costs.
func (m *Model) BlockCost(s station) joinery.Time {
	if s.blocks == 0 {
		return 0
	}
	return m.Problem.Minutes.Stop
}

func gcd(a, b joinery.Time) joinery.Time {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// gather lists the elements of a kind and of its ways. Elements that cost
// nothing are left out.
func (m *Model) gather(k *Kind) {
	k.Elems = nil
	for i := range k.Ways {
		w := &k.Ways[i]
		w.Elems = nil
		for _, f := range w.Fits {
			w.Elems = append(w.Elems, m.StationElement(len(m.Stations))+f)
		}
		for _, r := range w.Runs {
			s := &m.Stations[r.Station]
			w.Elems = append(w.Elems, s.Bit, m.keyElement(s.Key), m.StationElement(r.Station))
			for j, cut := range s.Regions {
				if cut.needed(r.Demand) {
					w.Elems = append(w.Elems, s.first+j)
				}
			}
		}
		slices.Sort(w.Elems)
		w.Elems = slices.DeleteFunc(slices.Compact(w.Elems), func(e int) bool { return m.Costs[e] == 0 })
		k.Elems = append(k.Elems, w.Elems...)
	}
	slices.Sort(k.Elems)
	k.Elems = slices.Compact(k.Elems)
	for i := range k.Ways {
		w := &k.Ways[i]
		w.At = make([]int, len(w.Elems))
		for j, e := range w.Elems {
			w.At[j], _ = slices.BinarySearch(k.Elems, e)
		}
	}
}

func (m *Model) keyElement(key int) int { return m.Bits + key }

// StationElement is the element of a station's blocks.
func (m *Model) StationElement(station int) int { return m.Bits + len(m.Keys) + station }

// FirstRegion is the first element that is a region.
func (m *Model) FirstRegion() int { return m.StationElement(len(m.Stations)) + m.Fits }

// RoundUp returns the least cost not below t: costs are multiples of the coin.
func (m *Model) RoundUp(t joinery.Time) joinery.Time {
	return (t + m.Coin - 1) / m.Coin * m.Coin
}
