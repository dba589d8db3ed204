package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

func TestAllowances(t *testing.T) {
	oak, _, ok := timber.FindWood("white oak")
	require.True(t, ok)
	half := workpiece.BitOf(workpiece.In(t, "1/2"))
	half.Cutting = workpiece.In(t, "1 1/2")
	shop := joinery.Shop{
		Scale: measure.InchScale, Bits: []joinery.Bit{half, workpiece.BitOf(workpiece.In(t, "1"))},
		Lift: workpiece.In(t, "2"), Fence: joinery.FenceReach{Reach: workpiece.In(t, "8")}, Speed: 22000,
	}
	all := setup.Allowances(&shop, []timber.Wood{oak, {}})
	require.Len(t, all, 2)
	assert.Equal(t, workpiece.In(t, "1 1/2"), all[0].Deepest, "the cutting length")
	assert.Equal(t, workpiece.In(t, "2"), all[1].Deepest, "the lift, the bit not saying")
	assert.Equal(t, workpiece.In(t, "8 1/4"), all[0].Widest)
	assert.Equal(t, workpiece.In(t, "5/16"), all[0].Caps[0].Depth)
	assert.Equal(t, workpiece.In(t, "1/4"), all[0].Caps[1].Depth)
	assert.Equal(t, 22000, all[0].Top.RPM)
	assert.InDelta(t, 14.6, all[0].Rim, 0.05)

	shop.Lift = workpiece.In(t, "1")
	assert.Equal(t, workpiece.In(t, "1"), setup.Allowances(&shop, nil)[0].Deepest, "the lift is less")
	shop.Fence.Reach = 0
	assert.Zero(t, setup.Allowances(&shop, nil)[0].Widest)
}

// The widest cut is one that the setups really make, and a division more is
// beyond the fence's reach.
func TestWidestIsMade(t *testing.T) {
	plan := workpiece.PlanOf(t, measure.Inches, joinery.Size{workpiece.In(t, "30"), workpiece.In(t, "12"), workpiece.In(t, "1")}, joinery.Cut{
		Kind: &joinery.Rabbet, Name: "wide", In: joinery.Bottom, Along: joinery.Front, Depth: workpiece.In(t, "1/4"), Width: workpiece.In(t, "8 1/4"),
	}, workpiece.BitOf(workpiece.In(t, "1/2")))
	plan.Shop.Fence.Reach = workpiece.In(t, "8")
	require.Equal(t, workpiece.In(t, "8 1/4"), setup.Allowances(&plan.Shop, nil)[0].Widest)
	workpiece.DeckOf(t, plan)

	plan.Pieces[0].Cuts[0].Width += measure.Inch / 64
	require.Empty(t, plan.Pieces[0].LayAll(plan.Shop.Scale))
	_, err := setup.Make(plan)
	assert.ErrorContains(t, err, "reach of 8 in")
}
