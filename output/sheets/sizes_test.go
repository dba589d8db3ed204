package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
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

// figure is a number as it is printed: its text, its pieces, whose height of
// a capital is measured, and their ink together.
type figure struct {
	text   string
	pieces []render.Piece
	box    render.Box
}

// figuresOn joins the pieces of built numbers: the first has the text, and
// those of its fraction have none.
func figuresOn(pieces []render.Piece) []figure {
	var all []figure
	for _, p := range pieces {
		text := strings.TrimSpace(p.Text)
		if text == "" && len(all) > 0 {
			last := &all[len(all)-1]
			last.pieces = append(last.pieces, p)
			last.box = render.Box{Left: min(last.box.Left, p.Box.Left), Top: min(last.box.Top, p.Box.Top), Right: max(last.box.Right, p.Box.Right), Bottom: max(last.box.Bottom, p.Box.Bottom)}
			continue
		}
		all = append(all, figure{text, []render.Piece{p}, p.Box})
	}
	return all
}

// capital is how high the capitals of a piece's letters are.
func capital(p render.Piece) float64 { return p.Size * paper.Capital }

// sized reports whether a number is printed with figures of a height, those of
// its fraction of another.
func (f figure) sized(r measure.Reading, whole, fraction float64) bool {
	near := func(p render.Piece, want float64) bool { return math.Abs(capital(p)-want) < 0.03*want }
	pieces := f.pieces
	if alone := r.Whole == 0 && r.Num != 0; alone && r.Negative {
		pieces = pieces[1:] // the sign of a fraction alone is no figure
	}
	for i, p := range pieces {
		want := fraction
		if i == 0 && (r.Whole != 0 || r.Num == 0) {
			want = whole
		}
		if !near(p, want) {
			return false
		}
	}
	// A figure of the font stands as high as a capital, by its ink.
	first := pieces[0].Box
	return first.Bottom-first.Top > 0.95*capital(pieces[0])
}

// The sizes on paper, in millimetres: those asked for are the least; what is
// printed is held to 3 %.
var sizesAsked = []struct {
	what           string
	least, printed float64
}{
	{"whole figures of the fence", 8, 9},
	{"fractions of the fence", 6, 6.1},
	{"whole figures of a mark", 8, 8.4},
	{"fractions of a mark", 5, 5.3},
	{"capitals of the orders", 4, 4},
	{"boxes to tick", 5, 5},
	{"small letters", 2, 2.018},
	{"between a figure and its caption", 2, 2},
}

// TestSizesAsPrinted measures on the rendered sheets of every setup: the figures
// of what is set and of its fractions, the orders, the smallest letters, the
// boxes to tick, and what stands beside a large figure.
func TestSizesAsPrinted(t *testing.T) {
	at := map[string]float64{}
	for _, a := range sizesAsked {
		require.GreaterOrEqual(t, a.printed, a.least, a.what)
		at[a.what] = a.printed
	}
	measured := map[string]int{}
	var captions []float64
	for _, c := range realDecks(t) {
		if !slices.Contains([]string{"boot bench", "wall cabinet", "garden-bench", "tool-cabinet", "sash-window"}, c.Name) {
			continue
		}
		for _, on := range []PaperSize{Letter, A4, A5, Index} {
			what := fmt.Sprintf("%s on %s", c.Name, on)
			doc := printed(t, c.deck, Pages{Paper: on, Only: OnlySetups})
			figures := map[string][]figure{}
			least := math.Inf(1)
			for page := range doc.Pages() {
				pieces := doc.Pieces(page)
				all := figuresOn(pieces)
				for _, f := range all {
					figures[f.text] = append(figures[f.text], f)
				}
				for _, p := range pieces {
					least = min(least, p.Size*lowerX)
				}
				captions = append(captions, captionGaps(all)...)
				measured["gaps"] += checkGaps(t, all, fmt.Sprintf("%s, page %d", what, page+1))
			}
			assert.InDelta(t, at["small letters"], least, 0.06, what)
			found := func(l measure.Length, whole, fraction string) {
				r := c.deck.Plan.Shop.Scale.Read(l)
				measured[whole]++
				assert.True(t, slices.ContainsFunc(figures[r.String()], func(f figure) bool { return f.sized(r, at[whole], at[fraction]) }),
					"%s: %s, %s", what, whole, r)
			}
			for i := range c.deck.Setups {
				u := &c.deck.Setups[i]
				found(u.Fence.NearEdge, "whole figures of the fence", "fractions of the fence")
				for _, m := range u.Marks {
					for k, mark := range []*deck.PairMark{m.Start, m.Stop} {
						if mark != nil {
							found(setLength(c.deck, u, m, k == 1), "whole figures of a mark", "fractions of a mark")
						}
						// No work is lowered without its back stop: it is read from as far.
						if mark != nil && k == 0 && on != Index {
							found(mark.TailBeforeEdge, "whole figures of a mark", "fractions of a mark")
						}
					}
				}
				for k := range u.Runs {
					r := &u.Runs[k]
					for _, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
						high := 0.0
						for _, f := range figures[shout(r, side)] {
							high = max(high, capital(f.pieces[0]))
						}
						measured["orders"]++
						assert.InDelta(t, at["capitals of the orders"], high, 0.12, "%s, run %s: %s", what, r.Number(), side)
					}
				}
			}
			pages := laid(t, c, Pages{Paper: on, Only: OnlySetups})
			require.Len(t, pages, doc.Pages())
			for i, page := range pages {
				measured["boxes"] += checkTicks(t, doc, i, page.Parts, at["boxes to tick"], what)
			}
		}
	}
	// The tightest caption has just the gap that is asked for, by its ink.
	assert.InDelta(t, tightestCaption, slices.Min(captions), 0.1)
	measured["captions"] = len(captions)
	t.Logf("measured: %v", measured)
	for what, n := range measured {
		assert.Greater(t, n, 50, what)
	}
}

// largeFigure is from what height on a number is one that is set.
const largeFigure = 5

// checkGaps looks for words nearer than 2 mm to the ink of a large number.
func checkGaps(t *testing.T, all []figure, what string) (n int) {
	t.Helper()
	for i, f := range all {
		if capital(f.pieces[0]) < largeFigure || f.text == "" || !strings.ContainsAny(f.text, "0123456789") {
			continue
		}
		for k, g := range all {
			if i == k {
				continue
			}
			x := max(f.box.Left-g.box.Right, g.box.Left-f.box.Right)
			y := max(f.box.Top-g.box.Bottom, g.box.Top-f.box.Bottom)
			n++
			if gap := max(x, y); gap < 2-0.02 {
				t.Errorf("%s: %q stands %.2f mm from %q", what, f.text, gap, g.text)
			}
		}
	}
	return n
}

// tightestCaption is the least white between a caption of the fence box and the
// figure under it: the gap and what the letters leave free.
const tightestCaption = 2.06

// captionGaps are the distances from the captions of the fence box to the
// figures under them.
func captionGaps(all []figure) []float64 {
	var gaps []float64
	for _, c := range all {
		if c.text != "to centre" && c.text != "to far edge" {
			continue
		}
		gap := math.Inf(1)
		for _, f := range all {
			if y := f.box.Top - c.box.Bottom; y > 0 && f.box.Left < c.box.Right && c.box.Left < f.box.Right {
				gap = min(gap, y)
			}
		}
		gaps = append(gaps, gap)
	}
	return gaps
}

// checkTicks measures the first and the last row of boxes of a page, across and
// down, from the middle of one side to that of the other.
func checkTicks(t *testing.T, doc *render.Document, page int, parts []paper.Part, side float64, what string) (n int) {
	t.Helper()
	var boxes []paper.Box
	for _, p := range parts {
		if p.Name == "boxes" {
			boxes = append(boxes, p.Box)
		}
	}
	if len(boxes) > 2 {
		boxes = []paper.Box{boxes[0], boxes[len(boxes)-1]}
	}
	for _, b := range boxes {
		x, y := float64(b.X), float64(b.Y)
		picture := doc.Picture(page, 300, render.Box{Left: x - 1, Top: y - 1, Right: x + side + 1.5, Bottom: y + side + 1.5})
		across := picture.Across(y+side/2, x-0.5, x+side+0.5)
		down := picture.Down(x+side/2, y-0.5, y+side+0.5)
		if assert.Len(t, across, 2, what) && assert.Len(t, down, 2, what) {
			assert.InDelta(t, side, across[1].Middle-across[0].Middle, 0.1, what)
			assert.InDelta(t, side, down[1].Middle-down[0].Middle, 0.1, what)
			n++
		}
	}
	return n
}
