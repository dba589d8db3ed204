package planfile_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"
)

// partSizes are limits on a tree at which plans of some ten pieces come apart.
var partSizes = []int{30, 60, 120, 250}

const heavy = "words and values up to here"

func noShop(string) ([]byte, error) { return nil, fs.ErrNotExist }

// wholeAndInParts holds that a plan read in parts is the plan read at once, and
// that its faults are. It counts the sizes at which it came apart and was not
// refused for its weight.
func wholeAndInParts(t *testing.T, data []byte) (compared int) {
	t.Helper()
	want, whole := planfile.Read("plan.yaml", data, noShop)
	for _, most := range partSizes {
		got, inParts := planfile.ReadInParts("plan.yaml", data, noShop, most)
		if inParts != nil && strings.Contains(inParts.Error(), heavy) {
			continue
		}
		compared++
		if whole == nil {
			if assert.NoError(t, inParts, "in parts of %d", most) {
				samePlan(t, want, got)
			}
			continue
		}
		var all, some joinery.Faults
		require.ErrorAs(t, whole, &all)
		if assert.ErrorAs(t, inParts, &some, "in parts of %d", most) {
			assert.Subset(t, some, all, "in parts of %d", most)
		}
	}
	return compared
}

// samePlan compares two plans a cut at a time, so that a difference can be read.
func samePlan(t *testing.T, want, got *joinery.Plan) {
	t.Helper()
	require.Equal(t, len(want.Pieces), len(got.Pieces), "pieces")
	for i := range want.Pieces {
		w, g := want.Pieces[i], got.Pieces[i]
		require.Equal(t, len(w.Cuts), len(g.Cuts), "cuts of %s", w.Name)
		for j := range w.Cuts {
			require.Equal(t, w.Cuts[j].Place, g.Cuts[j].Place)
			require.Equal(t, w.Cuts[j], g.Cuts[j])
		}
		w.Cuts, g.Cuts = nil, nil
		require.Equal(t, w, g)
	}
	w, g := *want, *got
	w.Pieces, g.Pieces = nil, nil
	require.Equal(t, w, g)
}

// plans gives every plan there is.
func plans(t testing.TB) map[string][]byte {
	all := map[string][]byte{"boot bench": examples.BootBench, "starter": examples.StarterPlan}
	for _, pattern := range []string{"../../testdata/*.yaml", "../../testdata/plans/*.yaml", gallery + "/*.yaml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, file := range files {
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			all[file] = data
		}
	}
	return all
}

func TestReadInParts(t *testing.T) {
	compared := 0
	for name, data := range plans(t) {
		t.Run(name, func(t *testing.T) { compared += wholeAndInParts(t, data) })
	}
	assert.Greater(t, compared, 400)
}

// The same holds for a plan in braces and brackets, as a program writes it.
func TestReadBracesInParts(t *testing.T) {
	compared := 0
	for name, data := range plans(t) {
		var tree map[string]any
		if strings.Contains(name, "broken") || yaml.Load(data, &tree) != nil {
			continue
		}
		t.Run(name, func(t *testing.T) {
			short, err := json.Marshal(tree)
			require.NoError(t, err)
			long, err := json.MarshalIndent(tree, "", "  ")
			require.NoError(t, err)
			compared += wholeAndInParts(t, short) + wholeAndInParts(t, long)
			block, err := yaml.Dump(tree)
			require.NoError(t, err)
			compared += wholeAndInParts(t, block)
		})
	}
	assert.Greater(t, compared, 100)
}
