package shopfile_test

import (
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const fullShop = `unit: in
speed: 22000
base: 6
clearances: {cheek: 0.003}
rules: {shortest-piece: 10, hand-distance: 5}
woods:
  - {wood: bog oak, hardness: 1500, shrinkage: {radial: 6, tangential: 11}, CT: 0.004, share: 1/4}
  - {wood: hard ply, hardness: 6000 N, moves: no}
bits:
  - {bit: half, diameter: 1/2, speed: 18000 rpm}
`

func TestShopsOwnWoodsAndRules(t *testing.T) {
	shop, err := shopfile.Read("shop.yaml", []byte(fullShop), measure.Millimetres)
	require.NoError(t, err)
	assert.Equal(t, 22000, shop.Speed)
	assert.Equal(t, 18000, shop.Bits[0].Speed)
	assert.Equal(t, 6*measure.Inch, shop.Base)
	assert.Equal(t, joinery.Clearance{Cheek: 3 * measure.Inch / 1000, Length: 3 * measure.Millimetre / 2}, shop.Clearance)
	assert.Equal(t, joinery.Rules{ShortPiece: 10 * measure.Inch, HandDistance: 5 * measure.Inch, ThinFloor: 3 * measure.Millimetre}, shop.Rules)
	require.Len(t, shop.Woods, 2)
	assert.Equal(t, timber.Wood{
		Name: "bog oak", Group: timber.Own, Hardness: 1500, HardnessFrom: timber.ShopFile,
		ShrinkR: 6, ShrinkT: 11, ShrinkFrom: timber.ShopFile, CT: 0.004, CFrom: timber.ShopFile,
		Share: timber.Share{Num: 1, Den: 4},
	}, shop.Woods[0])
	// 6000 N is 1349 lbf: NIST SP 811, appendix B, 1 lbf = 4.448 222 N.
	assert.InDelta(t, 1348.9, shop.Woods[1].Hardness, 0.05)
	assert.False(t, shop.Woods[1].Moves())
}

func TestWhatAShopLeavesOutIsUsual(t *testing.T) {
	shop, err := shopfile.Read("shop.yaml", []byte("lift: 50 mm\n"), measure.Millimetres)
	require.NoError(t, err)
	assert.Equal(t, joinery.DefaultClearance(measure.Millimetres), shop.Clearance)
	assert.Equal(t, joinery.DefaultRules(measure.Millimetres), shop.Rules)
	assert.Empty(t, shop.Woods)
}

func TestShopFaultsHaveAPlaceAndARemedy(t *testing.T) {
	for text, want := range map[string]string{
		"speed: fast":                                "write the highest speed in rpm",
		"speed: 0":                                   "write the highest speed in rpm",
		"base: 0":                                    "write a length above 0, such as base: 6",
		"rules: {shortest: 12}":                      `the list of rules has no key "shortest"`,
		"rules: {hand-distance: 0}":                  "hand-distance is 0",
		"clearances: 3":                              "write clearances: {cheek: 0.005, length: 1/16}",
		"woods: [{hardness: 900}]":                   "add wood: white ash",
		"woods: [{wood: a, hardness: hard}]":         "write the side hardness in lbf",
		"woods: [{wood: a, hardness: 60000}]":        "write the side hardness in lbf",
		"woods: [{wood: a, CT: 3}]":                  `"3" cannot be the CT`,
		"woods: [{wood: a, shrinkage: 5}]":           "write shrinkage: {radial: 5.6, tangential: 10.5}",
		"woods: [{wood: a, shrinkage: {radial: 5}}]": "add tangential: 10.5",
		"woods: [{wood: a}, {wood: A}]":              `two woods are named "A"`,
		"woods: 3":                                   "woods is not a list",
		"woods: [{wood: a, share: 2}]":               "no share of a bit",
		"woods: [3]":                                 "a wood has a name and its figures",
	} {
		_, err := shopfile.Read("shop.yaml", []byte(text+"\n"), measure.Inches)
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), want, text)
		assert.Contains(t, err.Error(), "shop.yaml:1:", text)
	}
}
