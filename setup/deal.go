package setup

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// Deal writes the setups and cards of a choice of ways in an order of visits.
//
// Between marks, all cards of a setup climb one ladder together. Between stop
// blocks, only the cards do whose blocks stand alike; these come one after
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
		n := len(setups)
		if !blocks || n == 0 || setups[n-1].Key() != v.Key {
			setups = append(setups, deck.Setup{Number: n + 1, Bit: v.Key.Bit, Fence: deck.FenceAt(v.Key.Bit, v.Key.NearEdge)})
		}
		s := &setups[len(setups)-1]
		if !blocks {
			climb(s, slices.Concat(together(runs, (*deck.Run).Marks)...), plan.Shop.Scale)
			continue
		}
		for _, alike := range together(runs, (*deck.Run).Blocks) {
			climb(s, alike, plan.Shop.Scale)
		}
	}
	for i := range setups {
		number(&setups[i])
		setups[i].PairUp(&plan.Shop)
	}
	return setups
}

// climb adds cards that go up one ladder together.
func climb(s *deck.Setup, runs []deck.Run, scale joinery.Scale) {
	climb := 0
	if n := len(s.Runs); n > 0 {
		climb = s.Runs[n-1].Climb + 1
	}
	demands := make([]ladder.Demand, len(runs))
	for i := range runs {
		demands[i] = demandOf(&runs[i])
	}
	heights := ladder.Of(demands, scale)
	s.Runs = slices.Grow(s.Runs, len(runs))
	for i, r := range runs {
		r.Climb, r.Heights = climb, ladder.Used(heights, demands[i])
		s.Runs = append(s.Runs, r)
	}
	s.Heights = append(s.Heights, heights...)
}

// number numbers the cards and sorts the heights of all climbs. The two runs of
// a turned piece may be made in either order: the first card is the first run.
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

// demandOf is what a card asks of the ladder.
func demandOf(r *deck.Run) ladder.Demand {
	return ladder.Demand{Depth: r.Channel.Depth, Cap: r.Cap.Depth}
}

// together keeps the order of the cards, but brings those that stand alike
// next to the first of them.
func together(runs []deck.Run, where func(*deck.Run) deck.Stand) [][]deck.Run {
	var groups [][]deck.Run
	at := map[deck.Stand]int{}
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
