package setup_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// Ends before long edges (common practice, no source): the rabbet takes away the
// splinters where the dado runs out through its edge.
func TestEndsBeforeLongEdges(t *testing.T) {
	first := func(rabbet, dado string) (string, []deck.Warning) {
		plan := workpiece.PieceFrom(t, "30 8 3/4", rabbet, dado)
		d := workpiece.DeckOf(t, plan)
		return d.Setups[0].Runs[0].Cut.Name, d.Warnings
	}
	splintered := func(all []deck.Warning) bool {
		return slices.ContainsFunc(all, func(w deck.Warning) bool { return w.Code == "splintered-exit" })
	}
	// Left to the fence and top down, the back leads and the front trails.
	cut, warnings := first("rabbet edge top front 1/2 3/8", "dado shelf top 1/2 6:left - 1/4")
	assert.Equal(t, "shelf", cut, "the minutes are the same, so the end comes first")
	assert.False(t, splintered(warnings))
	cut, warnings = first("rabbet edge top front 1/2 3/8", "dado shelf top 1/2 6:left - 1/4 after edge")
	assert.Equal(t, "edge", cut, "the maker's own order")
	assert.False(t, splintered(warnings), "is not doubted")
	_, warnings = first("rabbet edge top back 1/2 3/8", "dado shelf top 1/2 6:left - 1/4 after edge")
	assert.False(t, splintered(warnings), "the other edge is where it is fed in")

	// At one bit and fence distance the end is run first at every height.
	plan := workpiece.PieceFrom(t, "30 8 3/4", "groove panel top 1/2 2:front - 1/4", "dado shelf top 1/2 2:left - 1/4")
	d, err := setup.Make(plan)
	require.NoError(t, err)
	require.Len(t, d.Setups, 1)
	assert.Equal(t, "shelf", d.Setups[0].Runs[0].Cut.Name)
	assert.True(t, d.Changes.Proved)
}
