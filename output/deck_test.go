package output_test

import (
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"io"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/output"
	"fencecard/output/page"
	"fencecard/output/sheets"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckpart"
)

// writers are all the ways a deck goes out, by the function of this package and what
// it is asked for.
var writers = map[string]func(io.Writer, *deck.Deck) error{
	"PDF":         func(w io.Writer, d *deck.Deck) error { return output.PDF(w, d, sheets.Pages{}) },
	"PDF strips":  func(w io.Writer, d *deck.Deck) error { return output.PDF(w, d, sheets.Pages{Only: sheets.OnlyStrips}) },
	"RunPDF":      func(w io.Writer, d *deck.Deck) error { return output.RunPDF(w, d, "1.1", sheets.Pages{}) },
	"RunSVG":      func(w io.Writer, d *deck.Deck) error { return output.RunSVG(w, d, "1.1", sheets.Pages{}) },
	"SetupSVG":    func(w io.Writer, d *deck.Deck) error { return output.SetupSVG(w, d, 1, sheets.Pages{}) },
	"PieceSVG":    func(w io.Writer, d *deck.Deck) error { return output.PieceSVG(w, d, "front left leg", sheets.Pages{}) },
	"JointSVG":    func(w io.Writer, d *deck.Deck) error { return output.JointSVG(w, d, "seat rail", sheets.Pages{}) },
	"HTML":        func(w io.Writer, d *deck.Deck) error { return output.HTML(w, d, sheets.Pages{}) },
	"Page":        func(w io.Writer, d *deck.Deck) error { return output.Page(w, d, page.About{}) },
	"Beside":      func(w io.Writer, d *deck.Deck) error { return output.Beside(w, d, page.Beside{At: nowhere}) },
	"Text":        output.Text,
	"JSON":        output.JSON,
	"MatchesJSON": func(w io.Writer, d *deck.Deck) error { return output.MatchesJSON(w, d, nil) },
}

func nowhere(deck.Warning) page.Spot { return page.Spot{} }

// A new way for a deck to go out is held to what follows here, too.
func TestAllWritersAreTried(t *testing.T) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	found := 0
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		require.NoError(t, err)
		for _, d := range parsed.Decls {
			f, is := d.(*ast.FuncDecl)
			if !is || !f.Name.IsExported() || !takesADeck(f) {
				continue
			}
			found++
			assert.True(t, slices.ContainsFunc(slices.Collect(maps.Keys(writers)), func(of string) bool {
				name, _, _ := strings.Cut(of, " ")
				return name == f.Name.Name
			}), "%s takes a deck and is none of the writers tried here", f.Name.Name)
		}
	}
	assert.GreaterOrEqual(t, found, 12)
}

func takesADeck(f *ast.FuncDecl) bool {
	return slices.ContainsFunc(f.Type.Params.List, func(p *ast.Field) bool {
		var s strings.Builder
		return format.Node(&s, token.NewFileSet(), p.Type) == nil && strings.HasSuffix(s.String(), "deck.Deck")
	})
}

// A program that spoils a number gets an error and no paper, whatever it writes
// and whether it is the whole deck or a part.
func TestNoWriterTakesASpoiledDeck(t *testing.T) {
	for name, spoil := range map[string]func(d *deck.Deck){
		"start mark": func(d *deck.Deck) { firstStopped(d).Start.LeadPastEdge += measure.Inch / 64 },
		"stop mark":  func(d *deck.Deck) { firstStopped(d).Stop.TailBeforeCentre -= measure.Inch / 64 },
		"fence":      func(d *deck.Deck) { d.Setups[0].Fence.NearEdge += measure.Inch / 64 },
		"height": func(d *deck.Deck) {
			r := firstStopped(d)
			r.Heights = append(r.Heights[:len(r.Heights):len(r.Heights)], r.Channel.Depth+measure.Inch/8)
		},
		"side": func(d *deck.Deck) { r := firstStopped(d); r.Leads = r.Leads.Opposite() },
	} {
		for _, part := range []bool{false, true} {
			for writer, write := range writers {
				d := fresh(t)
				if part {
					var err error
					d, err = deckpart.Of(d, deckpart.Only{Setups: []int{1}})
					require.NoError(t, err)
				}
				require.NoError(t, write(io.Discard, d), "%s, sound", writer)
				spoil(d)
				var out counter
				assert.Error(t, write(&out, d), "%s spoiled, %s, part %v", name, writer, part)
				assert.Zero(t, out, "%s spoiled, %s wrote nevertheless", name, writer)
			}
		}
	}
}

// counter counts what is written.
type counter int

func (c *counter) Write(p []byte) (int, error) { *c += counter(len(p)); return len(p), nil }

func fresh(t *testing.T) *deck.Deck {
	t.Helper()
	plan, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
	require.NoError(t, err)
	return d
}

// firstStopped is the first run of setup 1 that starts and stops at a mark.
func firstStopped(d *deck.Deck) *deck.Run {
	for i := range d.Setups[0].Runs {
		if r := &d.Setups[0].Runs[i]; r.Start != nil && r.Stop != nil {
			return r
		}
	}
	panic("no run of setup 1 is stopped at both ends")
}
