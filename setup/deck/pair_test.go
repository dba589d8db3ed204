package deck_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// pairsOf pairs runs up and writes their letters.
func pairsOf(shop *joinery.Shop, runs ...deck.Run) (string, []deck.Pair) {
	s := deck.Setup{Runs: runs}
	s.PairUp(shop)
	letters := ""
	for _, r := range s.Runs {
		if r.Pair == "" {
			letters += "-"
		}
		letters += r.Pair
	}
	return letters, s.Marks
}

// Runs share a pair when every mark and stop stands at the same place and the
// same end meets it; a pair keeps the measures that hold for all.
func TestPairs(t *testing.T) {
	const in = measure.Inch
	shop := &joinery.Shop{Fence: joinery.FenceReach{Infeed: 40 * in, Outfeed: 40 * in}}
	short, long := markedCard(in, 3*in, 10*in), markedCard(in, 3*in, 12*in)
	through := markedCard(0, 10*in, 10*in)
	lifted := markedCard(0, 3*in, 10*in)
	liftedLong := markedCard(0, 3*in, 12*in)

	letters, pairs := pairsOf(shop, short, through, short, lifted, long, liftedLong)
	assert.Equal(t, "A-ABCB", letters, "the back stop of a drop stands elsewhere for a longer piece")
	require.Len(t, pairs, 3)
	assert.True(t, pairs[0].Start.Lead && pairs[0].Start.Tail && pairs[0].Stop.Lead && pairs[0].Stop.Tail)
	assert.Nil(t, pairs[1].Start)
	assert.True(t, pairs[1].Stop.Lead, "lifted at 3 from the leading end, both")
	assert.False(t, pairs[1].Stop.Tail, "their tails stand elsewhere")

	// Where a front stop is clamped, work that stops against it shares it.
	letters, _ = pairsOf(&joinery.Shop{Fence: shop.Fence, Stops: joinery.Blocks}, lifted, liftedLong)
	assert.Equal(t, "AA", letters)

	// Measured to the tail, equal tails make a pair and equal leads do not.
	letters, _ = pairsOf(shop, markedCard(0, 9*in, 10*in), markedCard(0, 11*in, 12*in), markedCard(0, 9*in, 11*in))
	assert.Equal(t, "AAB", letters)
}

// Letters that are read as figures are left out.
func TestPairLetters(t *testing.T) {
	var runs []deck.Run
	for i := range 30 {
		runs = append(runs, markedCard(0, measure.Length(i+1)*measure.Inch, 100*measure.Inch))
	}
	_, pairs := pairsOf(&joinery.Shop{}, runs...)
	require.Len(t, pairs, 30)
	names := ""
	for _, p := range pairs {
		names += p.Letter + " "
	}
	assert.Equal(t, "A B C D E F G H J K L M N P Q R S T U V W X Y Z AA AB AC AD AE AF ", names)
}

// Worked out by hand from the right triangle of tail, height and tilt: a 3/8 bit
// 1 in high, the tail 3 or 16 1/2 before its far edge.
func TestPivot(t *testing.T) {
	d, h := workpiece.In(t, "3/8"), measure.Inch
	near := deck.PivotAt(3*measure.Inch, d, h)
	assert.InDelta(t, 20.9, near.Tilt, 0.05)
	assert.InDelta(t, 0.162, near.Early.Millimetres()/25.4, 0.0005)
	far := deck.PivotAt(33*measure.Inch/2, d, h)
	assert.InDelta(t, 3.5, far.Tilt, 0.06)
	assert.InDelta(t, 0.030, far.Early.Millimetres()/25.4, 0.0005)
	assert.Equal(t, 90.0, deck.PivotAt(d, d, h).Tilt, "the tail on the bit's near edge: impossible")
}
