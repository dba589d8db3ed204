package proof_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/proof"
)

// A run begins at the floor of a groove where the plan wants the groove first, and
// nowhere else: each of two decks is refused under the other's plan.
func TestFromTheFloorOnlyWhereTheGrooveIsFirst(t *testing.T) {
	grooved := func(after string) *joinery.Plan {
		return workpiece.PieceFrom(t, "24 1_1/2 3", "groove panel bottom 1/4 5/8:front - 3/8", "mortise m bottom 1/4 5/8:front 2-4:left 1"+after)
	}
	ordered, open := grooved(" after panel"), grooved("")
	for _, c := range []struct {
		made, under *joinery.Plan
		says        string
	}{
		{ordered, ordered, ""},
		{open, open, ""},
		{ordered, open, "more than the bit may"},
		{open, ordered, `cuts nothing: the groove "panel" is that deep`},
	} {
		report := proof.Check(c.under, claimsOf(deckOf(t, c.made)))
		err := report.Err()
		if c.says == "" {
			assert.NoError(t, err)
			continue
		}
		assert.Contains(t, fmt.Sprint(err), c.says)
	}
}
