package model

import (
	"encoding/binary"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// Runs at one station go up one ladder together, as a rule. But a ladder made for
// several may have a run take more passes than it would take alone, and passes
// cost time: then it may be cheaper to go up twice, the table untouched but for
// the heights. A visit is the best way to part some runs at a station into ascents.

// Asked is what the runs of one demand come to.
type Asked struct {
	ladder.Demand
	Over joinery.Time // what one pass of all of them takes
}

// visit is what the heights of one take, and the passes beyond the fewest.
type visit struct {
	cost  joinery.Time
	least joinery.Time // no way to part the runs costs less
	Parts []uint       // which demands make an ascent together, as bits; nil where all do
}

const (
	mostParted = 6  // different demands that are parted in every way; more are packed one by one
	mostPacked = 60 // more go up together
)

// Visit works out the visit of some demands, sorted and each there once.
func (m *Model) Visit(station int, list []Asked) visit {
	key := make([]byte, 0, 128)
	if list[0].Section.Shaped() { // the same depths of another outline are other wood
		key = binary.AppendVarint(key, int64(-1-station))
	}
	for _, a := range list {
		key = binary.AppendVarint(key, int64(a.Depth))
		key = binary.AppendVarint(key, int64(a.Cap))
		key = binary.AppendVarint(key, int64(a.From))
		key = binary.AppendVarint(key, int64(a.Over))
	}
	v, ok := m.visits[string(key)]
	if !ok {
		v = m.newVisit(list)
		m.visits[string(key)] = v
	}
	return v
}

func (m *Model) newVisit(list []Asked) visit {
	rungs, extra := m.together(list)
	v := visit{cost: rungs + extra, least: rungs}
	switch {
	case extra == 0 || len(list) > mostPacked:
	case len(list) > mostParted:
		m.pack(list, &v)
	default:
		v.cost, v.Parts = m.part(list, uint(1)<<len(list)-1)
		v.least = v.cost
	}
	return v
}

// pack puts each of many demands, the deepest first, to those that it goes up with
// at the least cost, and keeps that if it costs less than all together.
func (m *Model) pack(list []Asked, v *visit) {
	var parts []uint
	var costs []joinery.Time
	var sum joinery.Time
	for i := len(list) - 1; i >= 0; i-- {
		rungs, _ := m.ascent(list, 1<<i)
		into, least := len(parts), rungs
		for j := range parts {
			rungs, extra := m.ascent(list, parts[j]|1<<i)
			if more := rungs + extra - costs[j]; more < least {
				into, least = j, more
			}
		}
		if into == len(parts) {
			parts, costs = append(parts, 0), append(costs, 0)
		}
		parts[into] |= 1 << i
		costs[into] += least
		sum += least
	}
	if sum < v.cost {
		v.cost, v.Parts = sum, parts
	}
}

// part finds the cheapest way to part some demands, given as bits.
func (m *Model) part(list []Asked, all uint) (joinery.Time, []uint) {
	cheapest := make([]joinery.Time, all+1)
	first := make([]uint, all+1)         // the ascent that holds the least demand
	alone := make([]joinery.Time, all+1) // as one ascent
	for set := uint(1); set <= all; set++ {
		rungs, extra := m.ascent(list, set)
		alone[set] = rungs + extra
		cheapest[set], first[set] = alone[set], set
		least := set & -set
		for with := (set - 1) & set; with > 0; with = (with - 1) & set {
			if with&least == 0 {
				continue
			}
			if cost := alone[with] + cheapest[set&^with]; cost < cheapest[set] {
				cheapest[set], first[set] = cost, with
			}
		}
	}
	var parts []uint
	for left := all; left > 0; left &^= first[left] {
		parts = append(parts, first[left])
	}
	return cheapest[all], parts
}

// ascent is what some of the demands cost in one ascent, given as bits.
func (m *Model) ascent(list []Asked, set uint) (rungs, extra joinery.Time) {
	some := make([]Asked, 0, len(list))
	for i, a := range list {
		if set&(1<<i) != 0 {
			some = append(some, a)
		}
	}
	return m.together(some)
}

// together is what the rungs of one ladder for all demands cost, and the passes
// beyond the fewest.
func (m *Model) together(list []Asked) (rungs, extra joinery.Time) {
	demands := make([]ladder.Demand, len(list))
	for i, a := range list {
		demands[i] = a.Demand
	}
	heights := ladder.Of(demands, m.Problem.Scale)
	for _, a := range list {
		extra += a.Over * joinery.Time(len(ladder.Used(heights, a.Demand))-a.Passes())
	}
	return joinery.Time(len(heights)) * m.Problem.Minutes.Height, extra
}

// Pricing says what a visit of some runs to a station takes: what it comes to,
// and the least that it and more visits for the same runs come to.
type Pricing struct {
	Cost, Least func(station int, list []Asked) joinery.Time
}

// Truly prices visits as they are.
func (m *Model) Truly() Pricing {
	if len(m.visits) > mostVisits {
		m.visits = map[string]visit{}
	}
	return Pricing{
		func(station int, list []Asked) joinery.Time {
			if m.Plain(station, list) {
				return m.rungs(list)
			}
			return m.Visit(station, list).cost
		},
		m.AtLeast,
	}
}

// mostVisits is how many visits are remembered.
const mostVisits = 100_000

// AtLeast prices visits by the least they may come to.
func (m *Model) AtLeast(station int, list []Asked) joinery.Time {
	if m.Plain(station, list) {
		return m.rungs(list)
	}
	return m.Visit(station, list).least
}

// Plain reports whether what some runs cost at a station is their rungs: none takes
// a pass beyond the fewest. A shaped edge may even alone, where the scale shows no
// height for a full bite.
func (m *Model) Plain(station int, list []Asked) bool {
	return !m.Stations[station].Mixed || len(list) == 0 || len(list) == 1 && !list[0].Section.Shaped()
}

// rungs is what the rungs of one ladder cost.
func (m *Model) rungs(list []Asked) joinery.Time {
	m.asked = m.asked[:0]
	for _, a := range list {
		m.asked = append(m.asked, a.Demand)
	}
	return joinery.Time(ladder.Count(m.asked, m.Problem.Scale)) * m.Problem.Minutes.Height
}

// GatherAsked puts one more run into a list that is sorted by demand.
func GatherAsked(list []Asked, d ladder.Demand, over joinery.Time) []Asked {
	if n := len(list); n > 0 && list[n-1].Demand == d {
		list[n-1].Over += over
		return list
	}
	return append(list, Asked{d, over})
}

// mixes reports whether a ladder made for some demands may have a run take more
// passes than are counted for it alone.
func (m *Model) mixes(demands []ladder.Demand) bool {
	if m.Problem.Minutes.Pass == 0 || len(demands) < 2 && !demands[0].Section.Shaped() {
		return false
	}
	if demands[0].Every {
		return true
	}
	deepest := demands[len(demands)-1].Depth
	return slices.ContainsFunc(demands, func(d ladder.Demand) bool {
		d.Depth, d.From = deepest, 0
		return d.Passes() > 1
	})
}
