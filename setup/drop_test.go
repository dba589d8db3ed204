package setup_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// The leg of the worked examples, its mortise in the left side: 14 to 16 1/2 from
// the bottom, which leads, so that the tail stands 3 before the trailing edge.
const shortTail = `  - piece: leg
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: rail, in: left, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1%}
`

const threeEighths = "  bits:\n    - {bit: three eighths, diameter: 3/8, cutting: 1 1/4, shank: 3/8, plunges: yes}\n"

func dropOf(t *testing.T, shop, more string) deck.Run {
	t.Helper()
	pieces := shortTail[:len(shortTail)-len("%}\n")] + more + "}\n"
	d := workpiece.DeckOf(t, planFrom(t, shop+threeEighths, pieces))
	require.Len(t, d.Setups, 1)
	r := d.Setups[0].Runs[0]
	require.Equal(t, deck.Drop, r.Begin)
	return r
}

// Tail 3 before the trailing edge, bit 3/8: tilted by 20.9 degrees at a height of
// 1, and the mouth begins 0.162 in too early.
func TestDropOfAShortTail(t *testing.T) {
	r := dropOf(t, "", "")
	assert.Equal(t, joinery.Bottom, r.Leads)
	assert.Equal(t, workpiece.In(t, "3"), r.Start.TailBeforeEdge)
	assert.InDelta(t, 20.9, r.Pivot.Tilt, 0.05)
	assert.InDelta(t, 0.162*25.4, r.Pivot.Early.Millimetres(), 0.02)
	assert.InDelta(t, (math.Sqrt(10)-3)*25.4, r.Pivot.Early.Millimetres(), 0.001)
	assert.Nil(t, r.Hole)
	assert.False(t, r.Raised)
}

// Where the shop can raise the turning bit, it is raised into the clamped work; a
// start hole stands at the bit's centre and is lowered over it.
func TestDropWithoutPivoting(t *testing.T) {
	assert.True(t, dropOf(t, "  raise: yes\n", "").Raised)
	bored := dropOf(t, "  raise: yes\n", ", start: hole")
	assert.False(t, bored.Raised)
	assert.Equal(t, &deck.Hole{FromLead: workpiece.In(t, "14 3/16"), FromFence: workpiece.In(t, "11/16")}, bored.Hole)
	assert.NotNil(t, bored.Pivot, "what it would have taken")

	long := planFrom(t, "  raise: yes\n"+threeEighths, shortTail[:len(shortTail)-len("%}\n")]+"}\n")
	long.Pieces[0].Cuts[0].In = joinery.Right // the tail is 16 1/2 long
	require.Empty(t, long.Pieces[0].LayAll(long.Shop.Scale))
	assert.False(t, workpiece.DeckOf(t, long).Setups[0].Runs[0].Raised)
}
