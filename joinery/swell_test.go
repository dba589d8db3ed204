package joinery_test

import (
	"testing"

	. "fencecard/joinery"
	. "fencecard/joinery/measure"
	. "fencecard/joinery/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// White oak, flat-sawn, 10 in wide: 10 x 0.00365 for each percent of moisture
// (Wood Handbook, FPL-GTR-190, table 13-5 and equation 13-2), at 70 F from 6.2 %
// in air of 30 % to 12.0 % in air of 65 % (table 4-2, rounded): 0.212 in. The
// equations behind the table are off it by a few tenths of a percent.
func TestSwells(t *testing.T) {
	oak, _, ok := FindWood("white oak")
	require.True(t, ok)
	board := &Piece{Size: Size{10 * Inch, Inch, 30 * Inch}, Grain: TopBottom, Wood: oak}
	moves, err := board.Swells(Climate{}, LeftRight, 10*Inch)
	require.NoError(t, err)
	assert.InDelta(t, 0.212, moves.Inches(), 0.005)
	moves, err = board.Swells(DefaultClimate, TopBottom, 30*Inch)
	require.NoError(t, err)
	assert.Zero(t, moves, "wood does not move along its grain")
	board.Wood = Wood{}
	unknown, err := board.Swells(DefaultClimate, LeftRight, 10*Inch)
	require.NoError(t, err)
	assert.InDelta(t, 10*0.00431*5.8, unknown.Inches(), 0.006, "American beech stands in")
}
