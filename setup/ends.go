package setup

import (
	"context"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
	"fencecard/setup/search/budget"
)

// mostTries bounds how often a deck is made anew for the sake of its exits.
const mostTries = 6

// endsBeforeEdges has what is cut along an edge wait for the cuts across the
// grain that run out there, so that their splinters are cut away, wherever that
// takes no longer: all of them at once, or else one after another. What it leaves is
// warned of.
func endsBeforeEdges(ctx context.Context, d *deck.Deck, jobs []Job, o Options) {
	if d.Ended != budget.Through || o.Below > 0 {
		return // no time is left for more, or only the minutes are asked for
	}
	pairs := remark.Splintered(d)
	if len(pairs) == 0 || tryWaiting(ctx, d, jobs, o, pairs) != nil || len(pairs) == 1 {
		return
	}
	for _, pair := range pairs[:min(len(pairs), mostTries)] {
		if with := tryWaiting(ctx, d, jobs, o, []remark.Exit{pair}); with != nil {
			jobs = with
		}
	}
}

// tryWaiting makes the deck with more cuts waiting, and keeps it and returns the
// jobs where it takes no longer.
func tryWaiting(ctx context.Context, d *deck.Deck, jobs []Job, o Options, exits []remark.Exit) []Job {
	waiting := slices.Clone(jobs)
	of := map[*joinery.Cut][]int{}
	for i := range waiting {
		waiting[i].After = slices.Clone(waiting[i].After)
		of[waiting[i].Cut] = append(of[waiting[i].Cut], i)
	}
	for _, exit := range exits {
		for _, k := range of[exit.Along] {
			for _, i := range of[exit.Across] {
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
