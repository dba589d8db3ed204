package setup_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// A deck has 50,000 runs at the most, be they of many cuts or of wide ones.
func TestMostCards(t *testing.T) {
	thin := workpiece.BenchBits(t)[:1]
	thin[0].Name, thin[0].Diameter, thin[0].Measured = "thin", workpiece.In(t, "1/8"), 0
	// Neighbours overlap by 1/64 in: 60 times 7/64 in, and 1/8 in for the last.
	wide := workpiece.PieceFrom(t, workpiece.BoardSize, "dado shelf back 6_11/16 1/4:left - 1/4")
	wide.Shop.Bits = thin
	many := workpiece.PieceFrom(t, workpiece.BoardSize, "groove panel bottom 1/4 1/4:front - 1/4")
	for _, test := range []struct {
		name         string
		plan         *joinery.Plan
		runs, pieces int // runs of one piece, and how many pieces may be
		want         []string
	}{
		{"many cuts", many, 1, 50_000, []string{"more than 50,000 runs", "write a plan for each part"}},
		{"wide cuts", wide, 61, 819, []string{"more than 50,000 runs", `the dado "shelf" in "piece" alone takes 61`, "add a wider bit"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			plan := *test.plan
			plan.Pieces = slices.Repeat(plan.Pieces, test.pieces)
			jobs, err := setup.Jobs(&plan)
			require.NoError(t, err)
			require.Len(t, jobs, test.pieces)
			require.Len(t, jobs[0].Ways[0].Steps, test.runs)

			plan.Pieces = slices.Repeat(test.plan.Pieces, test.pieces+1)
			_, err = setup.Jobs(&plan)
			for _, words := range test.want {
				assert.ErrorContains(t, err, words)
			}
		})
	}
}

// Cuts that may be made alike hold their ways once, and others do not.
func TestLikeCutsShareTheirWays(t *testing.T) {
	plan := workpiece.BoardWith(t, workpiece.BenchBits(t),
		workpiece.Groove(t, "a", "1/2", "1"), workpiece.Groove(t, "b", "1/2", "1"), workpiece.Groove(t, "c", "1/2", "2"))
	jobs, err := setup.Jobs(plan)
	require.NoError(t, err)
	require.Len(t, jobs, 3)
	assert.Equal(t, jobs[0].Ways, jobs[1].Ways)
	assert.Same(t, &jobs[0].Ways[0], &jobs[1].Ways[0])
	assert.NotEqual(t, jobs[0].Ways, jobs[2].Ways)
}
