package shopfile_test

import (
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const mm = measure.Millimetre

func readShop(t *testing.T, text string, unit measure.Unit) joinery.Shop {
	t.Helper()
	shop, err := shopfile.Read("shop.yaml", []byte(text), unit)
	require.NoError(t, err)
	return shop
}

func TestShopOfTheFormat(t *testing.T) {
	shop := readShop(t, `unit: in
fence: {infeed: 20, outfeed: 18, reach: 8}
lift: 2 1/2
scale: 1/32
minutes: {bit: 5, fence: 2.25, height: 0.125, stop: 0, pass: 0.05, fit: 0}
stops: blocks
share: 1/2
bits:
  - {bit: half, kind: up-cut, diameter: 1/2, measured: 0.496, cutting: 1 1/2, shank: 12 mm, plunges: yes, cap: 3/16}
  - {bit: plain, diameter: 1/4, plunges: no}
  - bit: third
    kind: Down-Cut
    diameter: 8 mm
`, measure.Millimetres)
	assert.Equal(t, "shop.yaml", shop.Name)
	assert.Equal(t, joinery.FenceReach{Infeed: 20 * measure.Inch, Outfeed: 18 * measure.Inch, Reach: 8 * measure.Inch}, shop.Fence)
	assert.Equal(t, 5*measure.Inch/2, shop.Lift)
	assert.Equal(t, measure.Scale{Unit: measure.Inches, Division: measure.Inch / 32}, shop.Scale)
	assert.Equal(t, joinery.Minutes{Bit: 5000, Fence: 2250, Height: 125, Pass: 50}, shop.Minutes)
	assert.Equal(t, joinery.Blocks, shop.Stops)
	assert.Equal(t, timber.Share{Num: 1, Den: 2}, shop.Share)
	require.Len(t, shop.Bits, 3)
	half := shop.Bits[0]
	assert.Equal(t, joinery.UpCut, half.Kind)
	assert.Equal(t, 496*measure.Inch/1000, half.True())
	assert.Equal(t, 12*mm, half.Shank)
	assert.Equal(t, joinery.Yes, half.Plunges)
	assert.Equal(t, 3*measure.Inch/16, half.Cap)
	assert.Equal(t, 9, half.Place.Line)
	assert.Equal(t, joinery.Bit{Name: "plain", Diameter: measure.Inch / 4, Plunges: joinery.No, Place: shop.Bits[1].Place}, shop.Bits[1])
	assert.Equal(t, joinery.DownCut, shop.Bits[2].Kind)
	assert.Equal(t, joinery.NotSaid, shop.Bits[2].Plunges)
}

// A bare number is in the unit of the shop file, else in the plan's.
func TestWaysOfAShop(t *testing.T) {
	shop, err := shopfile.Read("shop.yaml", []byte("crossing: {carriage: 1/2}\npasses: gentle\nraise: yes\nopening: 2 1/4\n"), measure.Inches)
	require.NoError(t, err)
	assert.Equal(t, joinery.Crossing{With: joinery.Carriage, Base: measure.Inch / 2}, shop.Cross)
	assert.True(t, shop.Gentle)
	assert.True(t, shop.Raises)
	assert.Equal(t, 9*measure.Inch/4, shop.Opening)
	shop, err = shopfile.Read("shop.yaml", []byte("crossing: gauge\nraise: no\n"), measure.Inches)
	require.NoError(t, err)
	assert.Equal(t, joinery.Crossing{With: joinery.Gauge}, shop.Cross)
	assert.False(t, shop.Raises)
	built := shopfile.BuiltIn(measure.Inches)
	assert.Equal(t, joinery.Crossing{With: joinery.Block}, built.Cross)
	assert.False(t, built.Gentle || built.Raises || built.Opening > 0)
}

func TestUnitOfAShop(t *testing.T) {
	assert.Equal(t, 50*mm, readShop(t, "lift: 50", measure.Millimetres).Lift)
	assert.Equal(t, 2*measure.Inch, readShop(t, "lift: 2", measure.Inches).Lift)
	assert.Equal(t, 50*mm, readShop(t, "lift: 50\nunit: mm", measure.Inches).Lift)
	plan, err := planfile.Read("plan.yaml", []byte(`unit: in
shop: {unit: mm, lift: 50, scale: 0.5}
pieces:
  - {piece: a, size: {left-right: 9, front-back: 2, top-bottom: 1}}
`), nil)
	require.NoError(t, err)
	assert.Equal(t, 50*mm, plan.Shop.Lift)
	assert.Equal(t, measure.Scale{Unit: measure.Millimetres, Division: mm / 2}, plan.Shop.Scale)
	assert.Equal(t, 9*measure.Inch, plan.Pieces[0].Size[0], "the plan's own numbers stay inches")
}

// The scale follows the plan where the shop names none.
func TestWhatAShopLeavesOut(t *testing.T) {
	for _, unit := range []measure.Unit{measure.Inches, measure.Millimetres} {
		built, shop := shopfile.BuiltIn(unit), readShop(t, "lift: 50 mm", unit)
		assert.Equal(t, measure.DefaultScale(unit), shop.Scale)
		assert.Equal(t, built.Bits, shop.Bits)
		assert.Equal(t, built.Fence, shop.Fence)
		assert.Equal(t, built.Minutes, shop.Minutes)
	}
	shop := readShop(t, "fence: {reach: 5}\nminutes: {bit: 4, pass: 0.2, fit: 1.5}", measure.Inches)
	assert.Equal(t, joinery.FenceReach{Infeed: 16 * measure.Inch, Outfeed: 16 * measure.Inch, Reach: 5 * measure.Inch}, shop.Fence)
	assert.Equal(t, joinery.Minutes{Bit: 4000, Fence: 2000, Height: 500, Stop: 1000, Pass: 200, Fit: 1500}, shop.Minutes)
}

// Six inch bits and six metric ones, of sizes that are sold everywhere.
func TestBuiltInShop(t *testing.T) {
	shop := shopfile.BuiltIn(measure.Inches)
	assert.Equal(t, shopfile.BuiltInName, shop.Name)
	assert.Positive(t, shop.Fence.Reach)
	assert.Positive(t, shop.Lift)
	assert.Zero(t, shop.Share, "passes by the wood")
	var inch, metric []measure.Length
	for _, b := range shop.Bits {
		if b.Diameter%(measure.Inch/16) == 0 {
			inch = append(inch, b.Diameter)
		} else {
			metric = append(metric, b.Diameter)
		}
		assert.Positive(t, b.Cutting)
		assert.Positive(t, b.Shank)
		assert.Zero(t, b.Measured, "an example has not been measured")
	}
	assert.Equal(t, []measure.Length{measure.Inch / 4, 3 * measure.Inch / 8, measure.Inch / 2, measure.Inch / 2, 5 * measure.Inch / 8, 3 * measure.Inch / 4}, inch)
	assert.Equal(t, []measure.Length{6 * mm, 8 * mm, 10 * mm, 12 * mm, 16 * mm, 20 * mm}, metric)
	assert.Equal(t, measure.MetricScale, shopfile.BuiltIn(measure.Millimetres).Scale)
}

// What is no length is not taken for one in the other unit besides.
func TestALiftAtFaultIsOneFault(t *testing.T) {
	for _, lift := range []string{"high", "0", ""} {
		_, err := shopfile.Read("shop.yaml", []byte("lift: "+lift), measure.Millimetres)
		var faults plantext.Faults
		require.ErrorAs(t, err, &faults, lift)
		assert.Len(t, faults, 1, "%q: %v", lift, err)
	}
}

func TestShares(t *testing.T) {
	for text, want := range map[string]timber.Share{
		"1/2": {Num: 1, Den: 2}, "0.5": {Num: 1, Den: 2}, "1": {Num: 1, Den: 1}, "010/16": {Num: 5, Den: 8}, "5/8": {Num: 5, Den: 8},
	} {
		assert.Equal(t, want, readShop(t, "share: "+text, measure.Inches).Share, text)
	}
	for _, text := range []string{"0", "1/0", "-1", "3/2", "half", "1/2/3", "50%", "0.123456789"} {
		_, err := shopfile.Read("shop.yaml", []byte("share: "+text), measure.Inches)
		assert.ErrorContains(t, err, "write a share of the bit's diameter", text)
	}
}

// A bit that shapes edges is as wide as its pilot and its outline make it; where the
// label is not copied, that is its diameter.
func TestDiameterOfAShapedBitLeftOut(t *testing.T) {
	for _, c := range []struct{ bit, diameter string }{
		{"{bit: b, kind: round-over, pilot: 1/2, radius: 1/4}", "1"},
		{"{bit: b, kind: outline, pilot: 1/2, outline: [[0, 3/8], [1/4, 1]]}", "2 1/2"},
	} {
		shop, err := shopfile.Read("shop.yaml", []byte("bits:\n  - "+c.bit+"\n"), measure.Inches)
		require.NoError(t, err, c.bit)
		assert.Equal(t, c.diameter, measure.InchScale.Format(shop.Bits[0].Diameter), c.bit)
	}
}

// A misspelt key is told once; what it leaves missing is not worked with.
func TestAMisspeltPilotIsOneFault(t *testing.T) {
	_, err := shopfile.Read("shop.yaml", []byte("unit: in\nbits:\n  - {bit: bead, kind: outline, outline: [[0, 1/8], [1/4, 3/8]], ilot: 1/2, cutting: 1, shank: 1/2}\n"), measure.Inches)
	var faults plantext.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 1)
	assert.Equal(t, "write pilot", faults[0].Remedy)
}
