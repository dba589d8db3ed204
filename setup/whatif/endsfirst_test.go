package whatif_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup/internal/workpiece"
)

// A second dado must come after the rabbet and is cut at the fence of the first:
// so the first, which the rabbet would clean, stays behind it unless the table is
// set once more.
func TestExplainSaysWhatEndsFirstCosts(t *testing.T) {
	plan := workpiece.PieceFrom(t, "30 8 3/4", "rabbet edge top front 1/2 3/8", "dado shelf top 1/2 6:left - 1/4", "dado rest top 1/2 6:right - 1/4 after edge")
	reasons, _ := explained(t, plan)
	require.Len(t, reasons, 2)
	assert.Contains(t, reasons[0], `the rabbet "edge" comes before the dado "shelf", whose splinters it would take away: the other way round costs 1 setup`)
	assert.Regexp(t, `costs 1 setup, .*\d min more`, reasons[0])

	// Without the second dado the order costs nothing and is kept.
	reasons, _ = explained(t, workpiece.PieceFrom(t, "30 8 3/4", "rabbet edge top front 1/2 3/8", "dado shelf top 1/2 6:left - 1/4"))
	for _, r := range reasons {
		assert.NotContains(t, r, "splinters")
	}
}
