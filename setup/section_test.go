package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
)

// TestSection lays a rail's groove, 10 from the bottom and 8 wide, 9 deep in a
// rail 20 thick and 90 high: with the bottom to the fence its walls are at 10
// and 18, with the top to the fence at 72 and 80.
func TestSection(t *testing.T) {
	size := joinery.Size{mm(t, "640"), mm(t, "20"), mm(t, "90")}
	groove := joinery.Cut{
		Kind: &joinery.Groove, Name: "panel", In: joinery.Back, Width: mm(t, "8"), Depth: mm(t, "9"),
		Start: joinery.Setback{Distance: mm(t, "10"), From: joinery.Bottom},
	}
	for _, c := range []struct {
		fence     joinery.Side
		near, far string
	}{
		{joinery.NoSide, "10", "18"},
		{joinery.Bottom, "10", "18"},
		{joinery.Top, "72", "80"},
	} {
		groove.Fence.Side = c.fence
		d := deckOf(t, planOf(t, joinery.Millimetres, size, groove, bitOf(mm(t, "8"))))
		require.Equal(t, 1, d.Cards())
		assert.Equal(t, setup.Section{
			Across: mm(t, "90"), Up: mm(t, "20"), Near: mm(t, c.near), Far: mm(t, c.far), Depth: mm(t, "9"),
		}, d.Setups[0].Cards[0].Section(), "fence side %v", c.fence)
	}
}
