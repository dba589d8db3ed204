package measure_test

import (
	"errors"
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/require"
)

// FuzzScale holds, for any text: it is a scale with divisions that it reads
// itself, or a message of a line with a way out.
func FuzzScale(f *testing.F) {
	for _, text := range []string{"1/64", "1/32 in", "0.1 mm", "0.5", "1/3", "0", "-1", "", "1", "10 mm", "1'", "1/64\x00", "999999999999999999999999999999999999999999999999"} {
		f.Add(text, false)
		f.Add(text, true)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		unit := measure.Inches
		if metric {
			unit = measure.Millimetres
		}
		scale, err := measure.ParseScale(text, unit)
		if err != nil {
			var bad *measure.LengthError
			require.True(t, errors.As(err, &bad))
			require.NotEmpty(t, bad.Remedy)
			require.Less(t, len(bad.Error()), 500)
			return
		}
		require.Positive(t, scale.Division)
		require.True(t, scale.On(scale.Division))
	})
}
