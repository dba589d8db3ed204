package whatif_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
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
