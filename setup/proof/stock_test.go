package proof_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/proof"
)

// What a plan wants outside its wood, or of no size, is refused whatever the runs
// say: runs that follow it would agree with it.
func TestAPlanThatWantsNoneOfItsWoodIsRefused(t *testing.T) {
	long, wide, thick := workpiece.In(t, "24"), workpiece.In(t, "3"), workpiece.In(t, "1 1/2")
	for _, spoiled := range []struct {
		says string
		it   func(*joinery.Channel)
	}{
		{"names no two sides that meet", func(c *joinery.Channel) { c.Near = c.Down.Opposite() }},
		{"names no two sides that meet", func(c *joinery.Channel) { c.Down = joinery.NoSide }},
		{"is entered from 0 to 0 from the bottom", func(c *joinery.Channel) { c.Depth = 0 }},
		{"is entered 1 outside the piece at the top", func(c *joinery.Channel) { c.Depth = thick + workpiece.In(t, "1") }},
		{"lies from 1/2 to 1/2 from the front", func(c *joinery.Channel) { c.Width = 0 }},
		{"lies 1/2 outside the piece at the front", func(c *joinery.Channel) { c.Setback = -c.Setback }},
		{"lies 1/2 outside the piece at the back", func(c *joinery.Channel) { c.Setback = wide }},
		{"runs 4 outside the piece at the left", func(c *joinery.Channel) { c.Lo = -workpiece.In(t, "4") }},
		{"runs 1 outside the piece at the right", func(c *joinery.Channel) { c.Hi = long + workpiece.In(t, "1") }},
		{"runs from 24 to 24 from the left, which is not", func(c *joinery.Channel) { c.Lo = c.Hi }},
	} {
		plan := workpiece.PlainPlan(t)
		claims := claimsOf(deckOf(t, plan))
		require.Empty(t, proof.Check(plan, claims).Faults)
		spoiled.it(&plan.Pieces[0].Cuts[0].Channels[0])
		var told []string
		for _, d := range proof.Check(plan, claims).Faults {
			if d.Field == "plan" {
				told = append(told, d.Text)
			}
		}
		require.Len(t, told, 1, spoiled.says)
		assert.Contains(t, told[0], `the plan's groove "groove" in "piece" `+spoiled.says)
	}
}

// Nor does a deck come of it: runs of a cut that runs out of its piece agree
// with it to the last figure.
func TestNoDeckOfACutBesideItsWood(t *testing.T) {
	plan := workpiece.PlainPlan(t)
	c := &plan.Pieces[0].Cuts[0].Channels[0]
	c.Lo = -workpiece.In(t, "4")
	_, err := setup.Make(plan)
	assert.ErrorContains(t, err, "runs 4 outside the piece at the left")
}
