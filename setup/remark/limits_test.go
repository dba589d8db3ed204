package remark

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
)

// A metric shop is told metric figures, and not other ones: each pair is of one
// length, to a fifth of it.
func TestEveryLimitIsInBothUnits(t *testing.T) {
	for l := range limitCount {
		row := limits[l]
		assert.NotEmpty(t, row.what)
		assert.NotEmpty(t, row.basis, row.what)
		in, mm := l.of(joinery.InchScale), l.of(joinery.MetricScale)
		assert.Equal(t, [2]joinery.Length{row.in, row.mm}, [2]joinery.Length{in, mm}, row.what)
		assert.InEpsilon(t, in.Millimetres(), mm.Millimetres(), 0.2, row.what)
		assert.Zero(t, mm%(joinery.Millimetre/10), "%s: a length that a metric rule shows", row.what)
	}
}
