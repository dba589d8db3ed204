package ladder

import (
	"slices"

	"fencecard/joinery/measure"
)

// Divisions that a rule is marked in and heights are set to by eye, the coarsest
// first.
var (
	inchDivisions   = []measure.Length{measure.Inch, measure.Inch / 2, measure.Inch / 4, measure.Inch / 8, measure.Inch / 16, measure.Inch / 32, measure.Inch / 64}
	metricDivisions = []measure.Length{10 * measure.Millimetre, 5 * measure.Millimetre, 2 * measure.Millimetre, measure.Millimetre,
		measure.Millimetre / 2, measure.Millimetre / 5, measure.Millimetre / 10}
)

// coarsest finds the first rung above from and the equal steps of those after it
// that reach to in n steps, none deeper than most, on the coarsest division of the
// scale that can; of these, the shortest steps.
func coarsest(from, to, n, most measure.Length, scale measure.Scale) (first, step measure.Length, ok bool) {
	for _, d := range append(slices.Clone(divisions(scale)), scale.Division) {
		if d < scale.Division || d%scale.Division != 0 {
			continue
		}
		// As even as can be, or else with a longer first step up to the division.
		for _, longer := range []measure.Length{0, most} {
			for step = d; step <= most || n == 2 && step == d; step += d {
				first = (from + max(min(step, most), longer)) / d * d
				if last := first + (n-2)*step; first > from && to-last <= most && last < to {
					return first, step, true
				}
			}
		}
	}
	return 0, 0, false
}

// fewest returns the rungs from one height up to another, each as high as it may
// be: the fewest, on the coarsest division that needs no more of them. Next gives the
// highest rung that may come after a height, on a division of the scale. It returns
// none where one division is too much.
func fewest(from, to measure.Length, scale measure.Scale, next func(from, division measure.Length) measure.Length) []measure.Length {
	on := func(division measure.Length) (rungs []measure.Length) {
		for at := from; at < to; {
			height := next(at, division)
			if height <= at {
				return nil
			}
			rungs, at = append(rungs, height), height
		}
		return rungs
	}
	rungs := on(scale.Division)
	for _, division := range divisions(scale) {
		if division < scale.Division || division%scale.Division != 0 {
			continue
		}
		if coarse := on(division); coarse != nil && len(coarse) == len(rungs) {
			return coarse
		}
	}
	return rungs
}

// Moves is the length of so many moves over a distance, none longer than most and
// the last what is left: on the coarsest division of the scale that can, else even.
func Moves(far, moves, most measure.Length, scale measure.Scale) measure.Length {
	for _, d := range append(slices.Clone(divisions(scale)), scale.Division) {
		if d < scale.Division || d%scale.Division != 0 {
			continue
		}
		even := (far + moves - 1) / moves
		if move := (even + d - 1) / d * d; move <= most && move*(moves-1) < far {
			return move
		}
	}
	return (far + moves - 1) / moves
}

// divisions lists the divisions of the scale's unit, the coarsest first.
func divisions(scale measure.Scale) []measure.Length {
	if scale.Unit == measure.Millimetres {
		return metricDivisions
	}
	return inchDivisions
}
