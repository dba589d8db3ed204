package setup

import (
	"context"
	"slices"

	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
	"fencecard/setup/search"
	"fencecard/setup/search/model"
)

// plain deals the setups with the best way for every job, in the plain order.
func plain(d *deck.Deck, jobs []Job) ([]deck.Setup, deck.Changes, error) {
	choice := make(Choice, len(jobs)) // the best way stands first
	visits, ok := plainOrder(jobs, choice)
	if !ok {
		return nil, deck.Changes{}, plantext.Faults{{Place: d.Plan.Place,
			Problem: "some cuts wait for each other in a circle", Remedy: "take one `after` away"}}
	}
	setups := Deal(d.Plan, jobs, choice, visits)
	return setups, deck.Count(setups, &d.Plan.Shop), nil
}

// cheapest puts the deck's setups in the order that takes the least time, if
// that is less than they take now. Of orders that cost the same the plain one
// is kept: it is what a maker expects.
func cheapest(ctx context.Context, d *deck.Deck, jobs []Job, o Options) {
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
func reset(d *deck.Deck, jobs []Job, answer *model.Answer) {
	choice := Choice(answer.Choice)
	orders := [][]Visit{visitsOf(jobs, answer)}
	if visits, ok := plainOrder(jobs, choice); ok {
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
func visitsOf(jobs []Job, a *model.Answer) []Visit {
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
