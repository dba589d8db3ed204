package sheets

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/screen"
	"fencecard/setup/deck"
)

// sidesDeck is two sides with a stopped dado each, 1 in and 3 in long, at one
// fence distance: between marks they climb one ladder, between stop blocks each
// climbs its own.
func sidesDeck(t testing.TB, stops, infeed string) *deck.Deck {
	t.Helper()
	return planDeck(t, []byte(`
unit: in
wood: white ash
shop:
  stops: `+stops+`
  fence: {infeed: `+infeed+`, outfeed: 20, reach: 9}
  bits:
    - {bit: half inch, kind: up-cut, diameter: 1/2, measured: 1/2, cutting: 1, plunges: yes}
pieces:
  - piece: left side
    size: {left-right: 3/4, front-back: 10, top-bottom: 16}
    cuts:
      - {dado: shelf, in: right, width: 1/2, setback: 6 from bottom, span: 2 to 3 from back, depth: 3/8}
  - piece: right side
    size: {left-right: 3/4, front-back: 10, top-bottom: 16}
    cuts:
      - {dado: shelf, in: left, width: 1/2, setback: 6 from bottom, span: 1 to 4 from back, depth: 1/2}
`))
}

// TestStopBlocksOnPages finds on the pages of a shop with stop blocks what its
// text says of them, and nothing of marks on the fence; and of a shop with
// marks the reverse.
func TestStopBlocksOnPages(t *testing.T) {
	for _, stops := range []string{"marks", "blocks"} {
		d := sidesDeck(t, stops, "20")
		require.Len(t, d.Setups, 1)
		var text bytes.Buffer
		require.NoError(t, screen.Text(&text, d))
		pages := spoken(t, d, Pages{})
		for what, said := range map[string]string{"text": OneLine(text.String()), "pages": pages} {
			where := stops + ", " + what
			assert.Equal(t, stops == "blocks", strings.Contains(said, "set them for card 1.1"), where)
			assert.Equal(t, stops == "blocks", strings.Contains(said, "pairs of blocks"), where)
			assert.Equal(t, stops == "blocks", strings.Contains(said, "CLAMP FRONT STOP"), where)
			assert.Equal(t, stops == "marks", strings.Contains(said, "MARK THE FENCE"), where)
			assert.Contains(t, said, "CLAMP BACK STOP", where)
			assert.NotContains(t, said, "BEYOND THE FENCE", where)
		}
		assert.Equal(t, stops == "blocks", strings.Contains(pages, "move the stops only when the last height is done"), stops)
	}
}

// TestBlocksAreDrawnAndNamed finds the blocks in the drawing from above where
// the card tells to clamp them: the back stop in every shop, the front stop
// where the shop sets blocks.
func TestBlocksAreDrawnAndNamed(t *testing.T) {
	for _, stops := range []string{"marks", "blocks"} {
		d := sidesDeck(t, stops, "20")
		u, r := stoppedCard(t, d)
		s, err := newSetter(d, Pages{})
		require.NoError(t, err)
		b, ok := s.fromAbove(u, r, s.cells[0].W, 80)
		require.True(t, ok)
		words := paper.Said(b.Block)
		assert.Contains(t, words, "BACK|STOP", stops)
		assert.Equal(t, stops == "blocks", strings.Contains(words, "FRONT|STOP"), "%s: %s", stops, words)
	}
}

// TestBackStopBesideAShortFence starts a cut with the tail end further from the
// bit than the fence reaches: nothing on the fence can hold the back stop.
func TestBackStopBesideAShortFence(t *testing.T) {
	for _, stops := range []string{"marks", "blocks"} {
		d := sidesDeck(t, stops, "2")
		_, r := stoppedCard(t, d)
		assert.True(t, r.StopOffFence(false, d.Plan.Shop.Fence))
		assert.False(t, r.StopOffFence(true, d.Plan.Shop.Fence))
		assert.False(t, r.StopOffFence(false, joinery.FenceReach{}), "a fence nobody measured")
		var text bytes.Buffer
		require.NoError(t, screen.Text(&text, d))
		for _, said := range []string{OneLine(text.String()), spoken(t, d, Pages{})} {
			assert.Contains(t, said, "BEYOND THE FENCE: on a longer facing or the table")
		}
	}
}

// spoken is everything a deck's pages say, in one line.
func spoken(t testing.TB, d *deck.Deck, o Pages) string {
	t.Helper()
	pages, err := lay(d, o)
	require.NoError(t, err)
	var all []string
	for p := range pages {
		for _, part := range p.Parts {
			all = append(all, part.Says)
		}
	}
	return OneLine(strings.Join(all, " "))
}

// OneLine undoes line breaks.
func OneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
