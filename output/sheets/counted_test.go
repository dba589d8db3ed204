package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/output/screen"
	"fencecard/output/wording"
	"fencecard/setup/book"
	"fencecard/setup/deck"
)

func TestChangesCountPairsOfBlocks(t *testing.T) {
	for n, want := range map[int]string{0: "no pairs of blocks to set", 1: "1 pair of blocks to set", 11: "11 pairs of blocks to set"} {
		d := &deck.Deck{Plan: &joinery.Plan{}, Changes: deck.Changes{Stops: n}}
		d.Plan.Shop.Stops = joinery.Blocks
		assert.Contains(t, wording.ChangesLines(d)[0], want)
	}
}

// A shift of less than a division is a number, not a hair more than none.
func TestApartSaysHowFar(t *testing.T) {
	near := book.Offer{Shift: 4 * joinery.Inch / 1000}
	assert.Equal(t, "the same bit, its fence 0.004 in further away", screen.Apart(near, joinery.InchScale))
	near.Shift = -joinery.Inch / 32
	assert.Equal(t, "the same bit, its fence 1/32 in nearer", screen.Apart(near, joinery.InchScale))
	near.Shift = joinery.Millimetre / 25
	assert.Equal(t, "the same bit, its fence 0.04 mm further away", screen.Apart(near, joinery.MetricScale))
}
