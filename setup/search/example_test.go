package search_test

import (
	"context"
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
	"fencecard/setup/search"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
)

// A groove can be made in one run with its own bit, or in two with the bit that
// another groove needs anyway.
func Example() {
	const in = measure.Inch
	depth := ladder.Demand{Depth: in / 4, Cap: in / 4}
	run := func(bit int, fence measure.Length) model.Run {
		return model.Run{Bit: bit, Fence: fence, Demand: depth}
	}
	p := &model.Problem{
		Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2},
		Scale:   measure.InchScale,
		Jobs: []model.Job{
			{Ways: []model.Way{{Runs: []model.Run{run(0, in)}}}},
			{Ways: []model.Way{{Runs: []model.Run{run(1, in)}}, {Runs: []model.Run{run(0, in), run(0, 5*in/4)}}}},
		},
	}
	a := search.Solve(context.Background(), p, budget.Limit{})
	fmt.Println("ways", a.Choice, "ascents", a.Ascents)
	fmt.Println(a.Cost.Minutes(), "min, proved:", a.Bound == a.Cost)
	// Output:
	// ways [0 1] ascents [[{0 0} {1 0}] [{1 1}]]
	// 8 min, proved: true
}
