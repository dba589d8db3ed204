package sheets

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/output/internal/render"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// Heights of the heads of setup sheets, in millimetres: of all, of those whose
// cautions or what was learnt need more, and the cautions that still need none.
const (
	mostHead, mostHeadWithCautions = 75, 95
	fewCautions                    = 21
)

// TestLowHeads measures the heads of the setups of all plans on letter and A4
// paper, and on the rendered page where the first pair of marks begins.
func TestLowHeads(t *testing.T) {
	var all []float64
	for _, d := range realDecks(t) {
		for _, on := range []PaperSize{Letter, A4} {
			s := newSetter(d.deck, Pages{Paper: on})
			for i := range d.deck.Setups {
				u := &d.deck.Setups[i]
				mind := s.minds[u.Number]
				head, more := s.head(d.deck, i, mind, 9)
				require.Empty(t, more, "%s, setup %d", d.Name, u.Number)
				most := paper.Paper(mostHead)
				if s.mindBox(mind, s.Frame.W).H > fewCautions {
					most = mostHeadWithCautions
				}
				assert.LessOrEqual(t, head.H, most, "%s on %s, setup %d", d.Name, on, u.Number)
				all = append(all, float64(head.H))
			}
		}
	}
	slices.Sort(all)
	assert.LessOrEqual(t, all[len(all)/2], float64(mostHead))
	t.Logf("%d heads: median %.1f, highest %.1f", len(all), all[len(all)/2], all[len(all)-1])
}

// TestHeadsAsPrinted measures on the rendered page from the top of the paper's
// frame to the first pair of marks, or to what stands where there is none.
func TestHeadsAsPrinted(t *testing.T) {
	bench := exampleDecks(t)[0]
	doc := printed(t, bench.deck, Pages{Only: OnlySetups})
	n := 0
	for page := range doc.Pages() {
		pieces := doc.Pieces(page)
		for i := range pieces {
			pieces[i].Text = strings.TrimSpace(pieces[i].Text)
		}
		if pieces[0].Text != "SETUP" {
			continue // a further sheet
		}
		at := slices.IndexFunc(pieces, func(p render.Piece) bool {
			return p.Text == "START" || strings.HasPrefix(p.Text, "NO MARKS:")
		})
		require.Positive(t, at)
		margin := float64(Letter.margin())
		assert.Less(t, pieces[at].Box.Top-margin, float64(mostHeadWithCautions)+12, "page %d", page+1) // the fence stands over START
		n++
	}
	assert.Greater(t, n, 5)
}

// What the setup book learnt may make a head higher, but not without end.
func TestHeadWithWhatWasLearnt(t *testing.T) {
	d := exampleDecks(t)[0].deck
	stood := d.Setups[2].Fence.NearEdge + measure.Inch/64
	d.Setups[2].Kept = &deck.Kept{Name: "legs", Code: "abcd", FenceStood: &stood, Learnt: []string{"the bit cuts a hair wide"}}
	s := newSetter(d, Pages{})
	head, _ := s.head(d, 2, s.minds[3], 1)
	assert.Greater(t, head.H, paper.Paper(mostHead))
	assert.LessOrEqual(t, head.H, paper.Paper(mostHeadWithCautions))
}

// Every head on letter and A4 paper has its section, in one unit and in both.
func TestHeadsHaveTheirSection(t *testing.T) {
	for _, d := range realDecks(t) {
		for _, o := range []Pages{{}, {Paper: A4, Units: InBoth}} {
			s := newSetter(d.deck, o)
			for i := range d.deck.Setups {
				head, _ := s.head(d.deck, i, s.minds[d.deck.Setups[i].Number], 1)
				assert.True(t, slices.ContainsFunc(head.Parts, func(p paper.Part) bool { return strings.HasPrefix(p.Says, "scale 1:") }),
					"%s, setup %d, units %d", d.Name, i+1, o.Units)
			}
		}
	}
}
