package setup

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// Deal writes the setups and runs of a choice of ways in an order of visits.
//
// Runs across the grain come before those along it. Runs whose marks are the same stand together, and among these those that read
// the same. Between marks, all runs of a setup climb one ladder together. Between stop
// blocks, only the runs do whose blocks stand alike; these come one after
// another, and the rest of the setup waits until they are through. Visits in a
// row to one bit and fence distance are then one setup.
func Deal(plan *joinery.Plan, jobs []Job, choice Choice, visits []Visit) []deck.Setup {
	var setups []deck.Setup
	blocks := plan.Shop.Stops == joinery.Blocks
	for _, v := range visits {
		runs := make([]deck.Run, len(v.Steps))
		for i, r := range v.Steps {
			job := jobs[r.Job]
			runs[i] = write(job, job.Ways[choice[r.Job]].Steps[r.Step], &plan.Shop)
		}
		endsFirst(runs)
		n := len(setups)
		if !blocks || n == 0 || setups[n-1].Key() != v.Key {
			setups = append(setups, deck.Setup{
				Number: n + 1, Bit: v.Key.Bit, Carriage: v.Key.Carriage,
				Fence: deck.FenceAt(v.Key.Bit, v.Key.NearEdge),
			})
		}
		s := &setups[len(setups)-1]
		if !blocks {
			climb(s, slices.Concat(together(runs, (*deck.Run).Marks)...), &plan.Shop)
			continue
		}
		for _, alike := range together(runs, (*deck.Run).Blocks) {
			climb(s, alike, &plan.Shop)
		}
	}
	for i := range setups {
		number(&setups[i])
		setups[i].PairUp(&plan.Shop)
	}
	return setups
}

// endsFirst puts what is cut across the grain before what is cut along it, whose
// runs take the splinters of the exits away.
func endsFirst(runs []deck.Run) {
	slices.SortStableFunc(runs, func(a, b deck.Run) int { return cmp.Compare(along(&a), along(&b)) })
}

func along(r *deck.Run) int {
	if r.Channel.Run() == r.Piece.Grain {
		return 1
	}
	return 0
}

// climb adds runs that go up one ladder together.
func climb(s *deck.Setup, runs []deck.Run, shop *joinery.Shop) {
	climb := 0
	if n := len(s.Runs); n > 0 {
		climb = s.Runs[n-1].Climb + 1
	}
	demands := make([]ladder.Demand, len(runs))
	for i := range runs {
		demands[i] = demandOf(&runs[i], shop)
	}
	heights := ladder.Of(demands, shop.Scale)
	s.Runs = slices.Grow(s.Runs, len(runs))
	for i := range runs {
		runs[i].Climb, runs[i].Heights = climb, ladder.Used(heights, demands[i])
	}
	for _, alike := range together(runs, (*deck.Run).Orders) {
		s.Runs = append(s.Runs, alike...)
	}
	s.Heights = append(s.Heights, heights...)
}

// number numbers the runs and sorts the heights of all climbs. The two runs of
// a turned piece may be made in either order: the first made is the first to be run.
func number(s *deck.Setup) {
	type channel struct {
		cut  *joinery.Cut
		part string
	}
	turned := map[channel]int{}
	for i := range s.Runs {
		r := &s.Runs[i]
		r.Setup, r.Index = s.Number, i+1
		if r.Step.Turned {
			at := channel{r.Cut, r.Channel.Part}
			turned[at]++
			r.Step.Position = turned[at]
		}
	}
	slices.Sort(s.Heights)
	s.Heights = slices.Compact(s.Heights)
}

// demandOf is what a run asks of the ladder.
func demandOf(r *deck.Run, shop *joinery.Shop) ladder.Demand {
	return demand(r.Step, r.Channel, r.Cap, shop)
}

// together keeps the order of the runs, but brings those that stand alike
// next to the first of them.
func together[T comparable](runs []deck.Run, where func(*deck.Run) T) [][]deck.Run {
	var groups [][]deck.Run
	at := map[T]int{}
	for i := range runs {
		w := where(&runs[i])
		n, ok := at[w]
		if !ok {
			n = len(groups)
			at[w] = n
			groups = append(groups, nil)
		}
		groups[n] = append(groups[n], runs[i])
	}
	return groups
}
