package order

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
	"fencecard/setup/search/model"
)

// errand is a run, or runs that are alike, to be put in order.
type errand struct {
	station int
	Demand  ladder.Demand
	over    joinery.Time // what one pass of it takes
	before  []int        // errands that must be in earlier ascents
	then    []int        // errands that wait for this one
	twin    int          // the other run of a turned piece, to be made at the same visit; -1 for none
	Runs    []KindRun
}

// KindRun names a run of the way chosen for a kind.
type KindRun struct{ Kind, run int }

// Errands is the ordering of one choice of ways. Only what waits, or shares a
// station with what waits, is searched; the rest is put in anywhere.
type Errands struct {
	M      *model.Model
	Choice []int // the way of each kind
	List   []errand
	At     [][]int // the errands of each station, by depth

	stations []int        // those of the list, ascending
	ofKey    [][]int      // the list's stations at each key
	ofBit    [][]int      // the list's stations on each bit
	idle     [][]int      // errands of stations where nothing waits, by station
	Fixed    joinery.Time // what these cost

	chains []chain // of every errand; nil where there are too many

	visits model.Pricing
	known  map[string][][]int // parts worked out before, by what was ready
	asked  []model.Asked      // room to work in
	rough  bool               // some ascents were left untried
}

// NewErrands lists the runs of a choice of ways, the way of each kind; -1
// leaves a kind out.
func NewErrands(m *model.Model, choice []int, visits model.Pricing) *Errands {
	e := &Errands{M: m, Choice: choice, visits: visits, known: map[string][][]int{},
		At: make([][]int, len(m.Stations)), ofKey: make([][]int, len(m.Keys)), ofBit: make([][]int, m.Bits)}
	first := make([]int, len(choice)) // a kind's first errand
	for k, w := range choice {
		first[k] = len(e.List)
		if w < 0 {
			continue
		}
		way := &m.Kinds[k].Ways[w]
		for i, r := range way.Runs {
			next := errand{station: r.Station, Demand: r.Demand, over: r.Over, twin: -1, Runs: []KindRun{{k, i}}}
			if way.Turned && len(way.Runs) == 2 {
				next.twin = first[k] + 1 - i
			}
			e.List = append(e.List, next)
		}
	}
	e.link(choice, first)
	e.sortOut()
	e.price()
	if size := e.size(); size > 0 && size <= mostErrands {
		e.findChains()
	}
	return e
}

// link fills before and then.
func (e *Errands) link(choice, first []int) {
	wait := func(before, then int) {
		e.List[then].before = append(e.List[then].before, before)
		e.List[before].then = append(e.List[before].then, then)
	}
	runs := func(k int) int { return len(e.M.Kinds[k].Ways[choice[k]].Runs) }
	for k, w := range choice {
		if w < 0 {
			continue
		}
		for i := 1; i < runs(k) && !e.M.Kinds[k].Ways[w].Turned; i++ {
			wait(first[k]+i-1, first[k]+i)
		}
		for _, b := range e.M.Kinds[k].After {
			if choice[b] < 0 {
				continue
			}
			for i := range runs(b) {
				for j := range runs(k) {
					wait(first[b]+i, first[k]+j)
				}
			}
		}
	}
}

// sortOut indexes the errands by station, and sets those aside that nothing
// waits for and that wait for nothing: whole bits where no kind waits for
// another, and else whole keys.
func (e *Errands) sortOut() {
	waits := make([]bool, e.M.Bits)     // bits where some kind waits
	busy := make([]bool, len(e.M.Keys)) // keys where some errand waits
	for i := range e.List {
		x := &e.List[i]
		s := e.M.Stations[x.station]
		if e.M.Kinds[x.Runs[0].Kind].Tied {
			waits[s.Bit] = true
		}
		if len(x.then) > 0 || len(x.before) > 0 {
			busy[s.Key] = true
		}
		e.At[x.station] = append(e.At[x.station], i)
	}
	for s, at := range e.At {
		if len(at) == 0 {
			continue
		}
		slices.SortStableFunc(at, func(a, b int) int { return model.CompareDemands(e.List[a].Demand, e.List[b].Demand) })
		station := e.M.Stations[s]
		if !waits[station.Bit] || !busy[station.Key] {
			e.idle = append(e.idle, at)
			e.At[s] = nil
			continue
		}
		e.stations = append(e.stations, s)
		e.ofKey[station.Key] = append(e.ofKey[station.Key], s)
		e.ofBit[station.Bit] = append(e.ofBit[station.Bit], s)
	}
}

// price works out what the idle errands cost, and the cutting and fitting; a bit
// that others need too is paid there.
func (e *Errands) price() {
	e.Fixed = e.paidOnce(e.idle, func(bit int) bool { return len(e.ofBit[bit]) == 0 })
	fits := model.NewSet(e.M.Fits)
	for k, w := range e.Choice {
		if w < 0 {
			continue
		}
		way := &e.M.Kinds[k].Ways[w]
		e.Fixed += way.Own
		for _, f := range way.Fits {
			if !fits.Has(f) {
				fits.Add(f)
				e.Fixed += e.M.Problem.Minutes.Fit
			}
		}
	}
}

// Once is what the errands to be put in order cost with everything paid once.
func (e *Errands) Once() joinery.Time {
	lists := make([][]int, len(e.stations))
	for i, s := range e.stations {
		lists[i] = e.At[s]
	}
	return e.paidOnce(lists, func(int) bool { return true })
}

// paidOnce is what the errands of some stations, ascending, cost with everything
// paid once, and of the bits those that are to be paid.
func (e *Errands) paidOnce(lists [][]int, pays func(bit int) bool) joinery.Time {
	minutes := e.M.Problem.Minutes
	var sum joinery.Time
	key, bit := -1, -1
	for _, at := range lists {
		id := e.List[at[0]].station
		s := e.M.Stations[id]
		sum += e.heights(id, at) + e.M.BlockCost(s)
		if s.Key != key {
			key = s.Key
			sum += minutes.Fence
		}
		if s.Bit != bit {
			bit = s.Bit
			if pays(bit) {
				sum += minutes.Bit
			}
		}
	}
	return sum
}

// Demands lists what some errands of one station ask of the ladder; the
// errands must be by depth.
func (e *Errands) Demands(list []int) []ladder.Demand {
	demands := make([]ladder.Demand, len(list))
	for i, x := range list {
		demands[i] = e.List[x].Demand
	}
	return demands
}

// heights is what a visit of some errands to their station takes.
func (e *Errands) heights(station int, list []int) joinery.Time {
	e.asked = e.asked[:0]
	for _, x := range list {
		e.asked = model.GatherAsked(e.asked, e.List[x].Demand, e.List[x].over)
	}
	return e.visits.Cost(station, e.asked)
}
