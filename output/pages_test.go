package output

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/setup/deck"
)

// allPages are the ways to print that must all be sound.
func allPages() []Pages {
	var all []Pages
	for p := range paperSizes {
		for _, n := range []int{1, 2, 4} {
			o := Pages{Paper: PaperSize(p), PerPage: n}
			if (&setter{paper: Box{0, 0, paperSizes[p].width, paperSizes[p].height}}).divide(o) == nil {
				all = append(all, o)
			}
		}
	}
	return all
}

// words reports whether a part is something to read.
func (p part) words() bool { return p.name == "text" || p.name == "number" || p.name == "boxes" }

// checkPages finds parts that leave the page and words that run into others.
func checkPages(t *testing.T, what string, pages []page, margin Paper) {
	t.Helper()
	for i, p := range pages {
		inside := Box{0, 0, p.width, p.height}.Inset(margin)
		var read []part
		for _, q := range p.parts {
			if q.name != "cutting lines" && !inside.Holds(q.box) {
				require.Failf(t, "off the page", "%s, page %d: %s %q %v leaves %v", what, i+1, q.name, q.says, q.box, inside)
			}
			if q.words() {
				for _, r := range read {
					if q.box.Overlaps(r.box) {
						require.Failf(t, "overlap", "%s, page %d: %q %v and %q %v", what, i+1, q.says, q.box, r.says, r.box)
					}
				}
				read = append(read, q)
			}
		}
	}
}

type namedDeck struct {
	name string
	deck *deck.Deck
}

// TestNothingOverlaps lays decks out in every way and finds no words that run
// into others and nothing outside the margins.
func TestNothingOverlaps(t *testing.T) {
	check := func(c namedDeck, o Pages) {
		pages, err := lay(c.deck, o)
		require.NoError(t, err)
		checkPages(t, fmt.Sprintf("%s on %s, %d a page, units %d", c.name, o.Paper, o.PerPage, o.Units), slices.Collect(pages), o.Paper.margin())
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
