package ladder

import "fencecard/joinery"

// Divisions that a rule is marked in and heights are set to by eye, the coarsest
// first.
var (
	inchDivisions   = []joinery.Length{joinery.Inch, joinery.Inch / 2, joinery.Inch / 4, joinery.Inch / 8, joinery.Inch / 16, joinery.Inch / 32, joinery.Inch / 64}
	metricDivisions = []joinery.Length{10 * joinery.Millimetre, 5 * joinery.Millimetre, 2 * joinery.Millimetre, joinery.Millimetre,
		joinery.Millimetre / 2, joinery.Millimetre / 5, joinery.Millimetre / 10}
)

// coarsest finds the first rung above from and the equal steps of those after it
// that reach to in n steps, none deeper than most, on the coarsest division of the
// scale that can; of these, the shortest steps.
func coarsest(from, to, n, most joinery.Length, scale joinery.Scale) (first, step joinery.Length, ok bool) {
	divisions := inchDivisions
	if scale.Unit == joinery.Millimetres {
		divisions = metricDivisions
	}
	for _, d := range append(divisions[:len(divisions):len(divisions)], scale.Division) {
		if d < scale.Division || d%scale.Division != 0 {
			continue
		}
		// As even as can be, or else with a longer first step up to the division.
		for _, longer := range []joinery.Length{0, most} {
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
