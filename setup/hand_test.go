package setup_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// A cut made by hand has no run, but what a cut at the table would be warned
// of is said of it, and of its neighbours.
func TestByHand(t *testing.T) {
	plan := workpiece.PieceFrom(t, "3 3 20", "mortise rail right 1/2 1/2:front 1-4:top 2", "mortise stile front 1/2 1_1/4:left 1-4:top 2")
	codes := func() []string {
		var all []string
		for _, w := range workpiece.DeckOf(t, plan).Warnings {
			all = append(all, w.Code)
		}
		return all
	}
	before := codes()
	require.Contains(t, before, "cuts-meet")
	plan.Pieces[0].Cuts[1].By = "chisel"
	d := workpiece.DeckOf(t, plan)
	assert.Equal(t, 1, d.Runs())
	after := codes()
	assert.NotContains(t, after, "by-hand", "it stands on the piece's card")
	assert.Contains(t, after, "cuts-meet")
}

// What no bit reaches is no fault where it is left to the saw.
func TestByHandNeedsNoBit(t *testing.T) {
	plan := workpiece.PieceFrom(t, workpiece.BoardSize, "groove panel bottom 1/32 1/4:front - 1/4", "groove other top 1/4 1/4:front - 1/4")
	_, err := setup.Jobs(plan)
	require.ErrorContains(t, err, "write by: hand")
	plan.Pieces[0].Cuts[0].By = "saw"
	jobs, err := setup.Jobs(plan)
	require.NoError(t, err)
	assert.Len(t, jobs, 1)
}

// The order goes through what is made by hand.
func TestAfterHandWork(t *testing.T) {
	plan := workpiece.PieceFrom(t, workpiece.BoardSize, "groove last bottom 1/4 1/4:front - 1/4 after haunch", "groove haunch top 1/4 1/4:front - 1/4 after first", "groove first top 1/4 1/4:back - 1/4")
	plan.Pieces[0].Cuts[1].By = "saw"
	jobs, err := setup.Jobs(plan)
	require.NoError(t, err)
	at := func(name string) int {
		return slices.IndexFunc(jobs, func(j setup.Job) bool { return j.Cut.Name == name })
	}
	assert.Equal(t, []int{at("first")}, jobs[at("last")].After)
	assert.Empty(t, jobs[at("first")].After)
}

// A mate made by hand is checked as if it were made at the table.
func TestMateByHand(t *testing.T) {
	for name, plan := range workpiece.RealPlans(t) {
		table, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		if len(table.Joints) == 0 {
			continue
		}
		plan.Pieces = slices.Clone(plan.Pieces)
		for i := range plan.Pieces {
			cuts := slices.Clone(plan.Pieces[i].Cuts)
			for k := range cuts {
				if cuts[k].Kind == &joinery.Tenon {
					cuts[k].By = "saw"
				}
			}
			plan.Pieces[i].Cuts = cuts
		}
		hand, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		require.Len(t, hand.Joints, len(table.Joints), name)
		for i := range hand.Joints {
			assert.Equal(t, table.Joints[i].Fits, hand.Joints[i].Fits, name)
		}
	}
}

// What the fence does not reach says where a straightedge goes, once it is left
// to a hand-held router whose base the shop has. A base of 6 in and a bit of
// 3/4 in: 2 5/8 in from the base's edge to the bit.
func TestByHandBeyondTheFence(t *testing.T) {
	plan := workpiece.PieceFrom(t, "40 3/4 8", "dado middle back 3/4 19:left - 1/4")
	plan.Shop.Fence.Reach = workpiece.In(t, "10")
	plan.Shop.Base = workpiece.In(t, "6")
	const where = "clamp a straightedge 16 3/8 in from the left"
	_, err := setup.Jobs(plan)
	require.ErrorContains(t, err, where)
	plan.Pieces[0].Cuts[0].By = "router"
	said := func() string { return fmt.Sprint(workpiece.DeckOf(t, plan).Warnings) }
	assert.Contains(t, said(), "made by router, and the fence does not reach it, so for a hand-held router "+where)
	plan.Shop.Fence.Reach = workpiece.In(t, "20")
	assert.NotContains(t, said(), "straightedge")
}
