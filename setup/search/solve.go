package search

import (
	"context"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
	"fencecard/setup/search/order"
)

// Solve finds the cheapest answer, or the cheapest it comes upon within its
// limit, with a bound below which there is none. Called off, it gives the best
// so far.
func Solve(ctx context.Context, p *model.Problem, l budget.Limit) *model.Answer {
	s := &solver{m: model.New(p), b: budget.New(ctx, l)}
	s.solve()
	return s.answer()
}

// answer spells out the best found.
func (s *solver) answer() *model.Answer {
	a := &model.Answer{Cost: s.cost + s.m.Fixed, Bound: min(s.bound, s.cost) + s.m.Fixed, Ended: s.b.Ended}
	if s.choice == nil {
		return a
	}
	a.Choice = make([]int, len(s.m.Problem.Jobs))
	a.Ascents = s.order.Spelt(s.order.last)
	for k := range s.m.Kinds {
		for _, j := range s.m.Kinds[k].Jobs {
			a.Choice[j] = s.choice[k]
		}
	}
	return a
}

// solver is one run of Solve.
type solver struct {
	m      *model.Model
	b      *budget.Budget
	choice []int // the best found, the way of each kind
	order  ordered
	cost   joinery.Time
	bound  joinery.Time
}

func (s *solver) solve() {
	s.cost = order.NoLimit
	if known := s.m.Problem.Known; known > 0 {
		s.cost = known - s.m.Fixed
	}
	u := s.unordered()
	s.bound = u.bound
	start := s.quickly(u.choice)
	if !s.m.Tied && !open(s.m) {
		return
	}
	s.quickly(make([]int, len(u.choice))) // the first ways are easier to put in order, having the fewest runs
	if len(s.m.Kinds) <= mostProved {
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
func open(m *model.Model) bool {
	return slices.ContainsFunc(m.Kinds, func(k model.Kind) bool { return len(k.Ways) > 1 })
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
	s.b = whole.Part(whole.Left / share)
	do()
	whole.GiveBack(s.b)
	s.b = whole
}

// prove looks for the best order of the best ways, and then for other ways, until
// the bound is reached. Where no job waits for another the ways decide alone.
func (s *solver) prove(u *unordered) {
	if s.bound < s.cost && !s.m.Tied {
		u.prove(s.b, s.cost)
		s.bound = max(s.bound, u.bound)
	}
	if s.bound < s.cost || s.choice == nil {
		s.with(orderShare, func() { s.try(u.choice) })
	}
	if s.bound < s.cost && s.m.Tied {
		s.bound = max(s.bound, s.unknot(u))
	}
}

// quickly puts a choice of ways in a good order, and keeps it if it costs less than
// the best so far.
func (s *solver) quickly(choice []int) ordered {
	e := s.errands(choice)
	order := ordered{e, e.Quick(e.Start(), s.b)}
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
	*order.Errands
	last *order.Trail
}

func (o ordered) cost() joinery.Time { return o.Fixed + o.last.Spent }

// inOrder puts a choice of ways in order, the last trail nil where no order costs
// less than the limit, and says what any order costs at the least.
func (s *solver) inOrder(choice []int, limit joinery.Time) (ordered, joinery.Time) {
	e := s.errands(choice)
	last, low := e.Order(limit-e.Fixed, s.b)
	return ordered{e, last}, e.Fixed + low
}

// errands lists the runs of a choice of ways, to be put in order.
func (s *solver) errands(choice []int) *order.Errands {
	return order.NewErrands(s.m, slices.Clone(choice), s.m.Truly())
}
