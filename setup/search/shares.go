package search

import (
	"math"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search/budget"
)

// pending is a kind whose way is not settled, and the ways it may still take.
type pending struct {
	kind int
	ways []int
}

// part is the fixed point of shares: a share of 1 is 1/part thousandths of a
// minute. Whole numbers give the same answer on every machine.
const part = 1 << 10

// shares bounds a choice of ways from below. The cost of every element that is
// not paid yet is shared out among the kinds that may need it; no kind can do
// with less than its cheapest way at its own shares, and where the shares of an
// element come to more than its cost, the excess is given back. Any shares give
// a bound; improve looks for those that give the best. (This is the Lagrangian
// bound of covering problems, improved by the subgradient method.)
type shares struct {
	costs []int64 // of the elements at stake
	left  []int64 // cost less all shares of it
	ids   []int   // the elements at stake, by number
	kinds []sharer
	size  int // ways times elements, the work of one round
}

// sharer is a kind's part in the shares.
type sharer struct {
	elems []int   // at stake, as numbered in shares
	pays  []int64 // its share of each
	at    []int   // where each stands in the kind's elems
	ways  [][]int // places in elems
	own   []int64 // what each way costs besides
	names []int   // the ways' indexes in the kind
	best  int     // of ways, at these shares
	value int64   // what it costs
}

// share sets up the shares of what the pending kinds may need beyond what the
// tally has paid for. Shares found before are taken up again from memory.
func (c *chooser) share(und []pending) *shares {
	s := &shares{}
	number := c.numbers
	for i := range und {
		s.kinds = append(s.kinds, c.sharer(&und[i], s, number))
	}
	for _, e := range s.ids {
		number[e] = 0
	}
	users := make([]int64, len(s.costs))
	for i := range s.kinds {
		for _, e := range s.kinds[i].elems {
			users[e]++
		}
	}
	for i := range s.kinds {
		k := &s.kinds[i]
		for j, e := range k.elems {
			if k.pays[j] < 0 {
				k.pays[j] = s.costs[e] / users[e]
			}
		}
	}
	s.left = make([]int64, len(s.costs))
	return s
}

// sharer numbers the elements at stake for one kind. Number holds the numbers
// given so far, plus one, by element.
func (c *chooser) sharer(p *pending, s *shares, number []int) sharer {
	kind := &c.m.Kinds[p.kind]
	place := make([]int, len(kind.Elems)) // in the sharer's elems, plus one
	var k sharer
	for _, w := range p.ways {
		var needs []int
		for i, e := range kind.Ways[w].Elems {
			at := kind.Ways[w].At[i]
			if place[at] == 0 {
				if c.t.paid(e) {
					place[at] = -1
					continue
				}
				if number[e] == 0 {
					s.ids = append(s.ids, e)
					s.costs = append(s.costs, int64(c.m.Costs[e])*part)
					number[e] = len(s.ids)
				}
				k.elems = append(k.elems, number[e]-1)
				k.pays = append(k.pays, c.memory[p.kind][at])
				k.at = append(k.at, at)
				place[at] = len(k.elems)
			}
			if place[at] > 0 {
				needs = append(needs, place[at]-1)
			}
		}
		slices.Sort(needs)
		k.ways = append(k.ways, needs)
		k.own = append(k.own, int64(kind.Ways[w].Own)*part)
		k.names = append(k.names, w)
		s.size += len(needs) + 1
	}
	return k
}

// value works out the bound at the present shares.
func (s *shares) value() int64 {
	copy(s.left, s.costs)
	total := int64(0)
	for i := range s.kinds {
		k := &s.kinds[i]
		k.value = math.MaxInt64
		for w, needs := range k.ways {
			sum := k.own[w]
			for _, at := range needs {
				sum += k.pays[at]
			}
			if sum < k.value {
				k.best, k.value = w, sum
			}
		}
		total += k.value
		for at, e := range k.elems {
			s.left[e] -= k.pays[at]
		}
	}
	for _, left := range s.left {
		total += min(left, 0)
	}
	return total
}

// wholeTime rounds a bound up to a whole time.
func wholeTime(bound int64) joinery.Time { return joinery.Time((bound + part - 1) / part) }

// patience is how many rounds without a better bound halve the stride.
const patience = 8

// improve betters the shares until the bound reaches the target or the rounds are
// used up, and leaves the best ones found.
func (s *shares) improve(target joinery.Time, rounds int, b *budget.Budget) joinery.Time {
	goal := int64(target) * part
	best, stale, halved := int64(math.MinInt64), 0, 0
	var kept []int64
	for range rounds {
		v := s.value()
		if v > best {
			best, stale = v, 0
			kept = s.keep(kept)
		} else if stale++; stale == patience {
			stale, halved = 0, halved+1
		}
		if v >= goal || !s.stride(goal-v, halved) || !b.Spend(s.size) {
			break
		}
	}
	s.restore(kept)
	return wholeTime(s.value())
}

// stride moves every share along the slope of the bound, and reports whether
// there is one.
func (s *shares) stride(gap int64, halved int) bool {
	slopes := int64(0)
	s.slope(func(*int64) { slopes++ }, func(pays *int64) {
		if *pays > 0 {
			slopes++
		}
	})
	if slopes == 0 {
		return false
	}
	step := (gap / slopes) >> halved
	if step == 0 {
		return false
	}
	s.slope(func(pays *int64) { *pays += step }, func(pays *int64) { *pays = max(0, *pays-step) })
	return true
}

// slope calls up for every share that is too small, being of an element the
// kind's best way needs while nobody pays it in full, and down for every share
// of an element paid more than in full that the best way does without.
func (s *shares) slope(up, down func(*int64)) {
	for i := range s.kinds {
		k := &s.kinds[i]
		needs := k.ways[k.best]
		next := 0
		for at, e := range k.elems {
			needed := next < len(needs) && needs[next] == at
			if needed {
				next++
			}
			switch full := s.left[e] < 0; {
			case needed && !full:
				up(&k.pays[at])
			case !needed && full:
				down(&k.pays[at])
			}
		}
	}
}

func (s *shares) keep(kept []int64) []int64 {
	kept = kept[:0]
	for i := range s.kinds {
		kept = append(kept, s.kinds[i].pays...)
	}
	return kept
}

func (s *shares) restore(kept []int64) {
	for i := range s.kinds {
		n := copy(s.kinds[i].pays, kept)
		kept = kept[n:]
	}
}

// without returns the pending kinds without the ways that cost more than most:
// with the way taken, all it needs must be paid in full.
func (s *shares) without(und []pending, most joinery.Time) ([]pending, bool) {
	bound := s.value()
	var kept []pending
	fewer := false
	for i := range s.kinds {
		k := &s.kinds[i]
		var ways []int
		for w, needs := range k.ways {
			with := bound - k.value + k.own[w]
			for _, at := range needs {
				with += k.pays[at] + max(0, s.left[k.elems[at]])
			}
			if with <= int64(most)*part {
				ways = append(ways, k.names[w])
			}
		}
		fewer = fewer || len(ways) < len(k.ways)
		kept = append(kept, pending{und[i].kind, slices.Clip(ways)})
	}
	return kept, fewer
}
