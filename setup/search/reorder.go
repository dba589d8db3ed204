package search

import (
	"slices"

	"fencecard/joinery"
)

const (
	reorderShare = 3                  // one part in so many of the steps that are left goes into it
	reorderMost  = 3 * joinery.Minute // how much dearer a way may be for its order to be tried
)

// reorder changes the ways of single kinds that wait, or are waited for, where
// that makes a cheaper order, until it helps no more.
func (s *solver) reorder() {
	if s.choice == nil {
		return
	}
	whole := s.b
	s.b = whole.part(whole.left / reorderShare)
	defer func() {
		whole.giveBack(s.b)
		s.b = whole
	}()
	t := newTally(s.m)
	for k, w := range s.choice {
		t.add(&s.m.kinds[k].ways[w])
	}
	for again := true; again; {
		again = false
		for k := range s.m.kinds {
			if s.m.kinds[k].tied && s.reorderKind(t, k) {
				again = true
			}
			if s.b.ended != Through || s.bound >= s.cost {
				return
			}
		}
	}
}

// reorderKind tries the other ways of one kind. The tally holds the choice.
func (s *solver) reorderKind(t *tally, k int) bool {
	ways := s.m.kinds[k].ways
	from := s.choice[k]
	t.remove(&ways[from])
	defer func() { t.add(&ways[s.choice[k]]) }()
	most := t.price(&ways[from]) + reorderMost
	for w := range ways {
		if w == from || t.price(&ways[w]) > most {
			continue
		}
		other := slices.Clone(s.choice)
		other[k] = w
		if before := s.cost; s.tryFast(other) && s.cost < before {
			return true
		}
	}
	return false
}

// tryFast puts a choice in a good order and keeps it if it costs less than the
// best so far.
func (s *solver) tryFast(choice []int) bool {
	e := s.errands(choice)
	start := e.start()
	if e.fixed+e.least(start) >= s.cost {
		return false
	}
	order := ordered{e, e.quick(start, s.b)}
	if order.last == nil || order.cost() >= s.cost {
		return false
	}
	s.keep(choice, order)
	return true
}
