package whatif_test

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/whatif"
)

// explained returns, by setup, its reasons in one text and its saving.
func explained(t testing.TB, plan *joinery.Plan) ([]string, []*whatif.Saving) {
	t.Helper()
	d := workpiece.DeckOf(t, plan)
	all, err := whatif.Explain(t.Context(), d)
	require.NoError(t, err)
	require.Len(t, all, len(d.Setups))
	var reasons []string
	var savings []*whatif.Saving
	for i, x := range all {
		assert.Same(t, &d.Setups[i], x.Setup)
		require.NotEmpty(t, x.Reasons)
		reasons = append(reasons, strings.Join(x.Reasons, "; "))
		savings = append(savings, x.Saving)
	}
	return reasons, savings
}

func TestExplain(t *testing.T) {
	quarter, half := workpiece.BitOf(workpiece.In(t, "1/4")), workpiece.BitOf(workpiece.In(t, "1/2"))
	quarter.Name, half.Name = "quarter", "half"
	bits := []joinery.Bit{half, quarter}

	t.Run("two setbacks 1/64 apart", func(t *testing.T) {
		reasons, savings := explained(t, workpiece.BoardWith(t, bits[1:], workpiece.Groove(t, "panel", "1/4", "1/4"), workpiece.Groove(t, "tongue", "1/4", "17/64")))
		assert.Contains(t, reasons[0], "the fence stands only 1/64 in from where it is for setup 2")
		assert.Contains(t, reasons[0], `no other bit or fence distance makes the groove "panel"`)
		require.NotNil(t, savings[0])
		assert.Equal(t, `setback 17/64 in instead of 1/4 in on the groove "panel"`, savings[0].Change)
		assert.Equal(t, 1, savings[0].Setups)
		assert.Equal(t, deck.Changes{Fences: 1, Heights: 2, Time: 3 * joinery.Minute}, savings[0].Less)
	})
	t.Run("a width no bit has", func(t *testing.T) {
		reasons, savings := explained(t, workpiece.BoardWith(t, bits[1:], workpiece.Groove(t, "panel", "9/32", "1/4")))
		require.Len(t, reasons, 2)
		assert.Contains(t, reasons[1], `the groove "panel" is 9/32 in wide and no bit that can cut it is: run 2 of 2`)
		require.NotNil(t, savings[1])
		assert.Equal(t, `width 1/4 in instead of 9/32 in on the groove "panel"`, savings[1].Change)
	})
	t.Run("an after", func(t *testing.T) {
		plan := workpiece.BoardWith(t, bits, workpiece.Groove(t, "a", "1/4", "1"), workpiece.Groove(t, "b", "1/2", "3", "a"), workpiece.Groove(t, "c", "1/4", "1", "b"))
		reasons, savings := explained(t, plan)
		require.Len(t, reasons, 3)
		assert.Contains(t, reasons[2], `the bit and fence distance of setup 1 once more: in piece, the groove "c" must come after the groove "b"`)
		require.NotNil(t, savings[2])
		assert.Equal(t, `the groove "c" not after "b"`, savings[2].Change)
		assert.Equal(t, 1, savings[2].Less.Bits)
	})
	t.Run("the other side to the fence", func(t *testing.T) {
		// 8 in wide: 5 from the top is 2 3/4 from the bottom.
		cut := workpiece.Groove(t, "b", "1/4", "5")
		cut.Start.From = joinery.Top
		_, savings := explained(t, workpiece.BoardWith(t, bits[1:], workpiece.Groove(t, "a", "1/4", "2 3/4"), cut))
		require.NotNil(t, savings[1])
		assert.Equal(t, `fence: either on the groove "b"`, savings[1].Change)
	})
	t.Run("nothing to spare", func(t *testing.T) {
		_, savings := explained(t, workpiece.BoardWith(t, bits[1:], workpiece.Groove(t, "a", "1/4", "1"), workpiece.Groove(t, "b", "1/4", "3")))
		assert.Equal(t, []*whatif.Saving{nil, nil}, savings)
	})
}

// What a saving promises comes true when the plan is changed so, in all pieces
// that have the cut, and the deck explained is left as it was. The plan has no
// mates, which would forbid the wider mortise.
func TestSavingsComeTrue(t *testing.T) {
	const file = "../../testdata/spelt/side-table.yaml"
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	plan, err := planfile.Read(file, data, nil)
	require.NoError(t, err)
	d := workpiece.DeckOf(t, plan)
	before := workpiece.Route(d)
	all, err := whatif.Explain(t.Context(), d)
	require.NoError(t, err)
	assert.Equal(t, before, workpiece.Route(d))
	found := false
	for _, x := range all {
		if x.Saving == nil || !strings.HasPrefix(x.Saving.Change, `setback 1/2 in instead of 3/8 in on the groove "bottom"`) {
			continue
		}
		found = true
		for i := range plan.Pieces {
			p := &plan.Pieces[i]
			for j := range p.Cuts {
				if p.Cuts[j].Name == "bottom" {
					p.Cuts[j].Start.Distance = workpiece.In(t, "1/2")
				}
			}
			require.Empty(t, p.LayAll(plan.Shop.Scale))
		}
		after := workpiece.DeckOf(t, plan)
		assert.Len(t, after.Setups, len(d.Setups)-x.Saving.Setups)
		assert.Equal(t, d.Changes.Time-x.Saving.Less.Time, after.Changes.Time)
		break
	}
	assert.True(t, found)
}

func TestExplainCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	plan := workpiece.BoardWith(t, []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1/4"))}, workpiece.Groove(t, "a", "1/4", "1/4"), workpiece.Groove(t, "b", "1/4", "17/64"))
	all, err := whatif.Explain(ctx, workpiece.DeckOf(t, plan))
	require.NoError(t, err)
	for _, x := range all {
		assert.NotEmpty(t, x.Reasons)
		assert.Nil(t, x.Saving)
		assert.True(t, x.Untried)
	}
}

// A plan of many setups has more changes to try than are tried, and the setups
// whose changes were left out are named.
func TestTooManyChangesToTry(t *testing.T) {
	bits := []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1/4"))}
	few, err := whatif.Explain(t.Context(), workpiece.DeckOf(t, workpiece.BoardWith(t, bits, workpiece.Groove(t, "a", "1/4", "1"))))
	require.NoError(t, err)
	assert.False(t, few[0].Untried)
	var cuts []joinery.Cut
	for i := range 30 {
		cuts = append(cuts, workpiece.Groove(t, fmt.Sprint("cut ", i), "1/4", fmt.Sprintf("1 %d/32", i)))
	}
	all, err := whatif.Explain(t.Context(), workpiece.DeckOf(t, workpiece.BoardWith(t, bits, cuts...)))
	require.NoError(t, err)
	assert.Len(t, all, 30)
	assert.True(t, slices.ContainsFunc(all, func(x whatif.Explanation) bool { return x.Untried && x.Saving == nil }))
}
