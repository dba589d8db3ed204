package measure

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSpell(t *testing.T) {
	decimalInch := Scale{Inches, Inch / 1000}
	for _, c := range []struct {
		scale Scale
		l     Length
		want  string
	}{
		{InchScale, 13 * Inch / 8, "1 5/8 in"},
		{InchScale, 33 * Inch / 64, "33/64 in"},
		{InchScale, 11 * Inch / 128, "11/128 in"},
		{InchScale, 0, "0 in"},
		{InchScale, -Inch / 4, "-1/4 in"},
		{InchScale, 496 * Inch / 1000, "0.496 in"},
		{InchScale, 6 * Millimetre, "6 mm"},
		{InchScale, Inch/4 + 1, "6.35000015625 mm"},
		{decimalInch, Inch / 2, "0.5 in"},
		{decimalInch, Inch / 1024, "1/1024 in"},
		{MetricScale, 105 * Millimetre / 10, "10.5 mm"},
		{MetricScale, 3 * Inch / 8, "9.525 mm"},
		{MetricScale, -2 * Millimetre, "-2 mm"},
	} {
		assert.Equal(t, c.want, c.scale.Spell(c.l))
	}
}

// What is spelled is read back, whatever the length and the unit it is read in.
func TestSpelledIsReadBack(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	scales := []Scale{InchScale, MetricScale, {Inches, Inch / 1000}, {Inches, Inch / 32}}
	for range 20_000 {
		l := Length(random.Int64N(int64(2*MaxLength))) - MaxLength
		// Most lengths in a shop are whole divisions of something.
		whole := []Length{1, Inch / 64, Inch / 1024, Inch / 10_000, Millimetre / 10}
		l -= l % whole[random.IntN(len(whole))]
		scale := scales[random.IntN(len(scales))]
		text := scale.Spell(l)
		for _, unit := range []Unit{Inches, Millimetres} {
			back, err := ParseSpelled(text, unit)
			require.NoError(t, err, text)
			require.Equal(t, l, back, text)
		}
	}
}

func TestParseSpelledRefuses(t *testing.T) {
	for _, text := range []string{"", "-", "--1", "- -1", "1/0", "one"} {
		_, err := ParseSpelled(text, Inches)
		assert.Error(t, err, text)
	}
}

// Between the divisions of a rule in fractions a 64th stays a fraction; what is none,
// and what lies off a decimal rule, is a decimal.
func TestFine(t *testing.T) {
	thirtyseconds := Scale{Inches, Inch / 32}
	for _, c := range []struct {
		scale Scale
		in    Length
		want  string
	}{
		{thirtyseconds, Inch * 17 / 64, "17/64"},
		{thirtyseconds, -(Inch + Inch/64), "-1 1/64"},
		{thirtyseconds, Inch / 4, "1/4"},
		{thirtyseconds, Inch * 265 / 1000, "0.265"},
		{InchScale, Inch / 128, "0.008"},
		{Scale{Inches, Inch / 100}, Inch * 17 / 64, "0.266"},
		{Scale{Millimetres, Millimetre / 2}, Inch * 17 / 64, "6.75"},
	} {
		assert.Equal(t, c.want, c.scale.Fine(c.in), "%v", c.in)
	}
	assert.Equal(t, "17/64", thirtyseconds.Read(Inch*17/64).Exact)
	assert.Equal(t, "0.265", thirtyseconds.Read(Inch*265/1000).Exact)
	assert.Equal(t, "0.265625", Scale{Inches, Inch / 100}.Read(Inch*17/64).Exact)
}
