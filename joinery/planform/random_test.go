package planform_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fencecard/joinery/planform"

	"github.com/stretchr/testify/require"
)

// Random plans, each a mixture of what makers wrote, written in one of the ways in
// which plans are: read as forms and put back, none changes by a byte, and put into an
// empty text they make one of which the forms say the same.
func TestRandomPlans(t *testing.T) {
	all := plans(t)
	files := make([]string, 0, len(all))
	for file := range all {
		files = append(files, file)
	}
	slices.Sort(files)
	var pool []planform.Form
	for _, file := range files {
		if forms, err := planform.Read(file, all[file]); err == nil {
			pool = append(pool, forms...)
		}
	}
	random := rand.New(rand.NewPCG(5, 19))
	read := 0
	for n := range 200 {
		text := randomPlan(t, random, pool)
		forms, err := planform.Read("plan.yaml", text)
		require.NoError(t, err, "%d\n%s", n, text)
		read += len(forms)
		for _, f := range forms {
			again, at, err := planform.Put(text, f)
			require.NoError(t, err, "%d %s\n%s", n, f.At, text)
			require.Equal(t, f.At, at)
			require.Equal(t, string(text), string(again), "%d %s", n, f.At)
		}
		built, err := rebuilt(forms)
		require.NoError(t, err, "%d\n%s", n, text)
		second, err := planform.Read("plan.yaml", built)
		require.NoError(t, err, "%d\n%s", n, built)
		require.Equal(t, valuesOf(forms), valuesOf(second), "%d\n%s\n%s", n, text, built)
	}
	require.Greater(t, read, 1000)
}

// valuesOf are all that forms say, without where they stand.
func valuesOf(forms []planform.Form) []string {
	var all []string
	for _, f := range forms {
		var said []string
		for _, field := range f.Filled() {
			said = append(said, field.Key+"="+field.Value)
		}
		slices.Sort(said)
		if len(said) > 0 {
			all = append(all, f.Kind+": "+strings.Join(said, "; "))
		}
	}
	slices.Sort(all) // a shop's woods may come before its bits or behind
	return all
}

// beginnings are how plans begin: with and without blank lines, remarks and steps, in
// braces, and with the line ends of another system.
var beginnings = []string{
	"", "# mine\n", "unit: mm\n", "title: x\r\nunit: in\r\n", "pieces:\n- piece: a\n", "pieces:\n\n  - piece: a   # one\n    count: 2\n\n# end\n",
	"{unit: in, pieces: [{piece: a}]}\n", "pieces: [\n  {piece: a}\n]\njoints: []\n", "unit: in\npieces:\n    -   piece: a\n        size:\n            top-bottom: 3\n", "\ufefftitle: 'it''s'\n",
}

// randomPlan puts things of a pool into a beginning: pieces with cuts, joints, a bit.
func randomPlan(t *testing.T, random *rand.Rand, pool []planform.Form) []byte {
	t.Helper()
	text := []byte(beginnings[random.IntN(len(beginnings))])
	lastPiece := ""
	for range 2 + random.IntN(12) {
		f := pool[random.IntN(len(pool))]
		f.Fields = slices.Clone(f.Fields)
		for i := range f.Fields {
			if f.Fields[i].Value != "" && random.IntN(6) == 0 {
				f.Fields[i].Value = names[random.IntN(len(names))]
			}
		}
		f.At = ""
		switch f.Kind {
		case planform.Plan, planform.Shop:
			continue
		case planform.Cut:
			if lastPiece == "" {
				continue
			}
			f.Under = lastPiece
			f.Set(planform.KindKey, kindOf(f))
		case planform.Joint:
			f.Under = planform.Top
			f.Set(planform.KindKey, kindOf(f))
		case planform.Bit, planform.Wood:
			f.Under = "shop"
		default:
			f.Under = planform.Top
		}
		written, at, err := planform.Put(text, f)
		if err != nil {
			continue // what cannot be written leaves the text
		}
		if f.Kind == planform.Piece {
			lastPiece = at
		}
		text = written
	}
	return text
}

// kindOf is the kind of a cut or joint, as its title begins.
func kindOf(f planform.Form) string {
	kind, _, _ := strings.Cut(f.Title, ": ")
	return kind
}

// names are values that YAML would take for something else.
var names = []string{"yes", "3", "0.10", "- a", "a: b", "# no", "it's", `1' 6 1/2"`, "{a}", "[b", "a, b", "null", "*x", "&y", "!z", "| q", "> r", "% s", "@t", "`u`", "Öl — ½", "a / left"}
