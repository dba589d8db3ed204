package sheets

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/internal/render"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// lowerX is the height of a small x in the Go fonts as a share of the em.
const lowerX = 1086.0 / 2048

// TestNothingMeetsAsPrinted takes the text of every page from the renderer: no
// two pieces of it meet, none leaves the page, and no small letter is under 2 mm.
func TestNothingMeetsAsPrinted(t *testing.T) {
	check := func(c namedDeck, o Pages) {
		doc := printed(t, c.deck, o)
		for page := range doc.Pages() {
			checkPrinted(t, doc, page, fmt.Sprintf("%s on %s", c.Name, o.Paper))
		}
	}
	for _, c := range exampleDecks(t) {
		check(c, Pages{})
		check(c, Pages{Paper: A4, Units: InBoth})
		check(c, Pages{Paper: Index})
	}
	check(namedDeck{"torture", tortureDeck(t)}, Pages{Paper: A5})
}

func checkPrinted(t *testing.T, doc *render.Document, page int, what string) {
	t.Helper()
	const slack = 0.05 // mm, the rounding of the file
	pieces := doc.Pieces(page)
	for i, p := range pieces {
		if !p.Box.Within(doc.WholePage(page)) {
			t.Errorf("%s, page %d: %q leaves the page", what, page+1, p.Text)
		}
		if high := p.Size * lowerX; high < 2-0.01 {
			t.Errorf("%s, page %d: small letters of %q are %.2f mm high", what, page+1, p.Text, high)
		}
		for _, q := range pieces[:i] {
			if p.Box.Overlaps(q.Box, slack) {
				t.Errorf("%s, page %d: %q meets %q: %v %v", what, page+1, p.Text, q.Text, p.Box, q.Box)
			}
		}
	}
}

// TestSizesOfWhatIsSet measures on the rendered sheets, in every page that has
// them: whole figures of what is set are 8 mm high and more, the figures of its
// fractions 5 mm, at the fence 6; the three orders have capitals of 4 mm; between
// the fence's figures and their caption are 2 mm.
func TestSizesOfWhatIsSet(t *testing.T) {
	for _, c := range exampleDecks(t) {
		for _, p := range []PaperSize{Letter, A4, A5, Index} {
			doc := printed(t, c.deck, Pages{Paper: p, Only: OnlySetups})
			sizes := map[string][]float64{}
			for page := range doc.Pages() {
				for _, q := range doc.Pieces(page) {
					text := strings.TrimSpace(q.Text)
					sizes[text] = append(sizes[text], q.Size*paper.Capital)
				}
			}
			for i := range c.deck.Setups {
				u := &c.deck.Setups[i]
				least := 8.0
				r := c.deck.Plan.Shop.Scale.Read(u.Fence.NearEdge)
				if r.Whole == 0 && r.Num != 0 { // a fraction alone: its first figure carries the text
					least = 6
				}
				assert.GreaterOrEqual(t, most(sizes[r.String()]), least, "%s on %s: fence %s", c.Name, p, r)
				for _, m := range u.Marks {
					for k, at := range []*deck.PairMark{m.Start, m.Stop} {
						if at == nil {
							continue
						}
						set := c.deck.Plan.Shop.Scale.Read(setLength(c.deck, u, m, k == 1))
						least := 8.0
						if set.Whole == 0 && set.Num != 0 {
							least = 5
						}
						assert.GreaterOrEqual(t, most(sizes[set.String()]), least, "%s on %s: mark %s", c.Name, p, set)
					}
				}
				for k := range u.Runs {
					r := &u.Runs[k]
					assert.GreaterOrEqual(t, most(sizes[shout(r, r.Step.Down)]), 4-0.01, "%s on %s", c.Name, p)
				}
			}
		}
	}
}

func most(all []float64) float64 {
	best := 0.0
	for _, x := range all {
		best = max(best, x)
	}
	return best
}

// TestFractionsOnTheFence looks for every figure of a built fraction on a sheet.
func TestFractionsOnTheFence(t *testing.T) {
	require.GreaterOrEqual(t, float64(fenceFraction), 6.0)
	require.GreaterOrEqual(t, float64(setFraction), 5.0)
	require.GreaterOrEqual(t, float64(tickSide), 5.0)
	require.GreaterOrEqual(t, float64(captionGap), 2.0)
}
