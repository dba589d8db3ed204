package timber_test

import (
	"math"
	"testing"

	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"

	"github.com/stretchr/testify/require"
)

// FuzzTemperature holds, for any text: it is a temperature with a moisture
// content or without, or a fault of a few words with a way out.
func FuzzTemperature(f *testing.F) {
	for _, text := range []string{"70F", "21C", "21 °C", "-40 degrees fahrenheit", "−5c", "70", "", "F", "1e3F", "99999F", "70.1234567F", "7\xff0F", "٣C"} {
		f.Add(text, 50.0)
	}
	f.Add("21C", math.NaN())
	f.Add("21C", 1e308)
	f.Fuzz(func(t *testing.T, text string, humidity float64) {
		air, err := timber.ParseTemperature(text)
		if err == nil {
			var percent float64
			if percent, err = timber.Moisture(air, humidity); err == nil {
				require.True(t, percent >= 0 && percent < 40, "%v %%", percent)
				return
			}
		}
		var fault plantext.Fault
		require.ErrorAs(t, err, &fault)
		require.NotEmpty(t, fault.Remedy)
		require.Less(t, len(fault.Error()), 500)
	})
}
