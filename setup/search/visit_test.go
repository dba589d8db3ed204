package search_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/internal/brute"
	"fencecard/setup/ladder"
	"fencecard/setup/search"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
)

// Of many depths at one setting some go up apart where one ladder for all would
// take more passes; however many depths there are, every run is made, and what it
// costs is counted.
func TestManyDepthsAtOneSetting(t *testing.T) {
	const in = measure.Inch
	for _, depths := range []int{2, 7, 20, 59, 60, 61, 70} {
		p := &model.Problem{
			Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2, Pass: joinery.Minute / 5},
			Scale:   measure.InchScale,
		}
		for i := range depths {
			demand := ladder.Demand{Depth: measure.Length(11+i) * in / 64, Cap: measure.Length(8+i%5) * in / 64}
			p.Jobs = append(p.Jobs, model.Job{Ways: []model.Way{{Runs: []model.Run{{Demand: demand, Over: 1 + i%7}}}}})
		}
		a := search.Solve(context.Background(), p, budget.Limit{})
		require.Equal(t, a.Cost, brute.Cost(p, a.Choice, a.Ascents), "%d depths", depths)
		checkOrder(t, p, a)
		var all model.Ascent
		for j := range p.Jobs {
			all = append(all, model.JobRun{Job: j})
		}
		assert.LessOrEqual(t, a.Cost, brute.Cost(p, a.Choice, []model.Ascent{all}))
		assert.LessOrEqual(t, a.Bound, a.Cost)
	}
}
