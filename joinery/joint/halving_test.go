package joint

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// What crosses another piece has its channel far from one of its ends, and place says
// nothing of it: the fence may stand at either, or it may be out of reach.
func TestWhatCrossesGoesToTheFenceByEitherEnd(t *testing.T) {
	in := measure.Inch
	upright := joinery.Piece{Name: "upright", Size: joinery.Size{2 * in, in, 30 * in}, Grain: joinery.TopBottom}
	slat := joinery.Piece{Name: "slat", Size: joinery.Size{20 * in, in, 2 * in}, Grain: joinery.LeftRight}
	halves, faults := Halving.Make(Meeting{Part: &upright, Into: &slat, Side: joinery.Front,
		Place: Place{Sides: []Inset{{Side: joinery.Left, By: 5 * in}, {Side: joinery.Top, By: -3 * in}}}}, Words{}, measure.InchScale, timber.DefaultClimate)
	require.Empty(t, faults)
	assert.True(t, halves.Part[0].Fence.Either)
	assert.False(t, halves.Into[0].Fence.Either, "the side that place names goes to the fence")
}
