package whatif_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/timber"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/whatif"
)

// An inch of waste at an end takes two passes side by side with a bit of 3/4 in
// and three with one of 1/2 in, at two heights each; a pass takes 0.2 min.
func TestWhatPassesTakeAndWhatAnotherBitWould(t *testing.T) {
	plan := workpiece.PieceFrom(t, workpiece.BoardSize, "lap end back left 1 3/8")
	plan.Shop.Bits = []joinery.Bit{workpiece.BitOf(workpiece.In(t, "3/4")), workpiece.BitOf(workpiece.In(t, "1/2"))}
	explain := func() string {
		all, err := whatif.Explain(t.Context(), workpiece.DeckOf(t, plan))
		require.NoError(t, err)
		return all[0].Cutting
	}
	assert.Equal(t, "its 2 passes take 0.4 min; with the 12.7 mm 6 passes, 1.2 min, besides what changes with it", explain())
	plan.Shop.Bits = plan.Shop.Bits[:1]
	assert.Equal(t, "its 2 passes take 0.4 min; no other bit makes all its cuts", explain())
}

// Of an unknown wood the bit takes 1/4 in at a pass, of pine 3/8: the rungs that
// the one needs cost forty boards of the other a pass each.
func TestOneLadderForBothWouldTakeMorePasses(t *testing.T) {
	plan := workpiece.PieceFrom(t, "24 1_1/2 8", "groove a back 1/2 1:bottom - 3/4")
	plan.Shop.Bits = []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1/2"))}
	pine, _, ok := timber.FindWood("eastern white pine")
	require.True(t, ok)
	many := plan.Pieces[0]
	many.Name, many.Count, many.Wood, many.Cuts = "pine board", 40, pine, slices.Clone(many.Cuts)
	plan.Pieces = append(plan.Pieces, many)
	d := workpiece.DeckOf(t, plan)
	require.Len(t, d.Setups, 2)
	assert.Equal(t, 1, d.Changes.Fences)
	all, err := whatif.Explain(t.Context(), d)
	require.NoError(t, err)
	assert.Contains(t, all[1].Reasons[0], "once more: one ladder for both would take more time in passes")
}
