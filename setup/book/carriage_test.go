package book

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// A setup on a carriage is read back as one, with what is nibbled and what pushes
// it; the same setup without is another.
func TestASetupOnACarriage(t *testing.T) {
	plan := bench(t)
	plan.Shop.Cross = joinery.Crossing{With: joinery.Carriage, Base: in / 2}
	d := deckOf(t, plan)
	number := 0
	for _, s := range d.Setups {
		if s.Carriage > 0 && s.Runs[0].Nibble != nil {
			number = s.Number
		}
	}
	require.NotZero(t, number)
	e := keepAs(t, d, number, "tenons")
	empty, err := Read("book.txt", nil)
	require.NoError(t, err)
	b, err := empty.Put(e, false)
	require.NoError(t, err)
	back := b.Entries()[0]
	assert.Equal(t, e.Code, back.Code)
	assert.Equal(t, in/2, back.Setup.Carriage)
	assert.Equal(t, joinery.Carriage, back.Shop.Cross.With)
	assert.Equal(t, d.Setups[number-1].Runs[0].Nibble, back.Setup.Runs[0].Nibble)
	assert.True(t, back.Setup.Runs[0].Guided)
	assert.Equal(t, d.Setups[number-1].BitHeights(), back.Setup.BitHeights())

	plan.Shop.Cross = joinery.Crossing{}
	assert.NotEqual(t, Code(&deckOf(t, plan).Setups[number-1]), back.Code)
}

// Where only the heights change from one setup to the next, what was learnt of the
// fence at either holds for both: one fence has one distance.
func TestAFenceThatStaysHasOneDistance(t *testing.T) {
	plan := bench(t)
	plan.Shop.Cross = joinery.Crossing{With: joinery.Carriage, Base: in / 2}
	for _, learntAtFirst := range []bool{true, false} {
		d := deckOf(t, plan)
		at := slices.IndexFunc(d.Setups[1:], func(s deck.Setup) bool {
			before := d.Setups[s.Number-2]
			return before.Bit == s.Bit && before.Fence == s.Fence
		})
		require.GreaterOrEqual(t, at, 0)
		first, second := &d.Setups[at], &d.Setups[at+1]
		from, to := first, second
		if !learntAtFirst {
			from, to = second, first
		}
		e := keepAs(t, d, from.Number, "tenons")
		stood := from.Fence.NearEdge + in/64
		e.Stood.Fence = &stood
		b, err := read(t, "").Put(e, false)
		require.NoError(t, err)
		b.Mark(d)
		assert.Equal(t, stood, from.SetTo().NearEdge)
		assert.Equal(t, from.SetTo(), to.SetTo())
		assert.Equal(t, []string{fmt.Sprintf("the fence stays where it stood at setup %d", from.Number)}, to.Kept.Learnt)
		assert.Equal(t, 2, len(slices.DeleteFunc(slices.Clone(d.Setups), func(s deck.Setup) bool { return s.Kept == nil })))
	}
}
