package deck

import (
	"cmp"
	"slices"

	"fencecard/joinery"
)

// Changes counts what is set while the deck is run, the first of each
// included, what is cut, and the time it takes.
//
// A bit or fence distance counts whenever it is another than in the setup
// before. A ladder is climbed once per setup, and every height of it counts.
// With stop blocks a ladder is climbed once per setting of the blocks, by the
// cards whose blocks Stand alike, and every setting of the blocks counts once,
// both blocks of a card together; a through cut needs none. Runs counts every
// pass of every piece over the bit, Fits the different trials of fit.
type Changes struct {
	Bits, Fences, Heights, Stops int
	Runs, Fits                   int
	Time                         joinery.Time
	// Bound is a time that no choice of ways and no order can beat; 0 where
	// none was looked for. The deck is Proved where it takes no longer.
	Bound  joinery.Time
	Proved bool
}

// Count counts what is set and cut while the setups are run in their order in a
// shop.
func Count(setups []Setup, shop *joinery.Shop) Changes {
	var c Changes
	var last *Setup
	for i := range setups {
		s := &setups[i]
		if last == nil || last.Bit != s.Bit {
			c.Bits++
		}
		if last == nil || last.Bit != s.Bit || last.Fence != s.Fence {
			c.Fences++
		}
		var stood Stand
		for _, climb := range s.Climbs() {
			c.Heights += len(climb.Heights)
			stands := climb.Runs[0].Blocks()
			if shop.Stops == joinery.Blocks && climb.Blocks && stands != stood {
				c.Stops++
			}
			stood = stands
		}
		for j := range s.Runs {
			c.Runs += s.Runs[j].Passes()
		}
		last = s
	}
	c.Fits = countFits(setups)
	minutes := shop.Minutes
	c.Time = joinery.Time(c.Bits)*minutes.Bit + joinery.Time(c.Fences)*minutes.Fence +
		joinery.Time(c.Heights)*minutes.Height + joinery.Time(c.Stops)*minutes.Stop +
		joinery.Time(c.Runs)*minutes.Run + joinery.Time(c.Fits)*minutes.Fit
	return c
}

// countFits counts the different trials of fit.
func countFits(setups []Setup) int {
	type channel struct {
		cut  *joinery.Cut
		part string
	}
	steps := map[channel][]Step{}
	for i := range setups {
		for j := range setups[i].Runs {
			if r := &setups[i].Runs[j]; r.Step.Of > 1 {
				of := channel{r.Cut, r.Channel.Part}
				steps[of] = append(steps[of], r.Step)
			}
		}
	}
	fits := map[Trial]bool{}
	for i := range setups {
		for j := range setups[i].Runs {
			r := &setups[i].Runs[j]
			of := steps[channel{r.Cut, r.Channel.Part}]
			slices.SortFunc(of, func(a, b Step) int { return cmp.Compare(a.NearEdge, b.NearEdge) })
			if trial, ok := TrialOf(of, r.Channel, r.Piece.Size); ok {
				fits[trial] = true
			}
		}
	}
	return len(fits)
}
