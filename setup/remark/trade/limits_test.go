package trade

import (
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
)

// A metric shop is told metric figures, and not other ones: each pair is of one
// length, to a fifth of it.
func TestEveryLimitIsInBothUnits(t *testing.T) {
	for l, row := range Limits() {
		assert.NotEmpty(t, row.What)
		assert.NotEmpty(t, row.Basis, row.What)
		in, mm := Limit(l).Of(measure.InchScale), Limit(l).Of(measure.MetricScale)
		assert.Equal(t, [2]measure.Length{row.In, row.MM}, [2]measure.Length{in, mm}, row.What)
		assert.InEpsilon(t, in.Millimetres(), mm.Millimetres(), 0.2, row.What)
		assert.Zero(t, mm%(measure.Millimetre/10), "%s: a length that a metric rule shows", row.What)
	}
}
