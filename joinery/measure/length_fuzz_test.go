package measure_test

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzLength holds, for any text: it is a length from 0 to 100 m that both
// units spell so that it is read back as the very same, or a message of one
// line with a way out.
func FuzzLength(f *testing.F) {
	for _, text := range []string{
		"3", "3/8", "1 3/8", "1-3/8", "1⅜", "0.375", ".5", "3.", `3/8"`, "3/8 in", "12mm", "1.2 cm",
		`1' 6 1/2"`, "2 ft 3", "1'", "6''", "1′ 6″", "0", "1/0", "9/8", "3-5/8", "0,375", "-1", "−1", "1/3",
		"10/3 in", "0.0000001 mm", "1/1024", "99999999999999999999", "100 m", "100000 mm", "1e3", "0x10", "½ ¼",
		"1//2", "1 / 2", "1\u00a03/8", "\x00", "\xff", "1' 2' 3", "1' 20 mm", "½", "3 3 3/8", "1 1/2 1/2",
	} {
		f.Add(text, false)
		f.Add(text, true)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		unit := measure.Inches
		if metric {
			unit = measure.Millimetres
		}
		l, err := measure.ParseLength(text, unit)
		if err != nil {
			var bad *measure.LengthError
			require.ErrorAs(t, err, &bad)
			checkLengthError(t, bad, unit)
			return
		}
		require.GreaterOrEqual(t, l, measure.Length(0))
		require.LessOrEqual(t, l, measure.MaxLength)
		for _, s := range []measure.Scale{measure.InchScale, measure.MetricScale} {
			again, err := measure.ParseSpelled(s.Spell(l), unit)
			require.NoError(t, err)
			assert.Equal(t, l, again, s.Spell(l))
		}
	})
}

func checkLengthError(t *testing.T, bad *measure.LengthError, unit measure.Unit) {
	assert.NotEmpty(t, bad.Problem)
	assert.NotEmpty(t, bad.Remedy)
	if utf8.ValidString(bad.Text) {
		assert.NotContains(t, bad.Error(), "\n")
	}
	// The two neighbours offered are lengths, in their order.
	if bad.Problem != "falls between the marks of any rule" {
		return
	}
	below, above, ok := strings.Cut(strings.TrimPrefix(bad.Remedy, "write "), " or ")
	require.True(t, ok, bad.Remedy)
	lo, err := measure.ParseLength(below, unit)
	hi, err2 := measure.ParseLength(above, unit)
	require.NoError(t, errors.Join(err, err2), bad.Remedy)
	assert.Less(t, lo, hi)
}

// Zeros in front change nothing: a maker who writes 08/16 means a half.
func TestZerosInFrontOfALength(t *testing.T) {
	for padded, plain := range map[string]string{
		"08/16": "1/2", "010/16": "5/8", "010 01/02": "10 1/2", "010": "10", "00.5": "1/2", "1/016": "1/16",
	} {
		l, err := measure.ParseLength(padded, measure.Inches)
		require.NoError(t, err)
		want, err := measure.ParseLength(plain, measure.Inches)
		require.NoError(t, err)
		assert.Equal(t, want, l, padded)
	}
}
