package sheets

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// allPages are the ways to print that must all be sound.
func allPages() []Pages {
	var all []Pages
	for p := range paperSizes {
		for _, n := range []int{1, 2, 4} {
			o := Pages{Paper: PaperSize(p), PerPage: n}
			if (&Setter{paper: paper.Box{X: 0, Y: 0, W: paperSizes[p].width, H: paperSizes[p].height}}).divide(o) == nil {
				all = append(all, o)
			}
		}
	}
	return all
}

// checkPages finds parts that leave the page and words that run into others.
func checkPages(t *testing.T, what string, pages []page, margin paper.Paper) {
	t.Helper()
	for i, p := range pages {
		inside := paper.Box{X: 0, Y: 0, W: p.width, H: p.height}.Inset(margin)
		var read []paper.Part
		for _, q := range p.Parts {
			if q.Name != "cutting lines" && !inside.Holds(q.Box) {
				require.Failf(t, "off the page", "%s, page %d: %s %q %v leaves %v", what, i+1, q.Name, q.Says, q.Box, inside)
			}
			if q.Words() {
				for _, r := range read {
					if q.Box.Overlaps(r.Box) {
						require.Failf(t, "overlap", "%s, page %d: %q %v and %q %v", what, i+1, q.Says, q.Box, r.Says, r.Box)
					}
				}
				read = append(read, q)
			}
		}
	}
}

type namedDeck struct {
	Name string
	deck *deck.Deck
}

// TestNothingOverlaps lays decks out in every way and finds no words that run
// into others and nothing outside the margins.
func TestNothingOverlaps(t *testing.T) {
	t.Parallel()
	check := func(c namedDeck, o Pages) {
		what := fmt.Sprintf("%s on %s, %d a page, units %d", c.Name, o.Paper, o.PerPage, o.Units)
		t.Run(what, func(t *testing.T) {
			t.Parallel()
			pages, err := lay(c.deck, o)
			require.NoError(t, err)
			checkPages(t, what, slices.Collect(pages), o.Paper.margin())
		})
	}
	torture, legs := namedDeck{"torture", tortureDeck(t)}, namedDeck{"legs", legDeck(t)}
	for i, o := range allPages() {
		check(legs, o)
		o.Units = []Units{PlanUnits, InInches, InMillimetres, InBoth}[i%4]
		check(torture, o)
		o.Units = InBoth
		check(legs, o)
	}
	for _, c := range exampleDecks(t) {
		check(c, Pages{})
		check(c, Pages{Paper: A4, PerPage: 4, Units: InBoth})
		check(c, Pages{Paper: Index})
	}
}
