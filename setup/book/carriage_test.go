package book

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
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
