package measure

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFormat(t *testing.T) {
	sixteenths, thousandths, halves := Scale{Inches, Inch / 16}, Scale{Inches, Inch / 1000}, Scale{Millimetres, Millimetre / 2}
	for _, c := range []struct {
		scale Scale
		l     Length
		want  string
	}{
		{InchScale, 0, "0"},
		{InchScale, 3 * Inch / 8, "3/8"},
		{InchScale, 13 * Inch / 8, "1 5/8"},
		{InchScale, 2 * Inch, "2"},
		{InchScale, -Inch / 4, "-1/4"},
		{InchScale, -9 * Inch / 4, "-2 1/4"},
		{InchScale, 47*Inch/64 + 1, "47/64+"},
		{InchScale, 47*Inch/64 - 1, "47/64-"},
		{InchScale, 1, "0+"},
		{InchScale, 20 * Millimetre, "25/32+"}, // 20 mm is 0.7874 in
		{sixteenths, 13 * Inch / 64, "3/16+"},
		{thousandths, Inch / 8, "0.125"},
		{thousandths, Inch / 64, "0.016-"},
		{MetricScale, 9525 * Millimetre / 1000, "9.5+"},
		{MetricScale, 525 * Millimetre / 10, "52.5"},
		{MetricScale, -2 * Millimetre, "-2"},
		{MetricScale, Inch, "25.4"},
		{halves, 105 * Millimetre / 10, "10.5"},
		{halves, 102 * Millimetre / 10, "10+"},
	} {
		assert.Equal(t, c.want, c.scale.Format(c.l), "%s", c.l)
	}
}

// A length that falls on the scale is read back as it was printed; any other
// is at most half a division from what is printed, and its sign says which way.
func TestPrintedLengthsAreReadBack(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 4))
	scales := []Scale{InchScale, MetricScale, {Inches, Inch / 16}, {Inches, Inch / 1000}, {Millimetres, Millimetre / 2}}
	for range 20_000 {
		scale := scales[random.IntN(len(scales))]
		l := Length(random.Int64N(int64(100 * Inch)))
		if random.IntN(2) == 0 {
			l = scale.Floor(l)
		}
		text := scale.Format(l)
		number := strings.TrimRight(text, "+-")
		back, err := ParseLength(number, scale.Unit)
		require.NoError(t, err, text)
		require.True(t, scale.On(back), text)
		require.LessOrEqual(t, 2*(l-back).Abs(), scale.Division, text)
		switch {
		case l == back:
			require.Equal(t, number, text)
		case l > back:
			require.Equal(t, number+"+", text)
		default:
			require.Equal(t, number+"-", text)
		}
	}
}

func TestRounding(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for range 10_000 {
		scale := Scale{Inches, 1 + Length(random.Int64N(int64(Inch)))}
		l := Length(random.Int64N(int64(4*Inch))) - 2*Inch
		below, above := scale.Floor(l), scale.Ceil(l)
		require.True(t, scale.On(below) && scale.On(above))
		require.True(t, below <= l && l < below+scale.Division)
		require.True(t, above >= l && l > above-scale.Division)
		near := scale.Round(l)
		require.True(t, near == below || near == above)
		require.LessOrEqual(t, 2*(near-l).Abs(), scale.Division)
		require.Equal(t, -near, scale.Round(-l))
	}
}

func TestReading(t *testing.T) {
	assert.Equal(t, Reading{Whole: 1, Num: 5, Den: 8, Exact: "1.625"}, InchScale.Read(13*Inch/8))
	assert.Equal(t, Reading{Den: 1, Whole: 9, Decimal: "5", Remainder: 1, Exact: "9.525"}, MetricScale.Read(3*Inch/8))
	assert.Equal(t, "0.7874016", InchScale.Read(20*Millimetre).Exact) // 20/25.4, to seven places
	assert.Equal(t, "-0.25", InchScale.Read(-Inch/4).Exact)
}

func TestUnitOf(t *testing.T) {
	for text, want := range map[string]Unit{
		"230 mm": Millimetres, "23cm": Millimetres, "9 1/2": Millimetres, "9 in": Inches, `9"`: Inches, "1' 6": Inches, "2 ft": Inches,
	} {
		assert.Equal(t, want, UnitOf(text, Millimetres), text)
	}
	assert.Equal(t, Inches, UnitOf("9", Inches))
}

func TestParseScale(t *testing.T) {
	for text, want := range map[string]Scale{
		"1/64":    {Inches, Inch / 64},
		"1/16 in": {Inches, Inch / 16},
		`1/32"`:   {Inches, Inch / 32},
		"0.1 mm":  {Millimetres, Millimetre / 10},
		"0.05cm":  {Millimetres, Millimetre / 2},
		"0.001":   {Inches, Inch / 1000},
	} {
		got, err := ParseScale(text, Inches)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	got, err := ParseScale("0.5", Millimetres)
	require.NoError(t, err)
	assert.Equal(t, Scale{Millimetres, Millimetre / 2}, got)
	for _, text := range []string{"", "0", "fine", "64", "-1/64", "1/64 to 1/32"} {
		_, err := ParseScale(text, Inches)
		assert.ErrorContains(t, err, "write the smallest division you set by eye", text)
	}
}
