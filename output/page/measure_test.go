package page_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

// measured shows every part of the page in turn and measures what can be pressed, what
// is read a metre away, and what is cut off.
const measured = `(function () {
	const mm = 25.4 / 96;
	const canvas = document.createElement("canvas").getContext("2d");
	function letter(e) {
		const s = getComputedStyle(e);
		canvas.font = s.fontWeight + " " + s.fontSize + " " + s.fontFamily;
		return canvas.measureText("H").actualBoundingBoxAscent * mm;
	}
	return Array.from(document.querySelectorAll("main > section")).map(function (section) {
		bench.parts.go(section.id);
		for (const d of section.querySelectorAll("details")) { d.open = true; }
		const part = { ID: section.id, Wide: document.documentElement.scrollWidth, Targets: [], Orders: [], Marks: [], Done: 0, CutOff: [] };
		for (const e of document.querySelectorAll("a, button, summary, input:not([type=hidden]):not([type=radio]), label.target")) {
			if (e.closest("svg") || !e.checkVisibility({ visibilityProperty: true })) { continue; }
			const b = e.getBoundingClientRect();
			part.Targets.push({ Name: e.tagName + " " + e.className + " " + e.textContent.trim().slice(0, 30), Left: b.left * mm, Top: (b.top + scrollY) * mm,
				Right: b.right * mm, Bottom: (b.bottom + scrollY) * mm, Fixed: !!e.closest(".bar, .top, .stays") });
		}
		for (const e of section.querySelectorAll(".big")) { part.Orders.push(letter(e)); }
		for (const e of section.querySelectorAll(".huge .n")) { part.Marks.push(letter(e)); }
		const done = section.querySelector(".done");
		if (done) { part.Done = done.getBoundingClientRect().height * mm; }
		for (const e of document.querySelectorAll(".top p, section.here *")) {
			const s = getComputedStyle(e);
			if (e.closest("svg") || !e.checkVisibility() || s.display === "inline") { continue; }
			if (e.scrollWidth > e.clientWidth + 1 || s.overflowY === "hidden" && e.scrollHeight > e.clientHeight + 1) {
				part.CutOff.push(e.tagName + " " + e.className + " " + e.textContent.trim().slice(0, 60));
			}
		}
		return part;
	});
})()`

// part is what was measured of a part of the page.
type part struct {
	ID            string
	Wide          int64
	Targets       []box
	Orders, Marks []float64 // how high their letters are
	Done          float64   // how high the button is
	CutOff        []string
}

// Heights of letters read a metre away, and of the button that is pressed most, in
// millimetres.
const (
	orderLetters = 14
	markLetters  = 20
	doneHeight   = 25
	hair         = 0.11 // for pixels are whole
)

// Every part of the pages of several plans at both sizes: nothing to scroll sideways,
// nothing cut off, nothing small to touch, nothing too near to something else, and
// what is read a metre away as large as that needs.
func TestTargets(t *testing.T) {
	t.Parallel()
	for _, plan := range []string{"bench-seat", "childs-bed", "hall-table", "panel-door"} {
		text, err := os.ReadFile("../../testdata/plans/" + plan + ".yaml")
		require.NoError(t, err)
		d := deckOf(t, text)
		asked := map[string]page.Questions{}
		for _, number := range []string{"1.1", "2.1"} {
			asked[number] = page.Questions{
				Table: []page.Question{{Name: "near", Words: "fence face to the near edge of the bit", Unit: d.Plan.Unit.String()}, {Name: "far", Words: "fence face to the far edge of the bit", Unit: d.Plan.Unit.String()}},
				Cut:   []page.Question{{Name: "depth", Words: "depth, from the back", Unit: d.Plan.Unit.String()}},
			}
		}
		k := openDesk(t, d, page.About{Questions: asked, Plan: "/plan"})
		for _, size := range screens {
			b := browser.Open(t, size.width, size.height)
			b.Go(k.at)
			b.Until("bench.desk.state()")
			b.Until("document.fonts.status === 'loaded'")
			parts := browser.Eval[[]part](b, measured)
			require.Greater(t, len(parts), len(d.Setups))
			for _, p := range parts {
				p.check(t, fmt.Sprintf("%s, %s at %d x %d", plan, p.ID, size.width, size.height), size.width)
			}
		}
	}
}

func (p *part) check(t *testing.T, what string, width int64) {
	assert.LessOrEqual(t, p.Wide, width, what)
	assert.Empty(t, p.CutOff, what)
	require.NotEmpty(t, p.Targets, what)
	for i, one := range p.Targets {
		assert.GreaterOrEqual(t, one.Right-one.Left, leastTouch-0.01, "%s: width of %s", what, one.Name)
		assert.GreaterOrEqual(t, one.Bottom-one.Top, leastTouch-0.01, "%s: height of %s", what, one.Name)
		for _, other := range p.Targets[i+1:] {
			if one.Fixed != other.Fixed {
				continue // what stays in sight covers what is scrolled under it
			}
			across := max(other.Left-one.Right, one.Left-other.Right)
			down := max(other.Top-one.Bottom, one.Top-other.Bottom)
			assert.GreaterOrEqual(t, max(across, down), leastApart-0.01, "%s: %s and %s", what, one.Name, other.Name)
		}
	}
	if !strings.HasPrefix(p.ID, "run-") {
		return
	}
	assert.Len(t, p.Orders, 3, what)
	for _, high := range p.Orders {
		assert.GreaterOrEqual(t, high, orderLetters-hair, "%s: orders", what)
	}
	for _, high := range p.Marks {
		assert.GreaterOrEqual(t, high, markLetters-hair, "%s: marks", what)
	}
	assert.GreaterOrEqual(t, p.Done, doneHeight-hair, "%s: DONE", what)
}
