package screen_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/timber"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/book"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
	"fencecard/setup/whatif"
)

// small is a plan with something to say for every writer: a mortise that stops at both
// ends, a groove, bits of which no two allow alike.
const small = `title: Two legs
unit: in
wood: white ash
shop:
  bits:
    - {bit: three eighths, diameter: 3/8, cutting: 1 1/4, shank: 3/8, plunges: yes, speed: 22000}
    - {bit: quarter, diameter: 1/4, cutting: 3/4, shank: 1/4, plunges: yes}
pieces:
  - piece: leg
    count: 2
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: rail, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1}
      - {groove: panel, in: front, width: 1/4, setback: 1/2 from left, depth: 1/4}
`

// Every writer has a text of its own in testdata, in which each number and word is
// where it belongs; anew where FENCECARD_GOLDEN is "update".
func TestWhatEachWriterSays(t *testing.T) {
	d := deckOf(t, small)
	scale := d.Plan.Shop.Scale
	changed := deckOf(t, strings.Replace(small, "1/2 from left", "33/64 from left", 1))
	stood := d.Setups[0].Fence.NearEdge + measure.Inch/64
	kept, err := book.Keep(d, 1, book.Keeping{Name: "panel grooves", Notes: []string{"sharp bit"}, Stood: book.Stood{Fence: &stood},
		From: "legs.yaml", On: time.Date(2026, 1, 31, 12, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	b, err := book.Read("book.txt", nil)
	require.NoError(t, err)
	b, err = b.Put(kept, false)
	require.NoError(t, err)
	second, err := book.Keep(d, 2, book.Keeping{Name: "rail mortises", From: "legs.yaml", On: time.Date(2026, 2, 1, 12, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	b, err = b.Put(second, false)
	require.NoError(t, err)
	why, err := whatif.Explain(t.Context(), d)
	require.NoError(t, err)
	claims := proof.Of(d)
	whole := proof.Check(d.Plan, &claims)
	run := d.Setups[0].Runs[0].Number()
	near, depth := d.Setups[0].Fence.NearEdge+measure.Inch/32, d.Setups[0].Runs[0].Channel.Depth-measure.Inch/32
	as, err := attable.AsSet(d.Plan, &claims, run, attable.Settings{Near: &near})
	require.NoError(t, err)
	lesson, err := attable.Correct(d.Plan, &claims, run, attable.TestCut{Depth: depth})
	require.NoError(t, err)
	shop := d.Plan.Shop
	shop.Name = shopfile.BuiltInName
	ash, oak := woodNamed(t, "white ash"), woodNamed(t, "white oak")
	change := screen.WoodChange{Wood: oak, Width: 6 * measure.Inch, From: 6, To: 11}
	tangential, err := oak.Change(change.Width, change.From, change.To, timber.Tangential)
	require.NoError(t, err)
	radial, err := oak.Change(change.Width, change.From, change.To, timber.Radial)
	require.NoError(t, err)
	change.Tangential, change.Radial = &tangential, &radial
	air, err := timber.ParseTemperature("20 C")
	require.NoError(t, err)

	matches, err := b.Match(changed)
	require.NoError(t, err)

	writers := map[string]func(io.Writer) error{
		"Text":            func(w io.Writer) error { return screen.Text(w, d) },
		"Summary":         func(w io.Writer) error { return screen.Summary(w, "legs-cards.pdf", d, 4) },
		"PartSummary":     func(w io.Writer) error { return screen.PartSummary(w, "legs-run.pdf", "run 1.1", d, 1) },
		"Explain":         func(w io.Writer) error { return screen.Explain(w, d, why) },
		"ProofText":       func(w io.Writer) error { return screen.ProofText(w, d.Plan.Title, scale, &whole) },
		"AsSetText":       func(w io.Writer) error { return screen.AsSetText(w, scale, &as) },
		"CorrectionsText": func(w io.Writer) error { return screen.CorrectionsText(w, scale, &lesson) },
		"KeptSetups":      func(w io.Writer) error { return screen.KeptSetups(w, b.Entries()) },
		"KeptSetup":       func(w io.Writer) error { return screen.KeptSetup(w, b.Entries()[0]) },
		"KeptCuts":        func(w io.Writer) error { return screen.KeptCuts(w, b.Entries()[0]) },
		"Matches":         func(w io.Writer) error { return screen.Matches(w, changed, matches) },
		"Shop":            func(w io.Writer) error { return screen.Shop(w, &shop, []timber.Wood{ash, oak}) },
		"Woods":           func(w io.Writer) error { return screen.Woods(w, []timber.Wood{ash, oak}) },
		"Wood":            func(w io.Writer) error { return screen.Wood(w, ash, &shop, "said beside it") },
		"Change":          func(w io.Writer) error { return screen.Change(w, change) },
		"EMC":             func(w io.Writer) error { return screen.EMC(w, air, 45, 8.6) },
	}
	for _, name := range exportedWriters(t) {
		write, is := writers[name]
		if !assert.True(t, is, "%s writes, and has no text here", name) {
			continue
		}
		var got strings.Builder
		require.NoError(t, write(&got), name)
		file := filepath.Join("testdata", strings.ToLower(name)+".txt")
		if os.Getenv("FENCECARD_GOLDEN") == "update" {
			require.NoError(t, os.WriteFile(file, []byte(got.String()), 0o644))
			continue
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, string(want), got.String(), "%s: read the difference, then refresh it with FENCECARD_GOLDEN=update", name)
	}
}

// exportedWriters are the functions of the package whose first parameter is a writer.
func exportedWriters(t *testing.T) (names []string) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		require.NoError(t, err)
		for _, d := range parsed.Decls {
			f, is := d.(*ast.FuncDecl)
			if !is || !f.Name.IsExported() || len(f.Type.Params.List) == 0 {
				continue
			}
			if to, is := f.Type.Params.List[0].Type.(*ast.SelectorExpr); is && to.Sel.Name == "Writer" {
				names = append(names, f.Name.Name)
			}
		}
	}
	require.NotEmpty(t, names)
	return names
}

func deckOf(t *testing.T, text string) *deck.Deck {
	t.Helper()
	plan, err := planfile.Read("legs.yaml", []byte(text), nil)
	require.NoError(t, err)
	d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
	require.NoError(t, err)
	return d
}

func woodNamed(t *testing.T, name string) timber.Wood {
	t.Helper()
	for _, w := range timber.Woods() {
		if w.Name == name {
			return w
		}
	}
	require.Fail(t, "no such wood", name)
	return timber.Wood{}
}
