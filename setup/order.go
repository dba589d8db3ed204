package setup

import (
	"cmp"
	"container/heap"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// JobStep names one run of the way chosen for a job.
type JobStep struct{ Job, Step int }

// Visit is one setup of the table and the runs made there. The same key may be
// visited twice, where the order of the cuts forces it.
type Visit struct {
	Key   deck.Key
	Steps []JobStep
}

// Choice is the way chosen for each job, an index into its Ways.
type Choice []int

// plainOrder puts the chosen runs into setups in an order that is sensible
// without search: bits together, fences ascending, a setup only when all its
// runs may be made if that is possible. It keeps every `after` and the order
// of the runs of a way. It returns false where the jobs wait for each other in
// a circle.
func plainOrder(jobs []Job, choice Choice) ([]Visit, bool) {
	o := newOrdering(jobs, choice)
	var visits []Visit
	for left := len(o.runs); left > 0; {
		s := o.next()
		if s == nil {
			return nil, false
		}
		visit := Visit{Key: s.key, Steps: s.take()}
		visits = append(visits, visit)
		left -= len(visit.Steps)
		for _, r := range visit.Steps {
			o.done(r)
		}
		o.bit = s.key.Bit
	}
	return visits, true
}

// station is all runs of one key that are still to be made.
type station struct {
	key   deck.Key
	ready []JobStep // may be made now
	wait  int       // must wait for other runs
}

// take empties the ready runs, in the plan's order.
func (s *station) take() []JobStep {
	runs := s.ready
	s.ready = nil
	slices.SortFunc(runs, func(a, b JobStep) int {
		return cmp.Or(cmp.Compare(a.Job, b.Job), cmp.Compare(a.Step, b.Step))
	})
	return runs
}

// ordering is the state of plainOrder.
type ordering struct {
	runs     map[JobStep]*pending
	stations []*station // all, by bit and fence distance
	full     map[*joinery.Bit]*stationHeap
	bits     []*joinery.Bit // narrowest first
	bit      *joinery.Bit   // in the table now
}

// pending is a run, the runs it waits for, and those that wait for it.
type pending struct {
	at     *station
	before int
	then   []JobStep
}

func newOrdering(jobs []Job, choice Choice) *ordering {
	o := &ordering{runs: map[JobStep]*pending{}, full: map[*joinery.Bit]*stationHeap{}}
	byKey := map[deck.Key]*station{}
	for j := range jobs {
		way := jobs[j].Ways[choice[j]]
		for r, run := range way.Steps {
			s := byKey[run.Key()]
			if s == nil {
				s = &station{key: run.Key()}
				byKey[s.key] = s
				o.stations = append(o.stations, s)
			}
			o.runs[JobStep{j, r}] = &pending{at: s}
			if r > 0 && !run.Turned {
				o.link(JobStep{j, r - 1}, JobStep{j, r})
			}
		}
	}
	for j := range jobs {
		for _, k := range jobs[j].After {
			o.linkJobs(k, len(jobs[k].Ways[choice[k]].Steps), j, len(jobs[j].Ways[choice[j]].Steps))
		}
	}
	o.sort()
	for j := range jobs {
		for r := range jobs[j].Ways[choice[j]].Steps {
			o.settle(JobStep{j, r})
		}
	}
	for _, s := range o.stations {
		o.offer(s)
	}
	return o
}

// linkJobs makes every run of job k come before every run of job j.
func (o *ordering) linkJobs(k, kRuns, j, jRuns int) {
	for a := range kRuns {
		for b := range jRuns {
			o.link(JobStep{k, a}, JobStep{j, b})
		}
	}
}

func (o *ordering) link(first, then JobStep) {
	o.runs[first].then = append(o.runs[first].then, then)
	o.runs[then].before++
}

// sort puts stations and bits in the order they are tried.
func (o *ordering) sort() {
	slices.SortStableFunc(o.stations, func(a, b *station) int {
		return cmp.Or(
			cmp.Compare(a.key.Bit.True(), b.key.Bit.True()),
			cmp.Compare(a.key.Bit.Name, b.key.Bit.Name),
			cmp.Compare(a.key.NearEdge, b.key.NearEdge))
	})
	for _, s := range o.stations {
		if o.full[s.key.Bit] == nil {
			o.full[s.key.Bit] = &stationHeap{}
			o.bits = append(o.bits, s.key.Bit)
		}
	}
}

// settle counts a run as ready or waiting at its station.
func (o *ordering) settle(r JobStep) {
	p := o.runs[r]
	if p.before > 0 {
		p.at.wait++
	} else {
		p.at.ready = append(p.at.ready, r)
	}
}

// offer puts a station on its bit's heap once nothing there must wait.
func (o *ordering) offer(s *station) {
	if s.wait == 0 && len(s.ready) > 0 {
		heap.Push(o.full[s.key.Bit], s)
	}
}

// done frees the runs that waited for r.
func (o *ordering) done(r JobStep) {
	for _, next := range o.runs[r].then {
		p := o.runs[next]
		if p.before--; p.before == 0 {
			p.at.wait--
			p.at.ready = append(p.at.ready, next)
			o.offer(p.at)
		}
	}
}

// next returns the station to visit: of the bit in the table, else of the
// narrowest bit, else one whose other runs must come back later.
func (o *ordering) next() *station {
	if h := o.full[o.bit]; h != nil && h.Len() > 0 {
		return heap.Pop(h).(*station)
	}
	for _, b := range o.bits {
		if h := o.full[b]; h.Len() > 0 {
			return heap.Pop(h).(*station)
		}
	}
	var partly *station
	for _, s := range o.stations {
		if len(s.ready) > 0 && (partly == nil || s.key.Bit == o.bit && partly.key.Bit != o.bit) {
			partly = s
		}
	}
	return partly
}

// stationHeap is a heap by fence distance, the nearest first.
type stationHeap []*station

func (h stationHeap) Len() int           { return len(h) }
func (h stationHeap) Less(i, j int) bool { return h[i].key.NearEdge < h[j].key.NearEdge }
func (h stationHeap) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }

// Push and Pop are for package heap.
func (h *stationHeap) Push(x any) { *h = append(*h, x.(*station)) }

// Pop removes the last element, for package heap.
func (h *stationHeap) Pop() any {
	old := *h
	last := old[len(old)-1]
	*h = old[:len(old)-1]
	return last
}
