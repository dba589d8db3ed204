package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
)

// A plan that names no shop has the example's bits, and so has one whose shop names none.
func TestTheExampleShopIsSaid(t *testing.T) {
	for shop, said := range map[string]bool{
		"":                        true,
		"shop: {stops: blocks}\n": true,
		"shop: {bits: [{bit: six, kind: up-cut, diameter: 6 mm}]}\n": false,
	} {
		plan, err := planfile.Read("plan.yaml", []byte("unit: mm\n"+shop+"pieces:\n  - piece: rail\n    size: {left-right: 400, front-back: 60, top-bottom: 20}\n"), nil)
		require.NoError(t, err)
		assert.Equal(t, said, ExampleShop(&plan.Shop) != "", shop)
	}
}
