package strips

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
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

// measurer measures the strips of a document, the layout telling it where to
// look and nothing more.
type measurer struct {
	t     *testing.T
	doc   *render.Document
	tiles []*printedTile
	next  int // the tile to be measured next
	marks int
	rules int
	worst float64
}

// printedTile is a tile and where to look for it.
type printedTile struct {
	strip strip
	shop  *joinery.Shop
	tile
	first   bool // of its strip
	page    int
	Box     paper.Box
	picture *render.Picture
}

// findTiles pairs the tiles of the strips with their places on the sheets.
func (m *measurer) findTiles(d *deck.Deck, on string) {
	s := maker{setterOn(d, on)}
	sheets, err := s.sheets(d, true)
	require.NoError(m.t, err)
	for i, p := range sheets {
		for _, q := range p.Parts {
			if q.Name == tilePart {
				m.tiles = append(m.tiles, &printedTile{page: i, Box: q.Box})
			}
		}
	}
	w, high := s.stripRoom()
	n := 0
	for i := range d.Setups {
		strips, err := s.stripsOf(&d.Setups[i], &d.Plan.Shop, w, high)
		require.NoError(m.t, err)
		for _, st := range strips {
			for k, tile := range st.tiles {
				require.Less(m.t, n, len(m.tiles))
				m.tiles[n].strip, m.tiles[n].tile, m.tiles[n].shop, m.tiles[n].first = st, tile, &d.Plan.Shop, k == 0
				n++
			}
		}
	}
	require.Len(m.t, m.tiles, n)
	require.NotZero(m.t, n)
}

const fine = 300 // dots per inch: with grey edges, far finer than 0.1 mm

// bar measures 4 in and 100 mm, and looks for the words.
func (m *measurer) bar(page int) {
	m.t.Helper()
	text := m.doc.Text(page)
	assert.Contains(m.t, text, "Print at 100 %")
	assert.Contains(m.t, text, "4 in")
	assert.Contains(m.t, text, "100 mm")
	w, _ := m.doc.Size(page)
	for _, p := range m.doc.Pieces(page) {
		if p.Text != "4 in" {
			continue
		}
		picture := m.doc.Picture(page, fine, render.Box{Right: w, Top: p.Box.Top - 2, Bottom: p.Box.Top + 10})
		inches := picture.Across(p.Box.Top, 0, p.Box.Left-0.5)
		metric := picture.Across(p.Box.Bottom+4, 0, p.Box.Left-0.5)
		require.Len(m.t, inches, 5)
		require.Len(m.t, metric, 2)
		assert.InDelta(m.t, 4*25.4, inches[4].Middle-inches[0].Middle, 0.05)
		assert.InDelta(m.t, 100, metric[1].Middle-metric[0].Middle, 0.05)
	}
}

// strip measures the next strip: the tile with the bit by the bit's centre,
// every other by its rule line.
func (m *measurer) strip() {
	m.t.Helper()
	first := m.next
	last := first + 1
	for last < len(m.tiles) && !m.tiles[last].first {
		last++
	}
	tiles := m.tiles[first:last]
	m.next = last
	bits := 0
	for _, t := range tiles {
		zero := 0.0
		if t.hasBit() {
			bits++
			zero = m.bit(t)
		} else {
			zero = m.rule(t)
		}
		m.ticks(t, zero)
		m.upright(t, zero)
	}
	require.Equal(m.t, 1, bits, "parts with the bit")
	m.says(tiles)
}

// ruled is what a rule line says of itself.
var ruled = regexp.MustCompile(`RULE ?(\d+) ?(in|mm) ?from the bit's (TRAILING|LEADING) edge`)

// rule reads the distance off a tile, finds its line, and returns where on the
// sheet the bit's centre would be. A tile without a mark would be a blank one.
func (m *measurer) rule(t *printedTile) float64 {
	m.t.Helper()
	on := render.Box{Left: float64(t.Box.X), Top: float64(t.Box.Y), Right: float64(t.Box.Right()), Bottom: float64(t.Box.Bottom())}
	var words []string
	for _, p := range m.doc.Pieces(t.page) {
		if p.Box.Within(on) {
			words = append(words, strings.TrimSpace(p.Text))
		}
	}
	said := ruled.FindAllStringSubmatch(strings.Join(words, " "), -1)
	require.Len(m.t, said, 1, "%v", words)
	away, err := strconv.ParseFloat(said[0][1], 64)
	require.NoError(m.t, err)
	if said[0][2] == "in" {
		away *= 25.4
	} else {
		require.Zero(m.t, math.Mod(away, 10), "a round distance")
	}
	require.True(m.t, strings.Contains(strings.Join(words, " "), "START") || strings.Contains(strings.Join(words, " "), "STOP"), "a blank part: %v", words)
	if t.from < 0 {
		away = -away
	}
	if r := t.strip.u.Bit.True().Millimetres() / 2; said[0][3] == "LEADING" {
		away += r
	} else {
		away -= r
	}
	m.rules++
	line := m.near(m.look(t), t.Box.X-t.from+t.rule.at, t.Box.Bottom()-bottomMarks+0.5, t.Box.Bottom()-0.5)
	return line - away
}

// look renders a tile, once.
func (m *measurer) look(t *printedTile) *render.Picture {
	if t.picture == nil {
		b := t.Box
		t.picture = m.doc.Picture(t.page, fine, render.Box{
			Left: float64(b.X - 2), Top: float64(b.Y - 2), Right: float64(b.Right() + 2), Bottom: float64(b.Bottom() + 2),
		})
	}
	return t.picture
}

// near finds the stroke next to where the layout has one, looking at heights
// between two, so that the dashes of a broken line are met.
func (m *measurer) near(p *render.Picture, x, top, bottom paper.Paper) float64 {
	m.t.Helper()
	for y := float64(top); y < float64(bottom); y += 0.5 {
		for _, s := range p.Across(y, float64(x)-1, float64(x)+1) {
			if math.Abs(s.Middle-float64(x)) < 0.5 {
				return s.Middle
			}
		}
	}
	require.Fail(m.t, "no line", "at %v", x)
	return 0
}

// bit finds the bit's centre on its tile and measures its edges and the lines
// to fold at.
func (m *measurer) bit(t *printedTile) float64 {
	m.t.Helper()
	p, x := m.look(t), t.Box.X-t.from
	top, bottom := t.Box.Bottom()-bottomMarks+0.5, t.Box.Bottom()-0.5
	centre := m.near(p, x, top, bottom)
	r := t.strip.u.Bit.True().Millimetres() / 2
	for _, side := range []float64{-1, 1} {
		edge := m.near(p, x+paper.Paper(side*r), top, bottom)
		m.measured(side*r, edge-centre, "edge of the bit")
		fold := m.near(p, x+paper.Paper(side)*(t.strip.radius+beyondBit), top, bottom)
		m.measured(side*(r+3), fold-centre, "fold line")
	}
	return centre
}

// ticks compares the marks on a tile with those that the cards ask for, at
// both edges; zero is where the bit's centre is.
func (m *measurer) ticks(t *printedTile, zero float64) {
	m.t.Helper()
	p := m.look(t)
	want := wanted(t.strip.runs, t.shop)
	for _, y := range []paper.Paper{t.Box.Y + topMarks/2, t.Box.Bottom() - bottomMarks/3} {
		strokes := p.Across(float64(y), float64(t.Box.X+1), float64(t.Box.Right()-1))
		used := make([]bool, len(strokes))
		for _, x := range want {
			if paper.Paper(x) < t.from+1 || paper.Paper(x) > t.To-1 {
				continue
			}
			best := -1
			for i, s := range strokes {
				// Lines that run together are one stroke: what counts is
				// that the mark's own line is a part of it.
				if best < 0 || off(s, zero+x) < off(strokes[best], zero+x) {
					best = i
				}
			}
			require.GreaterOrEqual(m.t, best, 0, "no marks, one wanted at %.3f", x)
			used[best] = true
			m.marks++
			m.measured(0, off(strokes[best], zero+x), fmt.Sprintf("mark at %.3f", x))
		}
		for i, s := range strokes {
			x := s.Middle - zero
			if t.rule != nil && math.Abs(x-float64(t.rule.at)) < 0.3 {
				continue
			}
			if !t.hasBit() || math.Abs(x) > float64(t.strip.column) {
				assert.True(m.t, used[i], "a mark at %.3f that no card asks for", x)
			}
		}
	}
}

// off is how far a mark's line would be from its place inside a stroke, which
// may be several lines that run together.
func off(s render.Stroke, x float64) float64 {
	half := float64(markPen.Width) / 2
	if s.To-s.From < 3*half {
		return math.Abs(s.Middle - x)
	}
	return max(0, s.From+half-x, x-(s.To-half))
}

// stroke is longer than the stem of any letter and the side of any badge.
const stroke = 8.5

// upright looks for dark upright strokes on a tile: there is one at every mark,
// from the lower edge up, and nowhere else is one that could be taken for it.
func (m *measurer) upright(t *printedTile, zero float64) {
	m.t.Helper()
	p := m.look(t)
	want := wanted(t.strip.runs, t.shop)
	top, bottom := float64(t.Box.Y)+1, float64(t.Box.Bottom())-1
	left, right := float64(t.Box.X)+1, float64(t.Box.Right())-1
	const dot = 25.4 / fine
	for x := left; x < right; x += 2 * dot { // a line is three dots wide
		if t.hasBit() && math.Abs(x-zero) < float64(t.strip.column) {
			continue
		}
		for _, s := range p.Down(x, top, bottom) {
			if s.To-s.From < stroke || mean(p, x, s) < 0.4 {
				continue
			}
			near := math.Inf(1)
			for _, w := range want {
				near = min(near, math.Abs(zero+w-x))
			}
			require.Less(m.t, near, 0.3, "an upright stroke at %.2f from the bit that is no mark", x-zero)
		}
	}
	for _, w := range want {
		if x := zero + w; paper.Paper(w) > t.from+1 && paper.Paper(w) < t.To-1 {
			for y := bottom - stroke; y < bottom; y += 0.2 {
				require.Greater(m.t, darkest(p, x, y), 0.4, "the mark at %.3f is broken", w)
			}
		}
	}
}

// mean is how dark a stroke down the page is all along.
func mean(p *render.Picture, x float64, s render.Stroke) float64 {
	sum, n := 0.0, 0.0
	for y := s.From; y < s.To; y += 0.1 {
		sum, n = sum+p.Ink(x, y), n+1
	}
	return sum / n
}

// darkest is the ink of the darkest dot about a place on a level.
func darkest(p *render.Picture, x, y float64) float64 {
	const dot = 25.4 / fine
	return max(p.Ink(x-dot, y), p.Ink(x, y), p.Ink(x+dot, y))
}

func (m *measurer) measured(want, got float64, what string) {
	m.t.Helper()
	m.worst = max(m.worst, math.Abs(got-want))
	assert.InDelta(m.t, want, got, 0.1, what)
}

// wanted works out where the marks of a strip's cards belong, in millimetres
// from the bit's centre, from the ends of the cut: the tail is to the right.
// A drop that is set by another mark has its back stop at the tail, where the
// fence reaches that.
func wanted(runs []deck.Run, shop *joinery.Shop) []float64 {
	var all []float64
	blocks := shop.Stops == joinery.Blocks
	within := func(at float64, side measure.Length) bool { return side == 0 || at <= side.Millimetres() }
	for i := range runs {
		c := &runs[i]
		a, b, long := c.A.Millimetres(), c.B.Millimetres(), c.Length.Millimetres()
		r := c.Step.Bit.True().Millimetres() / 2
		if c.Start != nil {
			guide, tail := c.Reach(false, shop.Fence).Guide, long-a-r
			reached := tail > r && within(tail, shop.Fence.Infeed)
			if !(blocks && reached) {
				all = append(all, map[deck.Guide]float64{deck.ByLead: -(a + r), deck.ByTail: tail, deck.ByLine: -r}[guide])
			}
			if reached && (blocks || guide != deck.ByTail) {
				all = append(all, tail)
			}
		}
		if c.Stop != nil {
			guide, lead := c.Reach(true, shop.Fence).Guide, b-r
			if blocks && lead > r && within(lead, shop.Fence.Outfeed) {
				guide = deck.ByLead
			}
			all = append(all, map[deck.Guide]float64{deck.ByLead: -lead, deck.ByTail: long - b + r, deck.ByLine: r}[guide])
		}
	}
	return all
}

// clean finds text that runs into other text, leaves the page, or would be cut
// in two with the tile it stands on.
func (m *measurer) clean(page int) {
	m.t.Helper()
	whole := m.doc.WholePage(page)
	inside := render.Box{Left: 3, Top: 3, Right: whole.Right - 3, Bottom: whole.Bottom - 3}
	pieces := m.doc.Pieces(page)
	for i, p := range pieces {
		require.True(m.t, p.Box.Within(inside), "%q leaves sheet %d", p.Text, page+1)
		require.Greater(m.t, p.Size*paper.Capital, float64(paper.Least)-0.01, "%q is too small", p.Text)
		for _, q := range pieces[:i] {
			require.False(m.t, p.Box.Overlaps(q.Box, 0.05), "%q and %q overlap on sheet %d", p.Text, q.Text, page+1)
		}
		for _, t := range m.tiles {
			edge := render.Box{Left: float64(t.Box.X), Top: float64(t.Box.Y), Right: float64(t.Box.Right()), Bottom: float64(t.Box.Bottom())}
			if t.page == page {
				require.True(m.t, p.Box.Within(edge) || !p.Box.Overlaps(edge, 0), "%q is cut on sheet %d", p.Text, page+1)
			}
		}
	}
	for _, t := range m.tiles {
		if t.page == page {
			require.True(m.t, paper.Box{X: 0, Y: 0, W: paper.Paper(whole.Right), H: paper.Paper(whole.Bottom)}.Inset(3).Holds(t.Box), "a part leaves sheet %d", page+1)
		}
	}
}

// says looks on a strip's tiles for its setup, the ends of the fence and every
// pair's letter.
func (m *measurer) says(tiles []*printedTile) {
	m.t.Helper()
	var text strings.Builder
	for _, t := range tiles {
		text.WriteString(m.doc.Text(t.page))
	}
	st := tiles[0].strip
	words := []string{fmt.Sprintf("SETUP %d", st.u.Number), "OUTFEED", "INFEED", "bit centre", "trailing edge", "leading edge", "fold"}
	for _, mark := range st.marks {
		words = append(words, letters(mark.Runs[:1]))
	}
	for _, w := range words {
		assert.Contains(m.t, text.String(), w)
	}
}
