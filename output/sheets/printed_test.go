package sheets

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/deckfile"
	"fencecard/output/internal/render"
	"fencecard/output/paper"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// planDeck reads a plan and makes its deck.
func planDeck(t testing.TB, plan []byte) *deck.Deck {
	t.Helper()
	p, err := planfile.Read("plan.yaml", plan, nil)
	require.NoError(t, err)
	d, err := setup.Make(p)
	require.NoError(t, err)
	return d
}

// printed makes a document and opens it with the reference renderer.
func printed(t testing.TB, d *deck.Deck, o Pages) *render.Document {
	t.Helper()
	var file bytes.Buffer
	require.NoError(t, PDF(&file, d, o))
	return render.Open(t, file.Bytes())
}

// exampleDecks are the boot bench and the wall cabinet. All tests share them, and
// none changes them.
func exampleDecks(t testing.TB) []namedDeck {
	t.Helper()
	made.Do(func() {
		cabinet, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
		require.NoError(t, err)
		ours = []namedDeck{{"boot bench", planDeck(t, examples.BootBench)}, {"wall cabinet", planDeck(t, cabinet)}}
	})
	require.NotEmpty(t, ours)
	return slices.Clone(ours)
}

var (
	made sync.Once
	ours []namedDeck
)

// TestNothingMeetsAsPrinted takes the text of every page from the renderer:
// no two pieces of it meet, and none leaves the page or is too small to read.
func TestNothingMeetsAsPrinted(t *testing.T) {
	check := func(c namedDeck, o Pages) {
		doc := printed(t, c.deck, o)
		for page := range doc.Pages() {
			checkPrinted(t, doc, page, fmt.Sprintf("%s on %s, %d a page", c.Name, o.Paper, o.PerPage))
		}
	}
	for _, c := range exampleDecks(t) {
		check(c, Pages{})
		check(c, Pages{Paper: A4, PerPage: 2, Units: InBoth})
	}
	check(namedDeck{"torture", tortureDeck(t)}, Pages{})
	check(namedDeck{"legs", legDeck(t)}, Pages{Paper: Index})
}

func checkPrinted(t *testing.T, doc *render.Document, page int, what string) {
	t.Helper()
	const slack = 0.05 // mm, the rounding of the file
	pieces := doc.Pieces(page)
	for i, p := range pieces {
		if !p.Box.Within(doc.WholePage(page)) {
			t.Errorf("%s, page %d: %q leaves the page", what, page+1, p.Text)
		}
		if high := p.Size * paper.Capital; high < float64(paper.Least)-0.01 {
			t.Errorf("%s, page %d: capitals of %q are %.2f mm high", what, page+1, p.Text, high)
		}
		for _, q := range pieces[:i] {
			if p.Box.Overlaps(q.Box, slack) {
				t.Errorf("%s, page %d: %q meets %q: %v %v", what, page+1, p.Text, q.Text, p.Box, q.Box)
			}
		}
	}
}

// cardPages gives, for every card of a deck printed one a page, the pages it
// is on: those whose first text is its number.
func cardPages(doc *render.Document) map[string][]int {
	of := map[string][]int{}
	for page := range doc.Pages() {
		if pieces := doc.Pieces(page); len(pieces) > 0 {
			number := strings.TrimSpace(pieces[0].Text)
			of[number] = append(of[number], page)
		}
	}
	return of
}

// TestEveryNumberIsPrinted reads each card's numbers from the JSON deck and
// finds each as one piece of text on the card's page.
func TestEveryNumberIsPrinted(t *testing.T) {
	for _, c := range exampleDecks(t) {
		doc := printed(t, c.deck, Pages{})
		pages := cardPages(doc)
		var b bytes.Buffer
		require.NoError(t, deckfile.Write(&b, c.deck))
		var deck struct {
			Setups []struct {
				Fence map[string]any
				Cards []map[string]any
			}
		}
		require.NoError(t, json.Unmarshal(b.Bytes(), &deck))
		for _, s := range deck.Setups {
			for _, card := range s.Cards {
				number := card["number"].(string)
				require.NotEmpty(t, pages[number], "%s: card %s", c.Name, number)
				var texts []string
				for _, page := range pages[number] {
					for _, p := range doc.Pieces(page) {
						texts = append(texts, strings.TrimSpace(p.Text))
					}
				}
				for _, want := range append(lengthTexts(s.Fence), lengthTexts(card)...) {
					assert.Contains(t, texts, want, "%s, card %s", c.Name, number)
				}
			}
		}
	}
}

// lengthTexts finds the text of every length in a part of a JSON deck.
func lengthTexts(v any) []string {
	var all []string
	switch v := v.(type) {
	case []any:
		for _, one := range v {
			all = append(all, lengthTexts(one)...)
		}
	case map[string]any:
		if text, ok := v["text"].(string); ok && v["mm"] != nil {
			return []string{text}
		}
		for _, one := range v {
			all = append(all, lengthTexts(one)...)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// TestBigLetters measures the ink of the three orders, the fence distances and
// the marks on letter and A4 pages of one and two cards: at least 7 mm high, a
// letter height of ISO 3098-1.
func TestBigLetters(t *testing.T) {
	const high = 7
	d := legDeck(t)
	u, run := stoppedCard(t, d)
	for _, o := range []Pages{{Paper: Letter}, {Paper: A4}, {Paper: Letter, PerPage: 2}, {Paper: A4, PerPage: 2}} {
		doc := printed(t, d, o)
		var pieces []render.Piece
		for page := range doc.Pages() {
			pieces = append(pieces, doc.Pieces(page)...)
		}
		tall := func(text string) bool {
			return slices.ContainsFunc(pieces, func(p render.Piece) bool {
				return strings.TrimSpace(p.Text) == text && p.Box.Bottom-p.Box.Top >= high
			})
		}
		for _, word := range []string{"RIGHT", "FRONT", "TOP"} {
			assert.True(t, tall(word), "%s on %v", word, o)
		}
		scale := d.Plan.Shop.Scale
		for _, l := range []string{
			scale.Format(u.Fence.NearEdge), scale.Format(u.Fence.Centre), scale.Format(u.Fence.FarEdge),
			scale.Format(run.Start.LeadPastEdge), scale.Format(run.Start.TailBeforeEdge),
			scale.Format(run.Stop.LeadPastEdge), scale.Format(run.Stop.TailBeforeEdge),
		} {
			assert.True(t, tall(l), "%s on %v", l, o)
		}
	}
}

// stoppedCard returns the first card of a deck that is stopped at both ends.
func stoppedCard(t testing.TB, d *deck.Deck) (*deck.Setup, *deck.Run) {
	t.Helper()
	for i := range d.Setups {
		u := &d.Setups[i]
		for k := range u.Runs {
			if r := &u.Runs[k]; r.Start != nil && r.Stop != nil {
				return u, r
			}
		}
	}
	require.Fail(t, "no card is stopped at both ends")
	return nil, nil
}
