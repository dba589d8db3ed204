package search

import (
	"context"
	"slices"

	"fencecard/joinery"
)

// Solve finds the cheapest answer, or the cheapest it comes upon within its
// limit, with a bound below which there is none. Called off, it gives the best
// so far.
func Solve(ctx context.Context, p *Problem, l Limit) *Answer {
	s := &solver{m: newModel(p), b: newBudget(ctx, l)}
	s.solve()
	return s.answer()
}

// answer spells out the best found.
func (s *solver) answer() *Answer {
	a := &Answer{Cost: s.cost + s.m.fixed, Bound: min(s.bound, s.cost) + s.m.fixed, Ended: s.b.ended}
	if s.choice == nil {
		return a
	}
	a.Choice = make([]int, len(s.m.problem.Jobs))
	a.Ascents = s.order.spelt(s.order.last)
	for k := range s.m.kinds {
		for _, j := range s.m.kinds[k].jobs {
			a.Choice[j] = s.choice[k]
		}
	}
	return a
}

// solver is one run of Solve.
type solver struct {
	m      *model
	b      *budget
	choice []int // the best found, the way of each kind
	order  ordered
	cost   joinery.Time
	bound  joinery.Time
}

func (s *solver) solve() {
	s.cost = noLimit
	if known := s.m.problem.Known; known > 0 {
		s.cost = known - s.m.fixed
	}
	u := s.unordered()
	s.bound = u.bound
	start := s.quickly(u.choice)
	if !s.m.tied && !s.m.open() {
		return
	}
	s.quickly(make([]int, len(u.choice))) // the first ways are easier to put in order, having the fewest runs
	if len(s.m.kinds) <= mostProved {
		s.with(proofShare, func() { s.prove(u) })
	}
	if s.bound < s.cost && start.last != nil {
		s.with(improveShare, func() { s.improve(start) })
	}
	s.prove(u)
	if s.choice != nil {
		s.prefer()
	}
}

// open reports whether some kind has more than one way.
func (m *model) open() bool {
	return slices.ContainsFunc(m.kinds, func(k kind) bool { return len(k.ways) > 1 })
}

const (
	mostProved   = 150 // kinds of which a proof is tried before better answers are looked for
	proofShare   = 4   // one part in so many of the steps that are left goes into that
	improveShare = 2   // and into the look for better answers
	orderShare   = 4   // and into the best order of the best ways
)

// with does something with one part in so many of the steps that are left.
func (s *solver) with(share int64, do func()) {
	whole := s.b
	s.b = whole.part(whole.left / share)
	do()
	whole.giveBack(s.b)
	s.b = whole
}

// prove looks for the best order of the best ways, and then for other ways, until
// the bound is reached. Where no job waits for another the ways decide alone.
func (s *solver) prove(u *unordered) {
	if s.bound < s.cost && !s.m.tied {
		u.prove(s.b, s.cost)
		s.bound = max(s.bound, u.bound)
	}
	if s.bound < s.cost || s.choice == nil {
		s.with(orderShare, func() { s.try(u.choice) })
	}
	if s.bound < s.cost && s.m.tied {
		s.bound = max(s.bound, s.unknot(u))
	}
}

// quickly puts a choice of ways in a good order, and keeps it if it costs less than
// the best so far.
func (s *solver) quickly(choice []int) ordered {
	e := s.errands(choice)
	order := ordered{e, e.quick(e.start(), s.b)}
	if order.last != nil && order.cost() < s.cost {
		s.keep(choice, order)
	}
	return order
}

// try puts a choice of ways in order and keeps it if it costs less than the
// best so far. It returns what any order of it costs at the least.
func (s *solver) try(choice []int) joinery.Time {
	order, low := s.inOrder(choice, s.cost)
	if order.last != nil && order.cost() < s.cost {
		s.keep(choice, order)
	}
	return low
}

func (s *solver) keep(choice []int, order ordered) {
	s.choice, s.order, s.cost = slices.Clone(choice), order, order.cost()
}

// ordered is an order of errands.
type ordered struct {
	*errands
	last *leg
}

func (o ordered) cost() joinery.Time { return o.fixed + o.last.spent }

// inOrder puts a choice of ways in order, the last leg nil where no order costs
// less than the limit, and says what any order costs at the least.
func (s *solver) inOrder(choice []int, limit joinery.Time) (ordered, joinery.Time) {
	e := s.errands(choice)
	last, low := e.order(limit-e.fixed, s.b)
	return ordered{e, last}, e.fixed + low
}

// errands lists the runs of a choice of ways, to be put in order.
func (s *solver) errands(choice []int) *errands {
	return newErrands(s.m, slices.Clone(choice), s.m.truly())
}
