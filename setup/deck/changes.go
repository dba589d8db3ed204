package deck

import "fencecard/joinery"

// Changes counts what is set while the deck is run, the first of each
// included, what is cut, and the time it takes.
//
// A bit or fence distance counts whenever it is another than in the setup
// before. A ladder is climbed once per setup, and every height of it counts.
// With stop blocks a ladder is climbed once per setting of the blocks, by the
// runs whose blocks Stand alike, and every setting of the blocks counts once,
// both blocks of a run together; a through cut needs none.
//
// Passes counts each of every piece over the bit, Fits every [Trial] once.
type Changes struct {
	Bits, Fences, Heights, Stops int
	Passes, Fits                 int
	Time                         joinery.Time
	// Bound is a time that no choice of ways and no order can beat; 0 where
	// none was looked for. The deck is Proved where it takes no longer.
	Bound  joinery.Time
	Proved bool
}

// StopsSet counts how often stop blocks are set at a setup, one pair again where
// another stood in between.
func (s *Setup) StopsSet() int {
	n := 0
	var stood Stand
	for _, climb := range s.Climbs() {
		stands := climb.Runs[0].Blocks()
		if climb.Blocks && stands != stood {
			n++
		}
		stood = stands
	}
	return n
}

// Count counts what is set and cut while the setups are run in their order in a
// shop.
func Count(setups []Setup, shop *joinery.Shop) Changes {
	var c Changes
	var last *Setup
	fits := map[Trial]bool{}
	for i := range setups {
		s := &setups[i]
		if last == nil || last.Bit != s.Bit {
			c.Bits++
		}
		if last == nil || last.Bit != s.Bit || last.Fence != s.Fence {
			c.Fences++
		}
		for j := range s.Runs {
			r := &s.Runs[j]
			c.Passes += r.Piece.Count * r.Passes()
			if trial, ok := TrialOf(r.Channel, r.Piece.Size, r.Step); ok {
				fits[trial] = true
			}
		}
		for _, climb := range s.Climbs() {
			c.Heights += len(climb.Heights)
		}
		if shop.Stops == joinery.Blocks {
			c.Stops += s.StopsSet()
		}
		last = s
	}
	c.Fits = len(fits)
	minutes := shop.Minutes
	c.Time = joinery.Time(c.Bits)*minutes.Bit + joinery.Time(c.Fences)*minutes.Fence +
		joinery.Time(c.Heights)*minutes.Height + joinery.Time(c.Stops)*minutes.Stop +
		joinery.Time(c.Passes)*minutes.Pass + joinery.Time(c.Fits)*minutes.Fit
	return c
}
