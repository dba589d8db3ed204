package timber

import (
	"math"
	"math/rand/v2"
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func wood(t *testing.T, name string) Wood {
	t.Helper()
	w, _, ok := FindWood(name)
	require.True(t, ok, name)
	return w
}

func change(t *testing.T, w Wood, width measure.Length, from, to float64, d Direction) Movement {
	t.Helper()
	m, err := w.Change(width, from, to, d)
	require.NoError(t, err)
	return m
}

// The worked example of the Wood Handbook, FPL-GTR-190 (2010), chapter 13: a
// flat-sawn board 232 mm (9.15 in) wide, from 8 to 11 % with CT = 0.00245,
// grows 1.7 mm (0.067 in) to 233.7 mm (9.217 in). That the board is white fir
// is from memory; its CT is 0.00245.
func TestChangeByTheHandbooksExample(t *testing.T) {
	fir := wood(t, "white fir")
	require.Equal(t, 0.00245, fir.CT)

	metric := change(t, fir, 232*measure.Millimetre, 8, 11, Tangential)
	assert.InDelta(t, 1.7, metric.Change.Millimetres(), 0.05)
	assert.InDelta(t, 233.7, (232*measure.Millimetre + metric.Change).Millimetres(), 0.05)

	inches := change(t, fir, measure.FromMillimetres(9.15*25.4), 8, 11, Tangential)
	assert.InDelta(t, 0.067, inches.Change.Inches(), 0.0005)
	assert.InDelta(t, 9.217, 9.15+inches.Change.Inches(), 0.0005)
	assert.Equal(t, "coefficient", inches.By)

	across := change(t, fir, 100*measure.Millimetre, 8, 11, Radial)
	assert.InDelta(t, 100*0.00112*3, across.Change.Millimetres(), 1e-6)
}

func TestChangeGoesByShrinkageOutsideSixToFourteen(t *testing.T) {
	oak := wood(t, "white oak")
	for _, c := range []struct {
		from, to float64
		by       string
	}{
		{6, 14, "coefficient"}, {14, 6, "coefficient"}, {8, 8, "coefficient"},
		{5.99, 14, "shrinkage"}, {6, 14.01, "shrinkage"}, {14.01, 6, "shrinkage"}, {8, 30, "shrinkage"}, {0, 12, "shrinkage"},
	} {
		assert.Equal(t, c.by, change(t, oak, 100*measure.Millimetre, c.from, c.to, Tangential).By, "%v to %v", c.from, c.to)
	}
	// From green to ovendry a board shrinks by its shrinkage: the meaning of tables 4-3 and 4-4.
	for _, w := range Woods() {
		if w.ShrinkT == 0 {
			continue
		}
		assert.InDelta(t, -w.ShrinkT, change(t, w, 100*measure.Millimetre, 30, 0, Tangential).Change.Millimetres(), 1e-6, w.Name)
		assert.InDelta(t, -w.ShrinkR, change(t, w, 100*measure.Millimetre, 30, 0, Radial).Change.Millimetres(), 1e-6, w.Name)
	}
}

// Shrinkage is a share of the green size, so a way by shrinkage and the way
// back end at the size they began with.
func TestChangeThereAndBackComesHome(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	oak := wood(t, "white oak")
	for range 1000 {
		a, b := 14.001+15.9*random.Float64(), 30*random.Float64()
		width := 500 * measure.Millimetre
		there := width + change(t, oak, width, a, b, Tangential).Change
		back := there + change(t, oak, there, b, a, Tangential).Change
		require.InDelta(t, 500, back.Millimetres(), 1e-5, "%v to %v", a, b)
		require.Equal(t, b > a, there > width)
	}
}

// For one species the two equations meet at 6 and 14 %, so that no board jumps
// there.
func TestChangeHasNoJumpAtTheLimits(t *testing.T) {
	ash := wood(t, "white ash")
	for _, limit := range []struct{ inside, outside float64 }{{14, 14.0001}, {6, 5.9999}} {
		a := change(t, ash, 100*measure.Millimetre, 10, limit.inside, Tangential)
		b := change(t, ash, 100*measure.Millimetre, 10, limit.outside, Tangential)
		assert.NotEqual(t, a.By, b.By)
		assert.InDelta(t, a.Change.Millimetres(), b.Change.Millimetres(), 0.005)
	}
}

func TestChangeOfWoodsWithFewFigures(t *testing.T) {
	sapele := change(t, wood(t, "sapele"), 100*measure.Millimetre, 8, 12, Tangential)
	assert.Equal(t, "shrinkage", sapele.By)
	assert.Equal(t, Memory, sapele.From)

	mdf := change(t, wood(t, "MDF"), 100*measure.Millimetre, 6, 14, Tangential)
	assert.Zero(t, mdf.Change)
	assert.Equal(t, "sheet", mdf.By)

	own := Wood{Name: "bog oak", Group: Own, CT: 0.003}
	assert.InDelta(t, 1.2, change(t, own, 100*measure.Millimetre, 8, 12, Tangential).Change.Millimetres(), 1e-6)
	_, err := own.Change(measure.Inch, 8, 20, Tangential)
	assert.ErrorContains(t, err, "keep within 6 to 14 %")
	_, err = own.Change(measure.Inch, 8, 12, Radial)
	assert.ErrorContains(t, err, "how bog oak moves")
	_, err = Wood{}.Change(measure.Inch, 8, 12, Radial)
	assert.ErrorContains(t, err, "unknown wood")
}

func TestChangeRefuses(t *testing.T) {
	oak := wood(t, "white oak")
	for _, c := range []struct {
		width    measure.Length
		from, to float64
		want     string
	}{
		{0, 8, 11, "the width is 0"},
		{measure.Inch, 8, 30.1, "above 30 %"},
		{measure.Inch, 31, 8, "above 30 %"},
		{measure.Inch, -1, 8, "not possible"},
		{measure.Inch, 8, math.NaN(), "not possible"},
	} {
		_, err := oak.Change(c.width, c.from, c.to, Tangential)
		assert.ErrorContains(t, err, c.want)
	}
	change(t, oak, measure.Inch, 0, 30, Radial)
}
