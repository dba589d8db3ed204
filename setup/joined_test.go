package setup_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// joined makes one plan of several, for a shop that has the bits of all and a
// fence that reaches everywhere.
func joined(t testing.TB, names ...string) *joinery.Plan {
	t.Helper()
	all := workpiece.RealPlans(t)
	plan := &joinery.Plan{Name: "joined", Unit: measure.Inches, Shop: shopfile.BuiltIn(measure.Inches)}
	plan.Shop.Fence, plan.Shop.Lift, plan.Shop.Bits = joinery.FenceReach{}, 0, nil
	for _, name := range names {
		for _, b := range all[name].Shop.Bits {
			if !slices.ContainsFunc(plan.Shop.Bits, func(o joinery.Bit) bool {
				return o.True() == b.True() && o.Kind == b.Kind && o.Outline == nil && b.Outline == nil
			}) {
				b.Name = name + " " + b.Name
				plan.Shop.Bits = append(plan.Shop.Bits, b)
			}
		}
		for _, p := range all[name].Pieces {
			p.Name = name + " " + p.Name
			p.Cuts = slices.Clone(p.Cuts)
			for i := range p.Cuts {
				if c := &p.Cuts[i]; c.Moulding != nil && c.Bit != "" {
					c.Bit = name + " " + c.Bit // such a bit is never another plan's
				}
			}
			plan.Pieces = append(plan.Pieces, p)
		}
	}
	return plan
}

func joinedDeck(t testing.TB, plan *joinery.Plan) *deck.Deck {
	t.Helper()
	d, err := setup.MakeWith(t.Context(), plan, bySteps)
	require.NoError(t, err)
	return d
}

// Two plans at once have some 60 cuts, and are proved where their pieces do not
// wait for one another too much. The longest chains of cuts must be told for it.
func TestTwoPlansAtOnceAreProved(t *testing.T) {
	t.Parallel()
	for _, names := range []string{"bed nightstand", "blanket-chest bookcase", "panel-doors plate-rack", "glazed-door nightstand", "sash-window side-table"} {
		t.Run(names, func(t *testing.T) {
			t.Parallel()
			d := joinedDeck(t, joined(t, strings.Fields(names)...))
			assert.True(t, d.Changes.Proved, "%+v", d.Changes)
		})
	}
}

// All plans at once have hundreds of cuts, a third of which wait for others. What
// comes out is near the least that it could be.
func TestAllPlansAtOnce(t *testing.T) {
	t.Parallel()
	names := slices.Sorted(maps.Keys(workpiece.RealPlans(t)))
	names = slices.DeleteFunc(names, func(n string) bool {
		return n == "boot-bench" || n == "wall-cabinet"
	})
	plan := joined(t, names...)
	cuts, wait := 0, 0
	for _, p := range plan.Pieces {
		cuts += len(p.Cuts)
		for _, c := range p.Cuts {
			if len(c.After) > 0 {
				wait++
			}
		}
	}
	assert.Greater(t, cuts, 600)
	assert.Greater(t, wait, cuts/4)
	d := joinedDeck(t, plan)
	assert.LessOrEqual(t, d.Changes.Time.Minutes(), 1.04*d.Changes.Bound.Minutes())
	t.Logf("%d cuts, %g min, none takes less than %g", cuts, d.Changes.Time.Minutes(), d.Changes.Bound.Minutes())
}

// BenchmarkAllPlansAtOnce reports how far above the bound the answer is after the
// default time.
func BenchmarkAllPlansAtOnce(b *testing.B) {
	names := slices.Sorted(maps.Keys(workpiece.RealPlans(b)))
	plan := joined(b, names...)
	for b.Loop() {
		d := joinedDeck(b, plan)
		b.ReportMetric(100*(d.Changes.Time.Minutes()/d.Changes.Bound.Minutes()-1), "%-over-bound")
		b.ReportMetric(d.Changes.Time.Minutes(), "min-searched")
	}
}
