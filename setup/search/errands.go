package search

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// errand is a run, or runs that are alike, to be put in order.
type errand struct {
	station int
	demand  ladder.Demand
	over    joinery.Time // what one pass of it takes
	before  []int        // errands that must be in earlier ascents
	then    []int        // errands that wait for this one
	twin    int          // the other run of a turned piece, to be made at the same visit; -1 for none
	runs    []kindRun
}

// kindRun names a run of the way chosen for a kind.
type kindRun struct{ kind, run int }

// errands is the ordering of one choice of ways. Only what waits, or shares a
// station with what waits, is searched; the rest is put in anywhere.
type errands struct {
	m      *model
	choice []int // the way of each kind
	list   []errand
	at     [][]int // the errands of each station, by depth

	stations []int        // those of the list, ascending
	ofKey    [][]int      // the list's stations at each key
	ofBit    [][]int      // the list's stations on each bit
	idle     [][]int      // errands of stations where nothing waits, by station
	fixed    joinery.Time // what these cost

	tails []tail // of every errand; nil where there are too many

	visits pricing
	known  map[string][][]int // parts worked out before, by what was ready
	asked  []asked            // room to work in
	rough  bool               // some ascents were left untried
}

// newErrands lists the runs of a choice of ways, the way of each kind; -1
// leaves a kind out.
func newErrands(m *model, choice []int, visits pricing) *errands {
	e := &errands{m: m, choice: choice, visits: visits, known: map[string][][]int{},
		at: make([][]int, len(m.stations)), ofKey: make([][]int, len(m.keys)), ofBit: make([][]int, m.bits)}
	first := make([]int, len(choice)) // a kind's first errand
	for k, w := range choice {
		first[k] = len(e.list)
		if w < 0 {
			continue
		}
		way := &m.kinds[k].ways[w]
		for i, r := range way.runs {
			next := errand{station: r.station, demand: r.demand, over: r.over, twin: -1, runs: []kindRun{{k, i}}}
			if way.turned && len(way.runs) == 2 {
				next.twin = first[k] + 1 - i
			}
			e.list = append(e.list, next)
		}
	}
	e.link(choice, first)
	e.sortOut()
	e.price()
	if size := e.size(); size > 0 && size <= mostErrands {
		e.findTails()
	}
	return e
}

// link fills before and then.
func (e *errands) link(choice, first []int) {
	wait := func(before, then int) {
		e.list[then].before = append(e.list[then].before, before)
		e.list[before].then = append(e.list[before].then, then)
	}
	runs := func(k int) int { return len(e.m.kinds[k].ways[choice[k]].runs) }
	for k, w := range choice {
		if w < 0 {
			continue
		}
		for i := 1; i < runs(k) && !e.m.kinds[k].ways[w].turned; i++ {
			wait(first[k]+i-1, first[k]+i)
		}
		for _, b := range e.m.kinds[k].after {
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
func (e *errands) sortOut() {
	waits := make([]bool, e.m.bits)     // bits where some kind waits
	busy := make([]bool, len(e.m.keys)) // keys where some errand waits
	for i := range e.list {
		x := &e.list[i]
		s := e.m.stations[x.station]
		if e.m.kinds[x.runs[0].kind].tied {
			waits[s.bit] = true
		}
		if len(x.then) > 0 || len(x.before) > 0 {
			busy[s.key] = true
		}
		e.at[x.station] = append(e.at[x.station], i)
	}
	for s, at := range e.at {
		if len(at) == 0 {
			continue
		}
		slices.SortStableFunc(at, func(a, b int) int { return compareDemands(e.list[a].demand, e.list[b].demand) })
		station := e.m.stations[s]
		if !waits[station.bit] || !busy[station.key] {
			e.idle = append(e.idle, at)
			e.at[s] = nil
			continue
		}
		e.stations = append(e.stations, s)
		e.ofKey[station.key] = append(e.ofKey[station.key], s)
		e.ofBit[station.bit] = append(e.ofBit[station.bit], s)
	}
}

// price works out what the idle errands cost, and the cutting and fitting; a bit
// that others need too is paid there.
func (e *errands) price() {
	e.fixed = e.paidOnce(e.idle, func(bit int) bool { return len(e.ofBit[bit]) == 0 })
	fits := newSet(e.m.fits)
	for k, w := range e.choice {
		if w < 0 {
			continue
		}
		way := &e.m.kinds[k].ways[w]
		e.fixed += way.own
		for _, f := range way.fits {
			if !fits.has(f) {
				fits.add(f)
				e.fixed += e.m.problem.Minutes.Fit
			}
		}
	}
}

// once is what the errands to be put in order cost with everything paid once.
func (e *errands) once() joinery.Time {
	lists := make([][]int, len(e.stations))
	for i, s := range e.stations {
		lists[i] = e.at[s]
	}
	return e.paidOnce(lists, func(int) bool { return true })
}

// paidOnce is what the errands of some stations, ascending, cost with everything
// paid once, and of the bits those that are to be paid.
func (e *errands) paidOnce(lists [][]int, pays func(bit int) bool) joinery.Time {
	minutes := e.m.problem.Minutes
	var sum joinery.Time
	key, bit := -1, -1
	for _, at := range lists {
		id := e.list[at[0]].station
		s := e.m.stations[id]
		sum += e.heights(id, at) + e.m.blockCost(s)
		if s.key != key {
			key = s.key
			sum += minutes.Fence
		}
		if s.bit != bit {
			bit = s.bit
			if pays(bit) {
				sum += minutes.Bit
			}
		}
	}
	return sum
}

// demands lists what some errands of one station ask of the ladder; the
// errands must be by depth.
func (e *errands) demands(list []int) []ladder.Demand {
	demands := make([]ladder.Demand, len(list))
	for i, x := range list {
		demands[i] = e.list[x].demand
	}
	return demands
}

// heights is what a visit of some errands to their station takes.
func (e *errands) heights(station int, list []int) joinery.Time {
	e.asked = e.asked[:0]
	for _, x := range list {
		e.asked = gatherAsked(e.asked, e.list[x].demand, e.list[x].over)
	}
	return e.visits.cost(station, e.asked)
}
