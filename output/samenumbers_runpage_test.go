package output_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/deckfile"
	"fencecard/output/internal/render"
	"fencecard/output/sheets"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// heightsDeck is what pages of one run say of a deck's heights, as its JSON has it.
type heightsDeck struct {
	Setups []struct {
		Heights []jsonLength
		Above   []jsonLength `json:"bit_heights"`
		Runs    []struct {
			Number  string
			Heights []jsonLength
		}
	}
}

// runPageHeights reads the heights off a page of one run: "1: 6, 4: 15, only".
// There are at most so many.
func runPageHeights(words []string, most int) string {
	at := slices.IndexFunc(words, func(w string) bool { return w == "HEIGHT" || w == "HEIGHTS" })
	if at < 0 {
		return "none"
	}
	words = slices.DeleteFunc(slices.Clone(words[at+1:]), func(w string) bool { return strings.HasPrefix(w, "(") })
	for len(words) > 0 && strings.Contains(wording.HeightToPilot, words[0]) {
		words = words[1:]
	}
	var all []string
	for len(all) < most && len(words) > 1 && ordinal.MatchString(words[0]) && figure.MatchString(words[1]) {
		all = append(all, words[0]+": "+words[1])
		words = words[2:]
	}
	if len(words) > 0 && words[0] == "only" {
		all = append(all, "only")
	}
	return strings.Join(all, ", ")
}

// A page of one run must not have a height of another run of its setup: the deeper
// one would spoil the piece, or throw it.
func TestRunPageHasTheHeightsOfItsRun(t *testing.T) {
	some := 0
	t.Run("plans", func(t *testing.T) {
		for name, plan := range allPlans(t) {
			d := deckOf(t, name, plan)
			for _, u := range d.Setups {
				for _, r := range u.Runs {
					if len(r.Heights) < len(u.Heights) {
						some++
					}
				}
			}
			t.Run(name, func(t *testing.T) {
				t.Parallel()
				runPagesOf(t, d)
			})
		}
	})
	assert.Greater(t, some, 200, "runs that skip heights of their setup")
}

// runPagesOf compares the page of every run of a deck, in PDF and SVG, with the
// deck's JSON.
func runPagesOf(t *testing.T, d *deck.Deck) {
	var b bytes.Buffer
	require.NoError(t, deckfile.Write(&b, d))
	j := &heightsDeck{}
	require.NoError(t, json.Unmarshal(b.Bytes(), j))
	for _, u := range j.Setups {
		above := u.Heights
		if u.Above != nil {
			above = u.Above
		}
		for _, r := range u.Runs {
			var all []string
			for _, h := range r.Heights {
				at := slices.Index(u.Heights, h)
				require.GreaterOrEqual(t, at, 0)
				all = append(all, fmt.Sprintf("%d: %s", at+1, above[at].Text))
			}
			if len(all) < len(u.Heights) {
				all = append(all, "only")
			}
			want := strings.Join(all, ", ")
			b.Reset()
			require.NoError(t, sheets.RunSVG(&b, d, r.Number, sheets.Pages{}))
			assert.Equal(t, want, runPageHeights(wordsOfSVG(t, b.Bytes()), len(u.Heights)), "run %s, SVG", r.Number)
			b.Reset()
			require.NoError(t, sheets.RunPDF(&b, d, r.Number, sheets.Pages{}))
			assert.Equal(t, want, runPageHeights(wordsOf(render.Open(t, b.Bytes())), len(u.Heights)), "run %s, PDF", r.Number)
		}
	}
}
