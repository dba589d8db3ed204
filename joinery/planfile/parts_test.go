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
var partSizes = []int{15, 30, 60, 120, 250}

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

// Layouts that a reader of parts could take for something else.
func TestOddLayoutsInParts(t *testing.T) {
	const (
		size = "{left-right: 30, front-back: 9, top-bottom: 1}"
		cut  = "{dado: NAME, in: top, width: 1/4, setback: 1 from left, depth: 1/4}"
	)
	named := func(name string) string { return strings.Replace(cut, "NAME", name, 1) }
	cuts := func(before string) string {
		return "\n" + before + "- " + named("a") + "\n" + before + "- " + named("b") + "\n" + before + "- " + named("c") + "\n"
	}
	for name, text := range map[string]string{
		"lists at their key's margin": "unit: in\npieces:\n- piece: a\n  size: " + size + "\n  cuts:" + cuts("  ") +
			"- piece: b\n  cuts:" + cuts("  ") + "  size: " + size + "\ntitle: x\n",
		"the list first": "pieces:\n  - cuts:" + cuts("      ") + "    piece: a\n    size: " + size + "\nunit: in\n",
		"a dash alone":   "unit: in\npieces:\n  -\n    piece: a\n    size: " + size + "\n    cuts:" + cuts("      ") + "  - piece: b\n    size: " + size + "\n",
		"quoted keys":    "'unit': in\n\"pieces\":\n  - \"piece\": a\n    size: " + size + "\n    'cuts':" + cuts("      "),
		"remarks everywhere": "# a\nunit: in # b\npieces: # c\n# - piece: no\n  # d\n  - piece: a # e: [\n    size: " + size + "\n# f\n    cuts: # g\n#\n" +
			strings.TrimPrefix(cuts("      "), "\n") + "# h\n  # i\n",
		"brackets in texts": "unit: in\npieces:\n  - piece: see [1\n    size: " + size + "\n    cuts:\n      - {dado: x}y, in: top}\n",
		"plain brackets": "unit: in\npieces:\n  - piece: a [b {c\n    size: " + size + "\n    cuts:" + cuts("      ") +
			"      - dado: a 3/8\" one, don't\n        in: top\n        width: 1/4\n        setback: 5 from left\n        depth: 1/4\n        note: it's {one} [of] 'these\n",
		"quotes over lines": "unit: in\ntitle: \"a\n- piece: b\n  pieces:\n  - c\"\npieces:\n  - piece: 'a\n\n  - it''s\n    b'\n    size: " + size + "\n    cuts:" + cuts("      "),
		"texts by lines":    "unit: in\ntitle: |\n  pieces:\n    - piece: \"no\n  [\npieces:\n  - piece: >-\n      - dado: [\n      \"\n    size: " + size + "\n    cuts:" + cuts("      "),
		"braces over lines": "unit: in\npieces:\n  - {piece: a, size: " + size + ", cuts: [\n" + named("a") + ", # one, [\n" + named("\"b, c\"") + ",\n" + named("'d]'") + "]}\n  - {piece: b,\n  size: " + size + "}\n",
		"all in braces":     "{unit: in, pieces: [{piece: a, cuts: [" + named("it's") + ", " + named("b") + ", " + named("c#d") + "], size: " + size + "},{piece: é}], title: \"{\"}\n",
		"no blanks": `{"unit":"in","pieces":[{"piece":"a","size":{"left-right":30,"front-back":9,"top-bottom":1},"cuts":[` +
			`{"dado":"a:'b","in":"top","width":"1/4","setback":"1 from left","depth":"1/4"},{"dado":"c","in":"top","width":"1/4","setback":"2 from left","depth":"1/4"}]}]}`,
		"a comma last":       "unit: in\npieces: [{piece: a, size: " + size + ", cuts: [" + named("a") + ", " + named("b") + ",]},]\n",
		"pieces twice":       "unit: in\npieces:\n  - {piece: a, size: " + size + "}\n  - {piece: b, size: " + size + "}\npieces:\n  - {piece: c, size: " + size + "}\n  - {piece: d}\n",
		"document marks":     "---\nunit: in\npieces:\n- {piece: a, size: " + size + "}\n- {piece: b, size: " + size + "}\n...\n",
		"a second document":  "---\nunit: in\npieces:\n- {piece: a, size: " + size + "}\n- {piece: b, size: " + size + "}\n---\nunit: in\n",
		"a mirror before":    "unit: in\npieces:\n  - {piece: b, mirror: {of: a, across: left-right}, cuts: [" + named("d") + "]}\n  - {piece: a, size: " + size + ", cuts: [" + named("a") + "]}\n",
		"a dash astray":      "unit: in\npieces:\n  - piece: a\n    size: " + size + "\n    cuts:" + cuts("      ") + "     - " + named("d") + "\n",
		"a key astray":       "unit: in\npieces:\n  - piece: a\n    size: " + size + "\n    cuts:" + cuts("      ") + "   count: 2\n",
		"nothing in the end": "unit: in\npieces:\n  - piece: a\n    size: " + size + "\n    cuts:" + cuts("      ") + "  -\n",
		"not a list":         "unit: in\npieces:\n    piece: a\n    size: " + size + "\n    cuts:" + cuts("      "),
	} {
		t.Run(name, func(t *testing.T) {
			assert.Positive(t, wholeAndInParts(t, []byte(text)))
			wholeAndInParts(t, []byte(strings.ReplaceAll(text, "\n", "\r\n")))
		})
	}
}
