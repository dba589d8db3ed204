package remark_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/remark"
)

// TestWarningTableIsWhole reads the code of every warning from the sources: the
// table has each, and none besides.
func TestWarningTableIsWhole(t *testing.T) {
	written := regexp.MustCompile(`(?:\.warn\([^"\n]*, |Code: |WarningCode\{|\n\t\{)"([a-z]+(?:-[a-z]+)+)"`)
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	ofJoints, err := filepath.Glob("joints/*.go")
	require.NoError(t, err)
	require.NotEmpty(t, ofJoints)
	used := map[string]bool{}
	for _, file := range append(files, ofJoints...) {
		if strings.HasSuffix(file, "_test.go") || strings.HasPrefix(file, "caution") || file == "table.go" {
			continue
		}
		source, err := os.ReadFile(file)
		require.NoError(t, err)
		for _, m := range written.FindAllSubmatch(source, -1) {
			used[string(m[1])] = true
		}
	}
	listed := map[string]bool{}
	for _, c := range remark.WarningCodes() {
		assert.False(t, listed[c.Code], "%s twice", c.Code)
		listed[c.Code] = true
		assert.Regexp(t, `^[A-Z].*\.$`, c.Says, c.Code)
		assert.LessOrEqual(t, len(c.Says), 60, "%s: one line of the help", c.Code)
	}
	assert.Equal(t, used, listed)
}

// TestEveryWarningIsInTheTable makes decks of everything that is warned of in
// the test data.
func TestEveryWarningIsInTheTable(t *testing.T) {
	codes := remark.WarningCodes()
	for name, plan := range workpiece.RealPlans(t) {
		d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		for _, w := range d.Warnings {
			assert.True(t, slices.ContainsFunc(codes, func(c remark.WarningCode) bool { return c.Code == w.Code }), "%s: %s", name, w.Code)
		}
	}
}

func TestNoWoodIsSaidOnce(t *testing.T) {
	said := func(plan *joinery.Plan) []string {
		var all []string
		for _, w := range workpiece.DeckOf(t, plan).Warnings {
			if w.Code == "no-wood" {
				assert.Empty(t, w.Piece)
				all = append(all, w.Text)
			}
		}
		return all
	}
	ash := timber.Wood{Name: "white ash", Hardness: 1320}
	of := func(woods ...timber.Wood) *joinery.Plan {
		plan := workpiece.PieceFrom(t, "24 3 1_1/2", "groove panel bottom 1/2 1/2:front - 1/4")
		first := plan.Pieces[0]
		plan.Pieces = nil
		for i, wood := range woods {
			p := first
			p.Name, p.Wood = string(rune('a'+i))+" rail", wood
			p.Cuts = slices.Clone(first.Cuts)
			plan.Pieces = append(plan.Pieces, p)
		}
		plan.Pieces = append(plan.Pieces, joinery.Piece{Name: "board", Size: first.Size})
		return plan
	}
	assert.Empty(t, said(of(ash, ash)), "a board without cuts needs no wood")
	whole := said(of(timber.Wood{}, timber.Wood{}))
	require.Len(t, whole, 1)
	assert.Contains(t, whole[0], "the plan names no wood: ")
	assert.Contains(t, whole[0], "write wood: white ash")
	one := said(of(ash, timber.Wood{}))
	require.Len(t, one, 1)
	assert.Contains(t, one[0], `no wood is named for "b rail": `)
	two := said(of(timber.Wood{}, ash, timber.Wood{}))
	require.Len(t, two, 1)
	assert.Contains(t, two[0], `no wood is named for "a rail" and 1 more: `)
}
