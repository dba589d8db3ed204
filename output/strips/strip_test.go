package strips

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/internal/render"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// crowdedPlan has 40 stopped grooves at one setup: 20 whose marks lie 1/64 in
// apart, and 20 all along rails 90 in long; half of them under long names.
func crowdedPlan() []byte {
	var b strings.Builder
	b.WriteString("title: " + strings.Repeat("Long rails ", 5) + "Ωłäé\nunit: in\n" +
		"shop:\n  fence: {infeed: 48, outfeed: 48, reach: 10}\n  scale: 1/64\n" +
		"  bits:\n  - {bit: " + strings.Repeat("up-cut ", 8) + "best, kind: up-cut, diameter: 1/4, cutting: 1, shank: 1/4, plunges: yes}\n" +
		"pieces:\n")
	for i := range 40 {
		from, to := fmt.Sprintf("4 %d/64", i+1), fmt.Sprintf("60 %d/64", 63-i)
		if i >= 20 {
			from, to = fmt.Sprintf("%d %d/64", 2*i-38, i), fmt.Sprintf("%d 1/64", 90-2*(i-18))
		}
		fmt.Fprintf(&b, "- piece: rail %d\n  size: {left-right: 90, front-back: 3/4, top-bottom: 3}\n"+
			"  cuts:\n  - {groove: panel, in: front, width: 1/4, setback: 1/2 from top, span: %s to %s from left, depth: 1/4}\n", i+1, from, to)
	}
	return []byte(b.String())
}

// stripDecks are the decks strips are tested with.
func stripDecks(t testing.TB) map[string]*deck.Deck {
	cabinet, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
	require.NoError(t, err)
	bench, err := os.ReadFile("../../testdata/plans/garden-bench.yaml")
	require.NoError(t, err)
	blocks, err := os.ReadFile("../../testdata/plans/nightstand.yaml")
	require.NoError(t, err)
	return map[string]*deck.Deck{
		"garden bench": planDeck(t, bench),
		"with blocks":  planDeck(t, blocks),
		"boot bench":   planDeck(t, examples.BootBench),
		"wall cabinet": planDeck(t, cabinet),
		"crowded":      planDeck(t, crowdedPlan()),
	}
}

// planDeck reads a plan and makes its deck.
func planDeck(t testing.TB, plan []byte) *deck.Deck {
	t.Helper()
	p, err := planfile.Read("plan.yaml", plan, nil)
	require.NoError(t, err)
	d, err := setup.Make(p)
	require.NoError(t, err)
	return d
}

// somePapers are papers that strips are printed on: width, height and margin.
var somePapers = map[string][3]paper.Paper{
	"letter": {215.9, 279.4, 10}, "a4": {210, 297, 10}, "legal": {215.9, 355.6, 10}, "a5": {148, 210, 10}, "index": {101.6, 152.4, 6},
}

// setterOn sets a deck's strips on a paper.
func setterOn(d *deck.Deck, on string) setting.Setter {
	p := somePapers[on]
	page := paper.Box{W: p[0], H: p[1]}
	return setting.Setter{Page: page, Frame: page.Inset(p[2]), Scale: d.Plan.Shop.Scale, Reach: d.Plan.Shop.Fence,
		Blocks: d.Plan.Shop.Stops == joinery.Blocks, Title: d.Plan.Title, Code: d.Code}
}

// printed prints strips alone.
func printed(d *deck.Deck, on string) ([]byte, error) {
	all, err := Sheets(setterOn(d, on), d, true)
	if err != nil {
		return nil, err
	}
	pdf := paper.NewPDF(d.Plan.Title)
	g := &paper.Gate{To: pdf}
	for _, p := range all {
		g.Page(p.W, p.H)
		paper.Paint(g, p.Parts)
	}
	var file bytes.Buffer
	if err := pdf.Write(&file); err != nil {
		return nil, err
	}
	return file.Bytes(), g.Err
}

// TestStripsAreTrue prints strips on every paper and measures every sheet as
// it is rendered: each mark at its true place to 0.1 mm, on a part without the bit
// from its rule line by the distance printed there; the bit's edges and the fold lines; the bar.
func TestStripsAreTrue(t *testing.T) {
	for name, d := range stripDecks(t) {
		for on := range somePapers {
			t.Run(name+" on "+on, func(t *testing.T) {
				file, err := printed(d, on)
				require.NoError(t, err)
				m := measurer{t: t, doc: render.Open(t, file)}
				m.findTiles(d, on)
				for page := range m.doc.Pages() {
					m.bar(page)
					m.clean(page)
				}
				for m.next < len(m.tiles) {
					m.strip()
				}
				t.Logf("%d parts, %d by a rule line, on %d sheets, %d marks, none more than %.3f mm off", len(m.tiles), m.rules, m.doc.Pages(), m.marks, m.worst)
			})
		}
	}
}

// Through cuts need no marks: a deck of nothing else gets a sheet that says so.
func TestNoStripsWithoutMarks(t *testing.T) {
	d := planDeck(t, []byte("unit: in\npieces:\n- piece: rail\n  size: {left-right: 20, front-back: 3/4, top-bottom: 3}\n"+
		"  cuts:\n  - {groove: panel, in: bottom, width: 1/4, setback: 1/4 from front, depth: 1/4}\n"))
	file, err := printed(d, "letter")
	require.NoError(t, err)
	doc := render.Open(t, file)
	require.Equal(t, 1, doc.Pages())
	assert.Contains(t, doc.Text(0), "No strip for setup 1")
}

// widePlan stops a groove as wide as its bit at both ends.
func widePlan(bit string) []byte {
	return []byte("unit: in\nshop:\n  bits:\n  - {bit: wide, kind: straight, diameter: " + bit + ", cutting: 1, shank: 1/2, plunges: yes}\n" +
		"pieces:\n- piece: rail\n  size: {left-right: 40, front-back: 3/4, top-bottom: 8}\n" +
		"  cuts:\n  - {groove: wide, in: front, width: " + bit + ", setback: 2 from top, span: 4 to 30 from left, depth: 1/8}\n")
}

// A strip needs room for words beside the bit; it is not printed broken.
func TestNoRoomBesideTheBit(t *testing.T) {
	for _, c := range []struct {
		bit   string
		paper string
		room  bool
	}{{"2", "index", true}, {"3 1/2", "a5", true}, {"3 1/2", "index", false}} {
		_, err := printed(planDeck(t, widePlan(c.bit)), c.paper)
		if c.room {
			assert.NoError(t, err)
		} else {
			assert.EqualError(t, err, "setup 1: the paper has no room for a strip beside a bit of 3 1/2; a larger paper would be right")
		}
	}
}

// Every plan's strips find room on the smallest paper, and no part is without a
// mark of its own.
func TestNoPartIsBlank(t *testing.T) {
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		plan, err := os.ReadFile(file)
		require.NoError(t, err)
		d := planDeck(t, plan)
		for _, on := range []string{"index", "letter"} {
			s := maker{setterOn(d, on)}
			wide, high := s.stripRoom()
			for i := range d.Setups {
				strips, err := s.stripsOf(&d.Setups[i], &d.Plan.Shop, wide, high)
				require.NoError(t, err, file)
				for _, st := range strips {
					for _, part := range st.tiles {
						marks := slices.DeleteFunc(slices.Clone(part.tags), func(g *tag) bool { return g.level || g.ruled })
						assert.True(t, part.hasBit() || len(marks) > 0, "%s, setup %d", file, d.Setups[i].Number)
					}
				}
			}
		}
	}
}
