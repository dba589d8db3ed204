package shopfile_test

import (
	"fmt"
	"testing"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/assert"
)

// What shops have is taken, in either unit, and numbers of the other unit are
// asked about. The sizes are of everyday tables and bits (common practice, no
// source).
func TestLikelyMeasures(t *testing.T) {
	for _, c := range []struct {
		text  string
		taken bool
	}{
		{"unit: in\nfence: {infeed: 4, outfeed: 4, reach: 1}\nlift: 1", true},
		{"unit: mm\nfence: {infeed: 100, outfeed: 1200, reach: 250}\nlift: 50", true},
		{"unit: mm\nfence: {infeed: 16, outfeed: 400, reach: 250}", false},
		{"unit: mm\nfence: {infeed: 400, outfeed: 400, reach: 10}", false},
		{"unit: in\nclearances: {cheek: 0, length: 0}\nrules: {thinnest-floor: 0}", true},
		{"unit: in\nclearances: {cheek: 1/16, length: 1/2}\nbase: 6", true},
		{"unit: in\nclearances: {cheek: 0.1, length: 1.5}", false},
		{"unit: in\nrules: {shortest-piece: 300}", false},
		{"unit: mm\nrules: {shortest-piece: 12}", false},
		{"unit: mm\nrules: {hand-distance: 4}", false},
		{"unit: mm\nbase: 6", false},
		{"unit: in\nspeed: 12000", true},
		{"unit: in\nspeed: 22", false},
		{"bits: [{bit: a, diameter: 1/16, cutting: 3/16, shank: 1/8}]", true},
		{"bits: [{bit: a, diameter: 1/4, cutting: 2, shank: 1/4}]", true},
		{"bits: [{bit: a, diameter: 3/4, cutting: 1/4, shank: 1/4, cap: 1/8}]", true},
		{"bits: [{bit: a, diameter: 2 1/2, cutting: 1/2, shank: 1/2}]", true},
		{"bits: [{bit: a, diameter: 3/8, cutting: 4, shank: 1/2}]", true},
		{"bits: [{bit: a, diameter: 1 mm, cutting: 2 mm, shank: 3 mm}]", true},
		{"bits: [{bit: a, diameter: 1/2, shank: 12 mm, cutting: 35 mm}]", true},
		{"bits: [{bit: a, diameter: 1/2, cutting: 10}]", false},
		{"bits: [{bit: a, diameter: 1/2, cap: 3}]", false},
		{"unit: mm\nbits: [{bit: a, diameter: 8, cutting: 1 1/4}]", false},
		{"unit: mm\nbits: [{bit: a, diameter: 20, cutting: 2}]", false},
		{"unit: mm\nbits: [{bit: a, diameter: 8, shank: 1/4}]", false},
	} {
		_, err := shopfile.Read("shop.yaml", []byte(c.text), measure.Inches)
		if c.taken {
			assert.NoError(t, err, c.text)
		} else {
			assert.Error(t, err, c.text)
		}
	}
}

// A shop in the wrong unit is told so once, and not number by number.
func TestAShopInTheWrongUnitIsOneFault(t *testing.T) {
	for unit, text := range map[string]string{
		"mm": "fence: {infeed: 16, outfeed: 16, reach: 8}\nlift: 2\nbits: [{bit: a, diameter: 1/2, cutting: 1 1/2, shank: 1/2}]",
		"in": "fence: {infeed: 400, outfeed: 400, reach: 200}\nlift: 50\nbits: [{bit: a, diameter: 1/2, cutting: 35, shank: 12}]",
	} {
		_, err := shopfile.Read("shop.yaml", fmt.Append(nil, "unit: ", unit, "\n", text), measure.Inches)
		var faults plantext.Faults
		assert.ErrorAs(t, err, &faults)
		assert.Len(t, faults, 1, "%v", err)
		assert.ErrorContains(t, err, "no table lifts")
	}
}
