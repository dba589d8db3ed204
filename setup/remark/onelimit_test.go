package remark_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// TestThinWallHasOneRule: a run has the caution exactly where its cut has the
// warning of a wall.
func TestThinWallHasOneRule(t *testing.T) {
	thin, thick := 0, 0
	for name, plan := range workpiece.RealPlans(t) {
		d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		type of struct{ piece, cut string }
		warned := map[of]bool{}
		for _, w := range d.Warnings {
			if w.Code == "thin-wall" && strings.Contains(w.Text, "leaves a wall of") {
				warned[of{w.Piece, w.Cut}] = true
			}
		}
		for _, s := range d.Setups {
			for _, r := range s.Runs {
				has := slices.Contains(codes(r.Cautions), "thin-wall")
				assert.Equal(t, warned[of{r.Piece.Name, r.Cut.Name}], has, "%s: %s of %s", name, r.Cut.Name, r.Piece.Name)
				if has {
					thin++
				} else {
					thick++
				}
			}
		}
	}
	assert.Positive(t, thin)
	assert.Positive(t, thick)
}

// A metric shop leaves 3 mm between two tenons, as its rule shows it (common
// practice, no source).
func TestTheWebBetweenTenonsIsMetricInAMetricShop(t *testing.T) {
	said := func(unit measure.Unit) string {
		mortises := func(cut, in, part string) joinery.Cut {
			c := workpiece.CutFrom(t, "mortise "+cut+" "+in+" 1/4 3/8:"+part+" 2-4:top 1")
			c.Mates = joinery.Mate{Piece: cut + " rail", Cut: "end"}
			return c
		}
		plan := workpiece.PieceFrom(t, "1_1/2 1_1/2 17", "mortise a right 1/4 1/2:front 2-4:top 1")
		plan.Unit, plan.Shop.Scale = unit, measure.DefaultScale(unit)
		plan.Pieces[0].Grain = joinery.TopBottom
		plan.Pieces[0].Cuts = []joinery.Cut{mortises("one", "right", "front"), mortises("two", "back", "left")}
		for _, rail := range []struct{ name, at, size, cheeks string }{
			{"one rail", "left", "20 1 3", "front:3/8 back:3/8 top:1/2 bottom:1/2"},
			{"two rail", "front", "1 20 3", "left:3/8 right:3/8 top:1/2 bottom:1/2"},
		} {
			p := workpiece.PieceFrom(t, rail.size, "tenon end "+rail.at+" 15/16 "+rail.cheeks).Pieces[0]
			p.Name = rail.name
			plan.Pieces = append(plan.Pieces, p)
		}
		for i := range plan.Pieces {
			require.Empty(t, plan.Pieces[i].LayAll(plan.Shop.Scale))
		}
		for _, w := range workpiece.DeckOf(t, plan).Warnings {
			if w.Code == "tenons-meet" {
				return w.Text
			}
		}
		return ""
	}
	// From the face it enters to the other mortise are 1 1/2 - 3/8 - 1/4 = 7/8 in,
	// 22.225 mm (worked out).
	assert.Contains(t, said(measure.Inches), "3/4 in long")
	assert.Contains(t, said(measure.Millimetres), "19.23 mm long")
}
