package deck_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// TestSection lays a rail's groove, 10 from the bottom and 8 wide, 9 deep in a
// rail 20 thick and 90 high: with the bottom to the fence its walls are at 10
// and 18, with the top to the fence at 72 and 80.
func TestSection(t *testing.T) {
	size := joinery.Size{workpiece.MM(t, "640"), workpiece.MM(t, "20"), workpiece.MM(t, "90")}
	groove := joinery.Cut{
		Kind: &joinery.Groove, Name: "panel", In: joinery.Back, Width: workpiece.MM(t, "8"), Depth: workpiece.MM(t, "9"),
		Start: joinery.Setback{Distance: workpiece.MM(t, "10"), From: joinery.Bottom},
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
		d := workpiece.DeckOf(t, workpiece.PlanOf(t, measure.Millimetres, size, groove, workpiece.BitOf(workpiece.MM(t, "8"))))
		require.Equal(t, 1, d.Runs())
		assert.Equal(t, deck.Section{
			Across: workpiece.MM(t, "90"), Up: workpiece.MM(t, "20"), Near: workpiece.MM(t, c.near), Far: workpiece.MM(t, c.far), Depth: workpiece.MM(t, "9"),
		}, d.Setups[0].Runs[0].Section(), "fence side %v", c.fence)
	}
}

// TestUncut follows a groove 8 wide, 10 from the fence, made by a bit of 6 in
// two fence positions, near edge at 10 and at 12: after the first the wood from
// 16 to 18 still stands. The same groove in the middle of a rail 28 wide, made
// with either side to the fence, has its near edge at (28 + 8)/2 - 6 = 12 for
// both passes: after the first the wood from 10 to 12 still stands.
func TestUncut(t *testing.T) {
	groove := joinery.Cut{
		Kind: &joinery.Groove, Name: "panel", In: joinery.Back, Width: workpiece.MM(t, "8"), Depth: workpiece.MM(t, "9"),
		Start: joinery.Setback{Distance: workpiece.MM(t, "10"), From: joinery.Bottom},
	}
	for _, c := range []struct {
		either bool
		uncut  [][2]string
	}{
		{false, [][2]string{{"16", "18"}, {"18", "18"}}},
		{true, [][2]string{{"10", "12"}, {"18", "18"}}},
	} {
		groove.Fence.Either = c.either
		size := joinery.Size{workpiece.MM(t, "640"), workpiece.MM(t, "20"), workpiece.MM(t, "28")}
		d := workpiece.DeckOf(t, workpiece.PlanOf(t, measure.Millimetres, size, groove, workpiece.BitOf(workpiece.MM(t, "6"))))
		var got [][2]measure.Length
		for i := range d.Setups {
			for k := range d.Setups[i].Runs {
				from, to := d.Setups[i].Runs[k].Uncut()
				got = append(got, [2]measure.Length{from, to})
			}
		}
		require.Len(t, got, len(c.uncut))
		for i, want := range c.uncut {
			assert.Equal(t, [2]measure.Length{workpiece.MM(t, want[0]), workpiece.MM(t, want[1])}, got[i], "either %v, run %d", c.either, i+1)
		}
	}
}
