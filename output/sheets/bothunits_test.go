package sheets

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// railDeck is a rail in millimetres with a groove 11 from the fence, whose
// inch value, 7/16, would read as a fraction of the 11; and a mortise far from
// both ends, for long lengths at its marks.
func railDeck(t testing.TB) *deck.Deck {
	t.Helper()
	return planDeck(t, []byte(`
unit: mm
wood: beech
pieces:
  - piece: rail
    size: {left-right: 700, front-back: 22, top-bottom: 60}
    cuts:
      - groove: panel
        in: bottom
        width: 8
        setback: 11 from front
        depth: 8
      - mortise: brace
        in: top
        width: 8
        setback: 7 from front
        span: 125 to 350 from left
        depth: 32
`))
}

// TestBothUnitsAreApart finds beside every length of a deck in both units its
// unit, and behind it the second value, its unit, and brackets round the two,
// all on one line: "11 mm (7/16- in)".
func TestBothUnitsAreApart(t *testing.T) {
	whole, broken := regexp.MustCompile(`mm \(−?[0-9][^()]* in\)`), regexp.MustCompile(`\(−?[0-9][^()]*$`)
	d := railDeck(t)
	for _, o := range allPages() {
		o.Units = InBoth
		pages, err := lay(d, o)
		require.NoError(t, err)
		found := 0
		for p := range pages {
			for _, part := range p.Parts {
				found += len(whole.FindAllString(part.Says, -1))
				assert.NotRegexp(t, broken, part.Says, "%s, %d a page", o.Paper, o.PerPage)
			}
		}
		assert.GreaterOrEqual(t, found, 6, "%s, %d a page", o.Paper, o.PerPage)
	}
	s, err := newSetter(d, Pages{Units: InBoth})
	require.NoError(t, err)
	eleven := in(t, "11mm")
	assert.Equal(t, "11|mm (7/16- in)", paper.Said(s.Length(nil, s.Letters(paper.Least), eleven).Set(100)))
	assert.Equal(t, "11|mm|(7/16- in)", paper.Said(s.reading(eleven, 100)))
	assert.Equal(t, "11|mm|(7/16- in)", paper.Said(s.reading(eleven, 20)), "an inch value is not broken, however narrow")
	assert.Equal(t, "11|mm (7/16- in)|along the feed", paper.Said(s.measure(nil, s.Letters(paper.Least), eleven).Say(s.Letters(3.5), "along the feed").Set(100)))
}
