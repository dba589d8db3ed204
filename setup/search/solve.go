package search

import (
	"context"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// Solve finds the cheapest answer, or the cheapest it comes upon within its
// limit, with a bound below which there is none. Called off, it gives the best
// so far.
func Solve(ctx context.Context, p *Problem, l Limit) *Answer {
	s := &solver{m: newModel(p), b: newBudget(ctx, l)}
	s.solve()
	a := &Answer{
		Choice: make([]int, len(p.Jobs)),
		Climbs: s.order.climbs(s.order.last),
		Cost:   s.cost,
		Bound:  min(s.bound, s.cost),
		Ended:  s.b.ended,
	}
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
	first := make([]int, len(s.m.kinds))
	s.try(first)
	c := newChooser(s.m, s.b)
	f := c.solve(s.m.all(), s.cost)
	s.bound = min(f.bound, s.cost)
	if f.picks != nil {
		s.try(s.chosen(f.picks))
	}
	if s.bound < s.cost && (s.m.tied || s.m.uneven) {
		s.bound = max(s.bound, s.unknot())
	}
	s.prefer()
}

// chosen turns picks into the way of each kind.
func (s *solver) chosen(picks []pick) []int {
	choice := make([]int, len(s.m.kinds))
	for _, p := range picks {
		choice[p.kind] = p.way
	}
	return choice
}

// try puts a choice of ways in order and keeps it if it costs less than the
// best so far. It returns what any order of it costs at the least.
func (s *solver) try(choice []int) joinery.Time {
	order, low := s.inOrder(choice)
	if s.choice == nil || order.cost() < s.cost {
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

// inOrder puts a choice of ways in order and says what any order costs at the
// least.
func (s *solver) inOrder(choice []int) (ordered, joinery.Time) {
	e := newErrands(s.m, slices.Clone(choice), func(_ int, demands []ladder.Demand) int {
		return ladder.Count(demands, s.m.problem.Scale)
	})
	last, low := e.order(s.b)
	return ordered{e, last}, e.fixed + low
}
