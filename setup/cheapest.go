package setup

import (
	"cmp"
	"context"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
	"fencecard/setup/search"
)

// plain deals the setups with the best way for every job, in the plain order.
func plain(d *deck.Deck, jobs []Job) ([]deck.Setup, deck.Changes, error) {
	choice := make(Choice, len(jobs)) // the best way stands first
	visits, ok := PlainOrder(jobs, choice)
	if !ok {
		return nil, deck.Changes{}, joinery.Faults{{Place: d.Plan.Place,
			Problem: "some cuts wait for each other in a circle", Remedy: "take one `after` away"}}
	}
	setups := Deal(d.Plan, jobs, choice, visits)
	return setups, deck.Count(setups, &d.Plan.Shop), nil
}

// cheapest puts the deck's setups in the order that takes the least time, if
// that is less than they take now. Of orders that cost the same the plain one
// is kept: it is what a maker expects.
func cheapest(d *deck.Deck, ctx context.Context, jobs []Job, o Options) {
	p := problem(jobs, &d.Plan.Shop)
	p.Known = d.Changes.Time
	if o.Below > 0 {
		p.Known = min(p.Known, o.Below)
	}
	answer := search.Solve(ctx, p, o.Search)
	d.Ended = answer.Ended
	if answer.Choice != nil {
		reset(d, jobs, answer)
	}
	d.Changes.Bound = min(answer.Bound, d.Changes.Time)
	d.Changes.Proved = d.Changes.Bound == d.Changes.Time
}

// reset deals the setups anew as an answer has them, in the plain order if that
// costs no more.
func reset(d *deck.Deck, jobs []Job, answer *search.Answer) {
	choice := Choice(answer.Choice)
	orders := [][]Visit{visitsOf(jobs, answer)}
	if visits, ok := PlainOrder(jobs, choice); ok {
		orders = slices.Insert(orders, 0, visits)
	}
	for _, visits := range orders {
		if d.Changes.Time <= answer.Cost {
			break
		}
		setups := Deal(d.Plan, jobs, choice, visits)
		if changes := deck.Count(setups, &d.Plan.Shop); changes.Time < d.Changes.Time {
			d.Setups, d.Changes = setups, changes
		}
	}
}

// visitsOf gives the ascents of an answer as visits.
func visitsOf(jobs []Job, a *search.Answer) []Visit {
	visits := make([]Visit, len(a.Ascents))
	for i, ascent := range a.Ascents {
		first := ascent[0]
		visits[i].Key = jobs[first.Job].Ways[a.Choice[first.Job]].Steps[first.Run].Key()
		for _, r := range ascent {
			visits[i].Steps = append(visits[i].Steps, JobStep{r.Job, r.Run})
		}
	}
	return visits
}

// problem puts the jobs to the search: bits in the order of the plain order,
// equal blocks under one number.
func problem(jobs []Job, shop *joinery.Shop) *search.Problem {
	p := &search.Problem{Jobs: make([]search.Job, len(jobs)), Minutes: shop.Minutes, Scale: shop.Scale}
	bits := numberBits(shop)
	stands := map[deck.Stand]int{{}: 0}
	for i := range jobs {
		job := &jobs[i]
		p.Jobs[i] = search.Job{Ways: make([]search.Way, len(job.Ways)), After: job.After}
		for w, way := range job.Ways {
			demand := ladder.Demand{Depth: job.Channel.Depth, Cap: ladder.CapFor(way.Bit, job.Piece.Wood, shop).Depth}
			runs := make([]search.Run, len(way.Steps))
			for r, run := range way.Steps {
				runs[r] = search.Run{Bit: bits[run.Bit], Fence: run.NearEdge, Demand: demand}
				if shop.Stops == joinery.Blocks {
					card := RunOf(job.Piece, job.Cut, job.Channel, run)
					at := card.Blocks()
					if _, ok := stands[at]; !ok {
						stands[at] = len(stands)
					}
					runs[r].Blocks = stands[at]
				}
			}
			p.Jobs[i].Ways[w] = search.Way{Runs: runs, Turned: way.Steps[0].Turned}
		}
	}
	return p
}

// numberBits numbers the shop's bits, narrowest first.
func numberBits(shop *joinery.Shop) map[*joinery.Bit]int {
	var bits []*joinery.Bit
	for i := range shop.Bits {
		bits = append(bits, &shop.Bits[i])
	}
	slices.SortStableFunc(bits, func(a, b *joinery.Bit) int {
		return cmp.Or(cmp.Compare(a.True(), b.True()), cmp.Compare(a.Name, b.Name))
	})
	numbers := map[*joinery.Bit]int{}
	for i, b := range bits {
		numbers[b] = i
	}
	return numbers
}
