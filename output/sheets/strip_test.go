package sheets

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/internal/render"
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
	decks := map[string]*deck.Deck{"crowded": planDeck(t, crowdedPlan())}
	for _, e := range exampleDecks(t) {
		decks[e.Name] = e.deck
	}
	return decks
}

// TestStripsAreTrue prints strips on every paper and measures every sheet as
// it is rendered: each mark at its true place to 0.1 mm, added up over all the
// parts of a strip; the bit's edges and the fold lines; the bar.
func TestStripsAreTrue(t *testing.T) {
	for name, d := range stripDecks(t) {
		for p := range paperSizes {
			t.Run(name+" on "+PaperSize(p).String(), func(t *testing.T) {
				o := Pages{Paper: PaperSize(p), Only: OnlyStrips}
				var file bytes.Buffer
				require.NoError(t, PDF(&file, d, o))
				m := measurer{t: t, doc: render.Open(t, file.Bytes())}
				m.findTiles(d, o)
				for page := range m.doc.Pages() {
					m.bar(page)
					m.clean(page)
				}
				for m.next < len(m.tiles) {
					m.strip()
				}
				t.Logf("%d parts on %d sheets, %d marks, none more than %.3f mm off", len(m.tiles), m.doc.Pages(), m.marks, m.worst)
			})
		}
	}
}

// TestStripsInTheDeck puts the strips behind the cards, or prints them alone,
// the same bytes each time.
func TestStripsInTheDeck(t *testing.T) {
	d := planDeck(t, examples.BootBench)
	var alone, again, with, without bytes.Buffer
	require.NoError(t, PDF(&alone, d, Pages{Only: OnlyStrips}))
	require.NoError(t, PDF(&again, planDeck(t, examples.BootBench), Pages{Only: OnlyStrips}))
	assert.Equal(t, alone.Bytes(), again.Bytes())
	require.NoError(t, PDF(&with, d, Pages{Strips: true}))
	require.NoError(t, PDF(&without, d, Pages{}))
	sheets := render.Open(t, alone.Bytes()).Pages()
	assert.Positive(t, sheets)
	assert.Equal(t, render.Open(t, without.Bytes()).Pages()+sheets, render.Open(t, with.Bytes()).Pages())
}

// Through cuts need no marks: a deck of nothing else gets a sheet that says so.
func TestNoStripsWithoutMarks(t *testing.T) {
	d := planDeck(t, []byte("unit: in\npieces:\n- piece: rail\n  size: {left-right: 20, front-back: 3/4, top-bottom: 3}\n"+
		"  cuts:\n  - {groove: panel, in: bottom, width: 1/4, setback: 1/4 from front, depth: 1/4}\n"))
	var file bytes.Buffer
	require.NoError(t, PDF(&file, d, Pages{Only: OnlyStrips}))
	doc := render.Open(t, file.Bytes())
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
		paper PaperSize
		room  bool
	}{{"2", Index, true}, {"3 1/2", A5, true}, {"3 1/2", Index, false}} {
		err := PDF(io.Discard, planDeck(t, widePlan(c.bit)), Pages{Paper: c.paper, Only: OnlyStrips})
		if c.room {
			assert.NoError(t, err)
		} else {
			assert.EqualError(t, err, "setup 1: the paper has no room for a strip beside a bit of 3 1/2; a larger paper would be right")
		}
	}
}

// A deck without a stopped cut has no sheet that tells how strips are used.
func TestNoStripsNoSheet(t *testing.T) {
	d := planDeck(t, []byte("unit: in\npieces:\n- piece: rail\n  size: {left-right: 20, front-back: 3/4, top-bottom: 3}\n"+
		"  cuts:\n  - {groove: g, in: top, width: 1/4, setback: 1/4 from front, depth: 1/4}\n"))
	count := func(o Pages) (n int) {
		pages, err := lay(d, o)
		require.NoError(t, err)
		for range pages {
			n++
		}
		return n
	}
	assert.Equal(t, count(Pages{}), count(Pages{Strips: true}))
	assert.Equal(t, 1, count(Pages{Only: OnlyStrips}))
}
