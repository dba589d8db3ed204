package deckcode_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck/deckcode"
)

// shaped is a board with an edge shaped by a bit that the maker drew.
const shaped = `title: Edge
unit: in
wood: white oak
shop:
  bits:
    - {bit: ogee, kind: outline, outline: [[0, 1/16], [1/8, 1/4], [1/4, 5/16]], pilot: 1/2, diameter: 1 1/8, cutting: 1/2, shank: 1/2}
pieces:
  - piece: shelf
    size: {left-right: 20, front-back: 8, top-bottom: 1}
    cuts:
      - {profile: front edge, on: top front, bit: ogee}
`

// permits are the numbers of a bit that say what may be done with it; what is left
// of the wood does not turn on them, so they are not in the code but by what they
// change.
var permits = []string{"Cutting", "Shank", "Cap", "Speed", "Measured"}

// Every number of a bit that shapes an edge gives the deck another code, and the
// run another key: with the same heights it would leave another edge.
func TestAnotherOutlineHasAnotherCode(t *testing.T) {
	plan, err := planfile.Read("edge.yaml", []byte(shaped), nil)
	require.NoError(t, err)
	d, err := setup.Make(plan)
	require.NoError(t, err)
	s := &d.Setups[0]
	code, says := d.Code, deckcode.Says(s, &s.Runs[0])

	changed := 0
	try := func(what string, at reflect.Value) {
		changed++
		at.SetInt(at.Int() + 1)
		deckcode.Seal(d)
		assert.NotEqual(t, code, d.Code, what)
		assert.NotEqual(t, says, deckcode.Says(s, &s.Runs[0]), what)
		at.SetInt(at.Int() - 1)
	}
	bit := reflect.ValueOf(s.Bit).Elem()
	for i := range bit.NumField() {
		field := bit.Type().Field(i)
		if field.Type == reflect.TypeFor[measure.Length]() && !slices.Contains(permits, field.Name) {
			try(field.Name, bit.Field(i))
		}
	}
	try("radius", reflect.ValueOf(&s.Bit.Outline.Radius).Elem())
	for i := range s.Bit.Outline.Corners {
		c := reflect.ValueOf(&s.Bit.Outline.Corners[i]).Elem()
		try("below", c.Field(0))
		try("reach", c.Field(1))
	}
	assert.Equal(t, 2+1+2*3, changed)

	s.Bit.Outline.Shape = joinery.Sloped
	deckcode.Seal(d)
	assert.NotEqual(t, code, d.Code, "another shape")
	s.Bit.Outline.Shape, s.Bit.Outline.Corners = joinery.Drawn, s.Bit.Outline.Corners[:2]
	deckcode.Seal(d)
	assert.NotEqual(t, code, d.Code, "a corner less")
}

// Two plans whose bits bear one name and differ in a corner that no height tells of.
func TestDecksOfTwoOutlinesHaveTwoCodes(t *testing.T) {
	var codes []string
	for _, text := range []string{shaped, strings.Replace(shaped, "[1/8, 1/4]", "[1/8, 3/16]", 1)} {
		plan, err := planfile.Read("edge.yaml", []byte(text), nil)
		require.NoError(t, err)
		d, err := setup.Make(plan)
		require.NoError(t, err)
		require.True(t, deckcode.Is(d.Code))
		codes = append(codes, d.Code)
	}
	assert.NotEqual(t, codes[0], codes[1])
}

// The run sheet says to what sizes the pieces are sawn, and the cards how large each
// is: an apron an inch longer is of another deck though all runs are set alike.
func TestSizesOfPiecesCount(t *testing.T) {
	plan, err := planfile.Read("edge.yaml", []byte(shaped), nil)
	require.NoError(t, err)
	d, err := setup.Make(plan)
	require.NoError(t, err)
	for i := range d.Plan.Pieces[0].Size {
		code, says := d.Code, deckcode.Says(&d.Setups[0], &d.Setups[0].Runs[0])
		d.Plan.Pieces[0].Size[i] += measure.Inch
		deckcode.Seal(d)
		assert.NotEqual(t, code, d.Code)
		assert.Equal(t, says, deckcode.Says(&d.Setups[0], &d.Setups[0].Runs[0]), "a tick stays")
	}
}
