package search

import (
	"math/rand/v2"
	"slices"

	"fencecard/joinery"
)

// improvement is a search for cheaper answers by taking a few jobs that have
// settings in common out of the best one and putting each back where it is
// cheapest, again and again. Small changes for the worse are kept for a while, less
// and less of them.
type improvement struct {
	s      *solver
	q      *sequence
	p      *placing
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
	i := &improvement{s: s, q: newSequence(s.m), p: &placing{random: rand.New(rand.NewPCG(1, 2)), b: s.b}, groups: make([][]int, s.m.groups)}
	for k := range s.m.kinds {
		i.groups[s.m.kinds[k].group] = append(i.groups[s.m.kinds[k].group], k)
	}
	i.q.load(start.choice, start.visited())
	i.run()
}

func (i *improvement) run() {
	now := i.q.spelt()
	way := slices.Clone(i.q.way)
	cost, best := i.q.cost, i.q.cost
	bestWay, bestVisits := way, now
	steps := i.s.b.left
	for stale := 0; stale < roundsForOne*len(i.s.m.kinds) && i.s.bound < best && i.s.b.spend(len(i.q.stops)); stale++ {
		// What may be kept for the worse: half a fence setting at first, nothing in the end.
		worse := joinery.Time(int64(i.s.m.problem.Minutes.Fence) / 2 * (i.s.b.left >> 10) / (steps>>10 + 1))
		i.round()
		if i.whole() && i.q.cost <= cost+joinery.Time(i.p.random.Int64N(int64(worse)+1)) {
			now, way, cost = i.q.spelt(), slices.Clone(i.q.way), i.q.cost
			if cost < best {
				best, bestWay, bestVisits, stale = cost, way, now, 0
			}
			continue
		}
		i.q.load(way, now)
	}
	if best < i.s.cost {
		i.s.keepVisits(bestWay, bestVisits)
	}
}

// whole reports whether everything is put in.
func (i *improvement) whole() bool { return !slices.Contains(i.q.way, -1) }

// round takes some kinds out and puts them back.
func (i *improvement) round() {
	out := i.choose()
	for _, k := range out {
		i.q.takeOut(k)
	}
	i.p.late = i.p.random.IntN(2) == 0
	for _, k := range i.inOrder(out) {
		in, ok := i.q.cheapest(k, i.p)
		if !ok {
			return
		}
		i.q.putIn(k, in)
	}
}

// choose picks the kinds to take out: those with a run at some stops in a row, for
// which the fence or the bit stays, and with them sometimes all that they wait for
// and that waits for them.
func (i *improvement) choose() []int {
	random, q := i.p.random, i.q
	at := random.IntN(len(q.stops))
	alike := func(s *stop) int { return q.m.stations[s.station].key }
	if random.IntN(4) == 0 {
		alike = func(s *stop) int { return q.m.stations[s.station].bit }
	}
	from, to := at, at+1
	for from > 0 && alike(q.stops[from-1]) == alike(q.stops[at]) {
		from--
	}
	for to < len(q.stops) && alike(q.stops[to]) == alike(q.stops[at]) {
		to++
	}
	seen := map[int]bool{}
	var out []int
	add := func(kind int) {
		w := &q.m.kinds[kind].ways[q.way[kind]]
		if !seen[kind] && !(w.turned && len(w.runs) > 1) && len(w.runs) <= mostRuns {
			out = append(out, kind)
		}
		seen[kind] = true
	}
	groups := random.IntN(2) == 0
	for _, s := range q.stops[from:to] {
		for _, r := range s.runs {
			add(r.kind)
			if groups {
				for _, k := range i.groups[q.m.kinds[r.kind].group] {
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
		before := i.q.m.kinds[k].after
		if i.p.late {
			before = i.q.then[k]
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
func (o ordered) visited() []visited {
	var all []visited
	for _, s := range o.stays(o.last) {
		for _, t := range s.ascents {
			v := visited{station: t.station}
			for _, x := range t.list {
				v.runs = append(v.runs, o.list[x].runs...)
			}
			all = append(all, v)
		}
	}
	return all
}

// keepVisits keeps an answer given by its visits.
func (s *solver) keepVisits(way []int, visits []visited) {
	e := s.errands(way)
	at := map[kindRun]int{}
	for x := range e.list {
		at[e.list[x].runs[0]] = x
	}
	last := e.start()
	for _, v := range visits {
		if len(e.at[v.station]) == 0 { // nothing waits there
			continue
		}
		t := ascent{station: v.station}
		for _, r := range v.runs {
			t.list = append(t.list, at[r])
		}
		slices.SortStableFunc(t.list, func(a, b int) int { return compareDemands(e.list[a].demand, e.list[b].demand) })
		last = e.follow(last, t)
	}
	if order := (ordered{e, last}); order.cost() < s.cost {
		s.keep(way, order)
	}
}
