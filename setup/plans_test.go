package setup_test

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/search/budget"
)

// bySteps lets the default steps run out whatever the machine is busy with.
var bySteps = setup.Options{Search: budget.Limit{Steps: 2 * budget.StepsPerSecond, Time: time.Hour}}

// Real plans have 20 to 60 cuts, and the search proves that nothing beats what
// it makes of them.
func TestRealPlansAreProved(t *testing.T) {
	t.Parallel()
	plans := workpiece.RealPlans(t)
	require.GreaterOrEqual(t, len(plans), 22)
	for name, plan := range plans {
		t.Run(name, func(t *testing.T) {
			cuts := 0
			for _, p := range plan.Pieces {
				cuts += len(p.Cuts)
			}
			assert.GreaterOrEqual(t, cuts, 20)
			assert.LessOrEqual(t, cuts, 60)
			d, err := setup.MakeWith(t.Context(), plan, bySteps)
			require.NoError(t, err)
			assert.True(t, d.Changes.Proved, "%+v", d.Changes)
			assert.Equal(t, d.Changes.Time, d.Changes.Bound)
			plain, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
			require.NoError(t, err)
			assert.LessOrEqual(t, d.Changes.Time, plain.Changes.Time)
			assert.False(t, plain.Changes.Proved)
			counted := deck.Count(d.Setups, &plan.Shop)
			counted.Bound, counted.Proved = d.Changes.Bound, true
			assert.Equal(t, counted, d.Changes)
		})
	}
}

// The same plan gives the same deck, whatever the clock says while the steps
// last.
func TestTheSameDeckAgain(t *testing.T) {
	for _, name := range []string{"panel-doors", "plate-rack"} {
		plan := workpiece.RealPlans(t)[name]
		var decks [2][]string
		for i := range decks {
			for _, steps := range []int64{1, 300_000} {
				o := setup.Options{Search: budget.Limit{Steps: steps, Time: time.Duration(i+1) * time.Hour}}
				d, err := setup.MakeWith(t.Context(), plan, o)
				require.NoError(t, err)
				decks[i] = append(decks[i], workpiece.Route(d)...)
			}
		}
		assert.Equal(t, decks[0], decks[1])
	}
}

func TestCalledOff(t *testing.T) {
	plan := workpiece.RealPlans(t)["panel-doors"]
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	d, err := setup.MakeWith(ctx, plan, setup.Options{})
	require.NoError(t, err)
	assert.Equal(t, budget.CalledOff, d.Ended)
	plain, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
	require.NoError(t, err)
	assert.LessOrEqual(t, d.Changes.Time, plain.Changes.Time)
	assert.False(t, d.Changes.Proved)
	assert.Greater(t, d.Changes.Bound, joinery.Time(0))
	assert.LessOrEqual(t, d.Changes.Bound, d.Changes.Time)
}
