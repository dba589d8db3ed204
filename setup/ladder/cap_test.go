package ladder_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/ladder"
)

// Common practice, no source: a half-inch straight bit in white oak takes
// five-sixteenths at a pass, so a mortise 1 1/4 deep takes four passes.
func TestHalfInchBitInWhiteOak(t *testing.T) {
	oak, _, ok := timber.FindWood("white oak")
	require.True(t, ok)
	// Wood Handbook, FPL-GTR-190 (2010), table 5-3b: side hardness 1360 lbf.
	require.Equal(t, 1360.0, oak.Hardness)
	bit := joinery.Bit{Name: "half-inch straight", Diameter: workpiece.In(t, "1/2"), Shank: workpiece.In(t, "1/2"), Plunges: joinery.Yes}
	shop := joinery.Shop{Scale: measure.InchScale}
	most := ladder.CapFor(&bit, oak, &shop)
	assert.Equal(t, workpiece.In(t, "5/16"), most.Depth)
	assert.Len(t, ladder.Of([]ladder.Demand{{Depth: workpiece.In(t, "1 1/4"), Cap: most.Depth}}, shop.Scale), 4)
}

// The rule of caps, row by row (common practice, no source).
func TestCapFor(t *testing.T) {
	shop := joinery.Shop{Scale: measure.InchScale}
	half := workpiece.In(t, "1/2")
	rows := []struct {
		name     string
		hardness float64
		bit      joinery.Bit
		want     string
	}{
		{"soft, share 1, held by 3/8", 599, joinery.Bit{Diameter: half, Shank: half}, "3/8"},
		{"soft, share 1", 599, joinery.Bit{Diameter: workpiece.In(t, "3/8"), Shank: half}, "3/8"},
		{"middling, share 3/4", 600, joinery.Bit{Diameter: half, Shank: half}, "3/8"},
		{"middling, share 3/4, edge", 999, joinery.Bit{Diameter: workpiece.In(t, "3/8"), Shank: half}, "9/32"},
		{"hard, share 5/8", 1000, joinery.Bit{Diameter: half, Shank: half}, "5/16"},
		{"hard, share 5/8, edge", 1499, joinery.Bit{Diameter: half, Shank: half}, "5/16"},
		{"very hard, share 1/2", 1500, joinery.Bit{Diameter: half, Shank: half}, "1/4"},
		{"unknown, share 1/2", 0, joinery.Bit{Diameter: half, Shank: half}, "1/4"},
		{"rounded down to the scale", 1320, joinery.Bit{Diameter: workpiece.In(t, "3/8"), Shank: half}, "15/64"},
		{"1/4 shank, soft", 950, joinery.Bit{Diameter: half, Shank: workpiece.In(t, "1/4")}, "1/4"},
		{"1/4 shank, hard", 1000, joinery.Bit{Diameter: half, Shank: workpiece.In(t, "1/4")}, "1/8"},
		{"1/4 shank, unknown", 0, joinery.Bit{Diameter: half, Shank: workpiece.In(t, "1/4")}, "1/8"},
		{"8 mm shank, hard, 4 mm floored", 1320, joinery.Bit{Diameter: half, Shank: workpiece.In(t, "8 mm")}, "5/32"},
		{"8 mm shank, soft, 6 mm floored", 540, joinery.Bit{Diameter: half, Shank: workpiece.In(t, "8 mm")}, "15/64"},
		{"an edge shorter than the rule's depth", 540, joinery.Bit{Diameter: half, Shank: half, Cutting: workpiece.In(t, "0.2")}, "3/16"},
		{"the bit's own cap", 540, joinery.Bit{Diameter: half, Shank: half, Cap: workpiece.In(t, "1/16")}, "1/16"},
		{"the measured diameter counts", 1360, joinery.Bit{Diameter: half, Measured: workpiece.In(t, "0.4"), Shank: half}, "1/4"},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			got := ladder.CapFor(&r.bit, timber.Wood{Name: "wood", Hardness: r.hardness}, &shop)
			assert.Equal(t, workpiece.In(t, r.want), got.Depth, got.Rule)
		})
	}
	shop.Share = timber.Share{Num: 1, Den: 4}
	got := ladder.CapFor(&joinery.Bit{Diameter: half}, timber.Wood{Hardness: 500}, &shop)
	assert.Equal(t, workpiece.In(t, "1/8"), got.Depth, "the shop's own share")
}

// Sheet materials have no side hardness; their shares are common practice, no
// source, as all of these.
func TestCapInSheetMaterialsAndOwnWoods(t *testing.T) {
	half := joinery.Bit{Diameter: workpiece.In(t, "1/2"), Shank: workpiece.In(t, "1/2")}
	thin := joinery.Bit{Diameter: workpiece.In(t, "1/2"), Shank: workpiece.In(t, "1/4")}
	plywood, _, ok := timber.FindWood("plywood")
	require.True(t, ok)
	mdf, _, ok := timber.FindWood("MDF")
	require.True(t, ok)
	own := timber.Wood{Name: "bog oak", Group: timber.Own, Hardness: 1500, Share: timber.Share{Num: 1, Den: 4}}
	shy := timber.Share{Num: 1, Den: 8}
	rows := []struct {
		name  string
		bit   joinery.Bit
		wood  timber.Wood
		share timber.Share
		want  string
		rule  string
	}{
		{"plywood", half, plywood, timber.Share{}, "5/16", "5/8 of the bit's diameter in plywood"},
		{"plywood, thin shank", thin, plywood, timber.Share{}, "1/8", "1/8 in, the most for a 1/4 in shank in hard wood"},
		{"MDF", half, mdf, timber.Share{}, "3/8", "3/4 of the bit's diameter in MDF"},
		{"MDF, thin shank", thin, mdf, timber.Share{}, "1/4", "1/4 in, the most for a 1/4 in shank"},
		{"the shop's share comes before the table's", half, mdf, shy, "1/16", "the shop's own share of the bit's diameter"},
		{"an own wood's share comes before the shop's", half, own, shy, "1/8", "1/4 of the bit's diameter, your own share for bog oak"},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			got := ladder.CapFor(&r.bit, r.wood, &joinery.Shop{Scale: measure.InchScale, Share: r.share})
			assert.Equal(t, ladder.Cap{Depth: workpiece.In(t, r.want), Rule: r.rule}, got)
		})
	}
}

// A run of a metric shop names no inches.
func TestCapIsSaidInTheShopsUnit(t *testing.T) {
	wide := joinery.Bit{Diameter: 20 * measure.Millimetre, Shank: 12 * measure.Millimetre}
	mdf, _, ok := timber.FindWood("MDF")
	require.True(t, ok)
	got := ladder.CapFor(&wide, mdf, &joinery.Shop{Scale: measure.MetricScale})
	assert.Equal(t, ladder.Cap{Depth: 95 * measure.Millimetre / 10, Rule: "9.5 mm, the most for any bit"}, got)
}

// A cap under the smallest division is not rounded up to it: it stays, and
// reaches only what is no deeper.
func TestCapUnderTheScale(t *testing.T) {
	coarse := measure.Scale{Unit: measure.Inches, Division: workpiece.In(t, "1/4")}
	shop := joinery.Shop{Scale: coarse}
	bit := joinery.Bit{Diameter: workpiece.In(t, "1/4"), Shank: workpiece.In(t, "1/4")}
	got := ladder.CapFor(&bit, timber.Wood{Hardness: 1360}, &shop)
	assert.Equal(t, workpiece.In(t, "1/8"), got.Depth)
	assert.NotContains(t, got.Rule, "0 in")
	assert.True(t, got.Reaches(workpiece.In(t, "1/8"), coarse))
	assert.False(t, got.Reaches(workpiece.In(t, "9/64"), coarse))
	assert.True(t, ladder.Cap{Depth: coarse.Division}.Reaches(workpiece.In(t, "3"), coarse))
}

// Gentle passes are no deeper than 1/4 in, 1/8 in with a thin shank, and a run
// takes every rung of its ladder (common practice, no source).
func TestGentlePasses(t *testing.T) {
	oak, _, ok := timber.FindWood("white oak")
	require.True(t, ok)
	shop := joinery.Shop{Scale: measure.InchScale, Gentle: true}
	for _, c := range []struct{ diameter, shank, want string }{
		{"3/4", "1/2", "1/4"}, {"1/2", "1/2", "1/4"}, {"3/8", "3/8", "15/64"}, {"1/2", "1/4", "1/8"}, {"1/8", "1/4", "5/64"},
	} {
		bit := joinery.Bit{Diameter: workpiece.In(t, c.diameter), Shank: workpiece.In(t, c.shank)}
		assert.Equal(t, workpiece.In(t, c.want), ladder.CapFor(&bit, oak, &shop).Depth, "%+v", c)
	}
	rungs := workpiece.Inches(t, "1/8", "1/4", "1/2")
	d := ladder.Demand{Depth: workpiece.In(t, "1/2"), Cap: workpiece.In(t, "1/4")}
	assert.Equal(t, rungs[1:], ladder.Used(rungs, d))
	d.Every = true
	assert.Equal(t, rungs, ladder.Used(rungs, d))
}
