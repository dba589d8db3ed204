package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

func TestBatchMultipliesCounts(t *testing.T) {
	plan := workpiece.Legs(t)
	batch, err := setup.Batch(plan, 12)
	require.NoError(t, err)
	assert.Equal(t, 24, batch.Pieces[0].Count)
	assert.Equal(t, 24, batch.Pieces[1].Count)
	assert.Equal(t, 2, plan.Pieces[0].Count, "the plan itself stays as it is")

	one, err := setup.Make(plan)
	require.NoError(t, err)
	twelve, err := setup.Make(batch)
	require.NoError(t, err)
	want, got := one.Changes, twelve.Changes
	assert.Equal(t, 12*want.Passes, got.Passes)
	want.Passes, want.Time, want.Bound = got.Passes, got.Time, got.Bound
	assert.Equal(t, want, got, "a batch is run through the same setups")
	require.Equal(t, one.Runs(), twelve.Runs())
	for i, s := range twelve.Setups {
		for k, r := range s.Runs {
			assert.Equal(t, 12*one.Setups[i].Runs[k].Piece.Count, r.Piece.Count)
		}
	}
}

func TestBatchRefuses(t *testing.T) {
	for _, n := range []int{0, -1, 50_001, 1 << 62} {
		_, err := setup.Batch(workpiece.Legs(t), n)
		assert.ErrorContains(t, err, "batch of", n)
	}
}
