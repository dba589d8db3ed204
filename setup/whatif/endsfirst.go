package whatif

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
	"fencecard/setup/search/budget"
)

// endsFirst says, by setup, what it would cost to cut an end before the long
// edge that is cut there: that order is kept wherever it takes no longer.
func (t *trier) endsFirst() map[int][]string {
	says := map[int][]string{}
	for _, e := range remark.Splintered(t.d) {
		cost, tried := t.waitingCost(e)
		if !tried {
			continue
		}
		text := fmt.Sprintf("%s comes before %s, whose splinters it would take away: the other way round %s", cutName(e.Then), cutName(e.First), cost)
		if i := t.setupOf(e.Then); !slices.Contains(says[i], text) {
			says[i] = append(says[i], text)
		}
	}
	return says
}

// setupOf is the index of the last setup in which a cut is made.
func (t *trier) setupOf(c *joinery.Cut) int {
	last := 0
	for i := range t.d.Setups {
		if slices.ContainsFunc(t.d.Setups[i].Runs, func(r deck.Run) bool { return r.Cut == c }) {
			last = i
		}
	}
	return last
}

// waitingCost says what it costs to have the long cut of an exit, and all that
// are like it, wait for the cut across. It does not where a limit is reached.
func (t *trier) waitingCost(e remark.Order) (says string, tried bool) {
	if t.left == 0 || t.ctx.Err() != nil {
		return "", false
	}
	t.left--
	plan, ok := t.changed(edit{
		like: func(o *joinery.Cut) bool { return o.Kind == e.Then.Kind && o.Name == e.Then.Name },
		make: func(o *joinery.Cut) { o.After = append(slices.Clone(o.After), e.First.Name) },
	})
	if !ok {
		return "", false
	}
	after, err := setup.MakeWith(t.ctx, plan, setup.Options{Search: budget.Limit{Steps: trySteps}})
	if err != nil {
		return "each would wait for the other", true
	}
	more := after.Changes.Time - t.d.Changes.Time
	if more <= 0 {
		return "takes no longer", true
	}
	var parts []string
	for _, c := range []struct {
		more      int
		one, many string
	}{
		{len(after.Setups) - len(t.d.Setups), "setup", "setups"},
		{after.Changes.Bits - t.d.Changes.Bits, "bit to fit", "bits to fit"},
		{after.Changes.Heights - t.d.Changes.Heights, "height", "heights"},
	} {
		switch {
		case c.more == 1:
			parts = append(parts, "1 "+c.one)
		case c.more > 1:
			parts = append(parts, fmt.Sprintf("%d %s", c.more, c.many))
		}
	}
	parts = append(parts, fmt.Sprintf("%g min", more.Minutes()))
	return "costs " + strings.Join(parts, ", ") + " more", true
}
