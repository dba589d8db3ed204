package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/whatif"
)

// What is less is said as less and what is more as more, each once, and only what the
// shop counts.
func TestSavingsSayWhichWay(t *testing.T) {
	marks := &joinery.Shop{}
	blocks := &joinery.Shop{Stops: joinery.Blocks}
	paid := &joinery.Shop{Minutes: joinery.Minutes{Pass: 1, Fit: 1}}
	for _, test := range []struct {
		less deck.Changes
		shop *joinery.Shop
		want string
	}{
		{deck.Changes{Bits: 1, Time: 3 * joinery.Minute}, marks, "1 bit less, 3 min"},
		{deck.Changes{Bits: 2, Fences: 1, Heights: 4, Time: 8 * joinery.Minute}, marks, "2 bits, 1 fence setting, 4 heights less, 8 min"},
		{deck.Changes{Fences: 1, Heights: -2, Time: joinery.Minute}, marks, "1 fence setting less, 2 heights more, 1 min"},
		{deck.Changes{Bits: -1, Fences: 3, Heights: -1, Time: joinery.Minute / 2}, marks, "3 fence settings less, 1 bit, 1 height more, 0.5 min"},
		{deck.Changes{Fences: 2, Stops: 3, Passes: 5, Fits: 1}, marks, "2 fence settings less, 0 min"},
		{deck.Changes{Fences: 2, Stops: -1}, blocks, "2 fence settings less, 1 pair of stops more, 0 min"},
		{deck.Changes{Stops: 2}, blocks, "2 pairs of stops less, 0 min"},
		{deck.Changes{Passes: 1, Fits: -2}, paid, "1 pass less, 2 trials of fit more, 0 min"},
		{deck.Changes{Passes: -7, Fits: 1}, paid, "1 trial of fit less, 7 passes more, 0 min"},
	} {
		assert.Equal(t, test.want, wording.Savings(&whatif.Saving{Less: test.less}, test.shop))
	}
}
