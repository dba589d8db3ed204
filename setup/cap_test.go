package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
)

// Sheet materials have no side hardness; their shares are common practice, no
// source, as all of these.
func TestCapInSheetMaterialsAndOwnWoods(t *testing.T) {
	half := joinery.Bit{Diameter: in(t, "1/2"), Shank: in(t, "1/2")}
	thin := joinery.Bit{Diameter: in(t, "1/2"), Shank: in(t, "1/4")}
	plywood, _, ok := joinery.FindWood("plywood")
	require.True(t, ok)
	mdf, _, ok := joinery.FindWood("MDF")
	require.True(t, ok)
	own := joinery.Wood{Name: "bog oak", Group: joinery.Own, Hardness: 1500, Share: joinery.Share{Num: 1, Den: 4}}
	shy := joinery.Share{Num: 1, Den: 8}
	rows := []struct {
		name  string
		bit   joinery.Bit
		wood  joinery.Wood
		share joinery.Share
		want  string
		rule  string
	}{
		{"plywood", half, plywood, joinery.Share{}, "5/16", "5/8 of the bit's diameter in plywood"},
		{"plywood, thin shank", thin, plywood, joinery.Share{}, "1/8", "1/8 in, the most for a 1/4 in shank in hard wood"},
		{"MDF", half, mdf, joinery.Share{}, "3/8", "3/4 of the bit's diameter in MDF"},
		{"MDF, thin shank", thin, mdf, joinery.Share{}, "1/4", "1/4 in, the most for a 1/4 in shank"},
		{"the shop's share comes before the table's", half, mdf, shy, "1/16", "the shop's own share of the bit's diameter"},
		{"an own wood's share comes before the shop's", half, own, shy, "1/8", "1/4 of the bit's diameter, your own share for bog oak"},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			got := setup.CapFor(&r.bit, r.wood, &joinery.Shop{Scale: joinery.InchScale, Share: r.share})
			assert.Equal(t, setup.Cap{Depth: in(t, r.want), Rule: r.rule}, got)
		})
	}
}

// A card of a metric shop names no inches.
func TestCapIsSaidInTheShopsUnit(t *testing.T) {
	wide := joinery.Bit{Diameter: 20 * joinery.Millimetre, Shank: 12 * joinery.Millimetre}
	mdf, _, ok := joinery.FindWood("MDF")
	require.True(t, ok)
	got := setup.CapFor(&wide, mdf, &joinery.Shop{Scale: joinery.MetricScale})
	assert.Equal(t, setup.Cap{Depth: 95 * joinery.Millimetre / 10, Rule: "9.5 mm, the most for any bit"}, got)
}
