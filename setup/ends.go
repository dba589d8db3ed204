package setup

import (
	"context"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
	"fencecard/setup/search/budget"
)

// mostTries bounds how often a deck is made anew for the sake of one habit.
const mostTries = 6

// bySensibleOrder has cuts wait for others as a maker would have them, wherever that
// takes no longer: what is cut along an edge for the cuts across the grain that run
// out there, so that their splinters are cut away; and what takes an end away for the
// cuts along the grain that still want it to bear. What it leaves is told.
func bySensibleOrder(ctx context.Context, d *deck.Deck, jobs []Job, o Options) {
	for _, habit := range []func(*deck.Deck) []remark.Order{remark.Splintered, remark.EndsGone} {
		if d.Ended != budget.Through || o.Below > 0 {
			return // no time is left for more, or only the minutes are asked for
		}
		jobs = byHabit(ctx, d, jobs, o, habit(d))
	}
}

// byHabit tries orders all at once, or else one after another, and returns the jobs
// as they then wait.
func byHabit(ctx context.Context, d *deck.Deck, jobs []Job, o Options, orders []remark.Order) []Job {
	if len(orders) == 0 {
		return jobs
	}
	if with := tryWaiting(ctx, d, jobs, o, orders); with != nil {
		return with
	}
	if len(orders) == 1 {
		return jobs
	}
	for _, order := range orders[:min(len(orders), mostTries)] {
		if with := tryWaiting(ctx, d, jobs, o, []remark.Order{order}); with != nil {
			jobs = with
		}
	}
	return jobs
}

// tryWaiting makes the deck with more cuts waiting, and keeps it and returns the
// jobs where it takes no longer.
func tryWaiting(ctx context.Context, d *deck.Deck, jobs []Job, o Options, orders []remark.Order) []Job {
	waiting := slices.Clone(jobs)
	of := map[*joinery.Cut][]int{}
	for i := range waiting {
		waiting[i].After = slices.Clone(waiting[i].After)
		of[waiting[i].Cut] = append(of[waiting[i].Cut], i)
	}
	for _, order := range orders {
		for _, k := range of[order.Then] {
			for _, i := range of[order.First] {
				if !slices.Contains(waiting[k].After, i) {
					waiting[k].After = append(waiting[k].After, i)
				}
			}
		}
	}
	for k := range waiting {
		slices.Sort(waiting[k].After)
	}
	again := &deck.Deck{Plan: d.Plan}
	var err error
	if again.Setups, again.Changes, err = plain(again, waiting); err != nil {
		return nil // they would wait for each other in a circle
	}
	if !o.Plain {
		o.Below = 0
		cheapest(ctx, again, waiting, o)
	}
	if again.Changes.Time > d.Changes.Time {
		return nil
	}
	again.Changes.Bound = d.Changes.Bound
	again.Changes.Proved = d.Changes.Proved
	d.Setups, d.Changes = again.Setups, again.Changes
	return waiting
}
