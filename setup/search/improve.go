package search

import (
	"math/rand/v2"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
	"fencecard/setup/search/model"
	"fencecard/setup/search/order"
)

// improvement is a search for cheaper answers by taking a few jobs that have
// settings in common out of the best one and putting each back where it is
// cheapest, again and again. Small changes for the worse are kept for a while, less
// and less of them.
type improvement struct {
	s      *solver
	q      *order.Sequence
	p      *order.Placing
	groups [][]int // of kinds that wait for one another
}

const (
	mostTakenOut = 20 // kinds at one time
	roundsForOne = 10 // for every kind, so many rounds without anything better end it
)

// improve looks for answers that cost less than the best, from that or else from
// another.
func (s *solver) improve(start ordered) {
	if s.choice != nil {
		start = s.order
	}
	i := &improvement{s: s, q: order.NewSequence(s.m), p: &order.Placing{Random: rand.New(rand.NewPCG(1, 2)), B: s.b}, groups: make([][]int, s.m.Groups)}
	for k := range s.m.Kinds {
		i.groups[s.m.Kinds[k].Group] = append(i.groups[s.m.Kinds[k].Group], k)
	}
	i.q.Load(start.Choice, start.visited())
	i.run()
}

func (i *improvement) run() {
	now := i.q.Spelt()
	way := slices.Clone(i.q.Way)
	cost, best := i.q.Cost, i.q.Cost
	bestWay, bestVisits := way, now
	steps := i.s.b.Left
	for stale := 0; stale < roundsForOne*len(i.s.m.Kinds) && i.s.bound < best && i.s.b.Spend(len(i.q.Stops)); stale++ {
		// What may be kept for the worse: half a fence setting at first, nothing in the end.
		worse := joinery.Time(int64(i.s.m.Problem.Minutes.Fence) / 2 * (i.s.b.Left >> 10) / (steps>>10 + 1))
		i.round()
		if i.whole() && i.q.Cost <= cost+joinery.Time(i.p.Random.Int64N(int64(worse)+1)) {
			now, way, cost = i.q.Spelt(), slices.Clone(i.q.Way), i.q.Cost
			if cost < best {
				best, bestWay, bestVisits, stale = cost, way, now, 0
			}
			continue
		}
		i.q.Load(way, now)
	}
	if best < i.s.cost {
		i.s.keepVisits(bestWay, bestVisits)
	}
}

// whole reports whether everything is put in.
func (i *improvement) whole() bool { return !slices.Contains(i.q.Way, -1) }

// round takes some kinds out and puts them back.
func (i *improvement) round() {
	out := i.choose()
	for _, k := range out {
		i.q.TakeOut(k)
	}
	i.p.Late = i.p.Random.IntN(2) == 0
	for _, k := range i.inOrder(out) {
		in, ok := i.q.Cheapest(k, i.p)
		if !ok {
			return
		}
		i.q.PutIn(k, in)
	}
}

// choose picks the kinds to take out: those with a run at some stops in a row, for
// which the fence or the bit stays, and with them sometimes all that they wait for
// and that waits for them.
func (i *improvement) choose() []int {
	random, q := i.p.Random, i.q
	at := random.IntN(len(q.Stops))
	alike := func(s *order.Stop) int { return q.M.Stations[s.Station].Key }
	if random.IntN(4) == 0 {
		alike = func(s *order.Stop) int { return q.M.Stations[s.Station].Bit }
	}
	from, to := at, at+1
	for from > 0 && alike(q.Stops[from-1]) == alike(q.Stops[at]) {
		from--
	}
	for to < len(q.Stops) && alike(q.Stops[to]) == alike(q.Stops[at]) {
		to++
	}
	seen := map[int]bool{}
	var out []int
	add := func(kind int) {
		w := &q.M.Kinds[kind].Ways[q.Way[kind]]
		if !seen[kind] && !(w.Turned && len(w.Runs) > 1) && len(w.Runs) <= order.MostRuns {
			out = append(out, kind)
		}
		seen[kind] = true
	}
	groups := random.IntN(2) == 0
	for _, s := range q.Stops[from:to] {
		for _, r := range s.Runs {
			add(r.Kind)
			if groups {
				for _, k := range i.groups[q.M.Kinds[r.Kind].Group] {
					add(k)
				}
			}
		}
	}
	random.Shuffle(len(out), func(a, b int) { out[a], out[b] = out[b], out[a] })
	return out[:min(len(out), mostTakenOut)]
}

// inOrder sorts kinds so that each comes after those it waits for, or where places
// are late before them.
func (i *improvement) inOrder(kinds []int) []int {
	out := map[int]bool{}
	for _, k := range kinds {
		out[k] = true
	}
	sorted := make([]int, 0, len(kinds))
	var visit func(k int)
	visit = func(k int) {
		if !out[k] {
			return
		}
		out[k] = false
		before := i.q.M.Kinds[k].After
		if i.p.Late {
			before = i.q.Then[k]
		}
		for _, b := range before {
			visit(b)
		}
		sorted = append(sorted, k)
	}
	for _, k := range kinds {
		visit(k)
	}
	return sorted
}

// visited lists the visits of an order.
func (o ordered) visited() []order.Visited {
	var all []order.Visited
	for _, s := range o.Stays(o.last) {
		for _, t := range s.Ascents {
			v := order.Visited{Station: t.Station}
			for _, x := range t.List {
				v.Runs = append(v.Runs, o.List[x].Runs...)
			}
			all = append(all, v)
		}
	}
	return all
}

// keepVisits keeps an answer given by its visits.
func (s *solver) keepVisits(way []int, visits []order.Visited) {
	e := s.errands(way)
	at := map[order.KindRun]int{}
	for x := range e.List {
		at[e.List[x].Runs[0]] = x
	}
	last := e.Start()
	for _, v := range visits {
		if len(e.At[v.Station]) == 0 { // nothing waits there
			continue
		}
		t := order.Ascent{Station: v.Station}
		for _, r := range v.Runs {
			t.List = append(t.List, at[r])
		}
		slices.SortStableFunc(t.List, func(a, b int) int { return model.CompareDemands(e.List[a].Demand, e.List[b].Demand) })
		last = e.Follow(last, t)
	}
	if order := (ordered{e, last}); order.cost() < s.cost {
		s.keep(way, order)
	}
}

// uses lists, by station, the demands of its ascents.
func (o ordered) uses() [][][]ladder.Demand {
	used := make([][][]ladder.Demand, len(o.M.Stations))
	for _, s := range o.Stays(o.last) {
		for _, t := range s.Ascents {
			used[t.Station] = append(used[t.Station], o.Demands(t.List))
		}
	}
	return used
}
