package whatif_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/whatif"
)

// A groove as wide as its bit takes one fence distance, and two once the bit
// measures less; one that took two before takes no more.
func TestDividedCuts(t *testing.T) {
	made := func(measured string) *deck.Deck {
		plan := workpiece.PieceFrom(t, "24 1_1/2 8", "groove a back 1/2 1:bottom - 1/4", "groove b back 5/8 3:bottom - 1/4")
		bit := workpiece.BitOf(workpiece.In(t, "1/2"))
		bit.Measured = workpiece.In(t, measured)
		plan.Shop.Bits = []joinery.Bit{bit}
		return workpiece.DeckOf(t, plan)
	}
	label, less := made("1/2"), made("0.492")
	want := []whatif.Divided{{Cut: `the groove "a"`, Width: workpiece.In(t, "1/2"), Word: "width", Fences: 2}}
	assert.Equal(t, want, whatif.DividedCuts(label, less))
	assert.Empty(t, whatif.DividedCuts(less, label))
	assert.Equal(t, `the groove "a", 1/2 in wide, now takes 2 fence distances; if 0.492 in will do, write width: 0.492 in`,
		want[0].Say(measure.InchScale, workpiece.In(t, "0.492")))
}
