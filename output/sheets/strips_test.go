package sheets

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/internal/render"
)

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
