package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup"
)

// A drop that is hard by the bit's own width of tail is a question of the side at
// the fence, not of the bit: the bit of the mortise's width stays.
func TestAHardDropChoosesNoNarrowerBit(t *testing.T) {
	plan, err := planfile.Read("leg.yaml", []byte(`
unit: in
wood: black cherry
pieces:
  - piece: leg
    size: {left-right: 1 3/4, front-back: 1 3/4, top-bottom: 17}
    cuts:
      - mortise: rail
        in: left
        width: 3/8
        setback: 1/2 from front
        span: 1 to 4 5/16 from top   # tail 3 15/16 before a 3/8 bit, 4 1/16 before a 1/4
        depth: 3/4
`), nil)
	require.NoError(t, err)
	d, err := setup.Make(plan)
	require.NoError(t, err)
	require.Len(t, d.Setups, 1)
	assert.Equal(t, 3*measure.Inch/8, d.Setups[0].Bit.True())
	assert.True(t, d.Setups[0].Runs[0].HardDrop(plan.Shop.Rules))
}
