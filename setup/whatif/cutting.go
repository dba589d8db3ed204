package whatif

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// cutting tells what the passes of a setup take, and what those of another bit
// would that makes all its cuts.
func (x *explainer) cutting(s *deck.Setup) string {
	passes, alone := 0, true
	for i := range s.Runs {
		r := &s.Runs[i]
		passes += r.Piece.Count * r.Passes()
		alone = alone && r.Step.Of == 1
	}
	text := fmt.Sprintf("its %s %s %g min", counted(passes), takes(passes), x.minutes(passes))
	if !alone {
		return text // other setups make a part of its cuts
	}
	bit, fewest := x.otherBit(s)
	switch {
	case bit == nil:
		return text + "; no other bit makes all its cuts"
	case fewest == passes:
		return text + fmt.Sprintf("; with the %s as many", bit.Name)
	}
	return text + fmt.Sprintf("; with the %s %s, %g min, besides what changes with it", bit.Name, counted(fewest), x.minutes(fewest))
}

func counted(passes int) string {
	if passes == 1 {
		return "1 pass"
	}
	return fmt.Sprintf("%d passes", passes)
}

func takes(passes int) string {
	if passes == 1 {
		return "takes"
	}
	return "take"
}

func (x *explainer) minutes(passes int) float64 {
	return (joinery.Time(passes) * x.d.Plan.Shop.Minutes.Pass).Minutes()
}

// otherBit finds the bit that would make all the cuts of a setup in the fewest
// passes besides its own; nil where there is none.
func (x *explainer) otherBit(s *deck.Setup) (*joinery.Bit, int) {
	var best *joinery.Bit
	fewest := 0
	shop := &x.d.Plan.Shop
	for b := range shop.Bits {
		bit := &shop.Bits[b]
		if bit.Name == s.Bit.Name {
			continue
		}
		passes, can := 0, true
		for i := range s.Runs {
			r := &s.Runs[i]
			way := x.wayWith(bit, r)
			if can = way != nil; !can {
				break
			}
			demand := ladder.Demand{Depth: r.Channel.Depth, Cap: ladder.CapFor(bit, r.Piece.Wood, shop).Depth, From: shop.Scale.Floor(r.Channel.Recess.Depth), Section: deck.SectionAt(r.Step, r.Channel)}
			passes += r.Piece.Count * way.Passes * ladder.Count([]ladder.Demand{demand}, shop.Scale)
		}
		if can && (best == nil || passes < fewest) {
			best, fewest = bit, passes
		}
	}
	return best, fewest
}

// wayWith returns the way of a bit to make a run's channel in the fewest passes.
func (x *explainer) wayWith(bit *joinery.Bit, r *deck.Run) *setup.Way {
	job := x.jobs[channelNamed(r.Cut, r.Channel)]
	if job == nil {
		return nil
	}
	var best *setup.Way
	for i := range job.Ways {
		if w := &job.Ways[i]; w.Bit.Name == bit.Name && (best == nil || w.Passes < best.Passes) {
			best = w
		}
	}
	return best
}
