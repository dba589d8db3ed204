package page_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/page"
	"fencecard/output/page/browser"
	"fencecard/setup/deck"
)

// fileOf writes the page of a deck to a file and returns its address.
func fileOf(t testing.TB, d *deck.Deck, about page.About) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "deck.html")
	require.NoError(t, os.WriteFile(path, []byte(written(t, d, about)), 0o600))
	return "file://" + path
}

// The sizes are those of a tablet and of an old telephone.
var screens = []struct{ width, height int64 }{{768, 1024}, {360, 640}}

// What is pressed at the table is 20 mm or more each way and 5 mm from the next,
// but for what is wider than the screen has room for beside one another.
const (
	leastTouch = 20
	leastApart = 5
)

// box is where a target is seen, in millimetres.
type box struct {
	Name                     string
	Left, Top, Right, Bottom float64
	Fixed                    bool // stays where it is while the page is scrolled
}

const targetsSeen = `(function () {
	const all = [];
	for (const e of document.querySelectorAll("a, button, summary, input:not([type=hidden]):not([type=radio]), label.target")) {
		if (e.closest("svg") || !e.checkVisibility({ visibilityProperty: true })) { continue; }
		const b = e.getBoundingClientRect();
		const mm = 25.4 / 96;
		all.push({ Name: e.tagName + " " + e.className + " " + e.textContent.trim().slice(0, 30), Left: b.left * mm, Top: (b.top + scrollY) * mm,
			Right: b.right * mm, Bottom: (b.bottom + scrollY) * mm, Fixed: !!e.closest(".bar, .top, .stays") });
	}
	return all;
})()`

// Every part of the page at both sizes: nothing to scroll sideways, nothing small to
// touch, nothing too near to something else.
func TestTargets(t *testing.T) {
	t.Parallel()
	d := deckOf(t, examples.BootBench)
	asked := map[string]page.Questions{"3.1": {
		Table: []page.Question{{Name: "near", Words: "fence face to the near edge of the bit", Unit: "in"}, {Name: "far", Words: "fence face to the far edge of the bit", Unit: "in"}},
		Cut:   []page.Question{{Name: "depth", Words: "depth, from the back", Unit: "in"}},
	}}
	address := fileOf(t, d, page.About{Questions: asked})
	for _, size := range screens {
		b := browser.Open(t, size.width, size.height)
		for _, part := range []string{"sheet", "setup-3", "run-3.1", "run-1.3", "try-3.1", "try-1.1", "print"} {
			b.Go(address + "#" + part)
			b.Until(fmt.Sprintf("document.querySelector('section.here').id === %q", part))
			what := fmt.Sprintf("%s at %d x %d", part, size.width, size.height)
			b.Shot(fmt.Sprintf("%d-%s", size.width, part))
			assert.LessOrEqual(t, browser.Eval[int64](b, "document.documentElement.scrollWidth"), size.width, what)
			targets := browser.Eval[[]box](b, targetsSeen)
			require.NotEmpty(t, targets, what)
			for i, one := range targets {
				assert.GreaterOrEqual(t, one.Right-one.Left, leastTouch-0.01, "%s: width of %s", what, one.Name)
				assert.GreaterOrEqual(t, one.Bottom-one.Top, leastTouch-0.01, "%s: height of %s", what, one.Name)
				for _, other := range targets[i+1:] {
					if one.Fixed != other.Fixed {
						continue // what stays in sight covers what is scrolled under it
					}
					across := max(other.Left-one.Right, one.Left-other.Right)
					down := max(other.Top-one.Bottom, one.Top-other.Bottom)
					assert.GreaterOrEqual(t, max(across, down), leastApart-0.01, "%s: %s and %s", what, one.Name, other.Name)
				}
			}
		}
	}
}
