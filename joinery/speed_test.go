package joinery

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pi x D x n is in any machining handbook: 1 in at 24,000 rpm is 31.9 m/s, and
// 1/2 in half of it.
func TestRimSpeed(t *testing.T) {
	assert.InDelta(t, 31.9, Bit{Diameter: Inch}.RimSpeed(24000), 0.05)
	assert.InDelta(t, 15.96, Bit{Diameter: Inch / 2}.RimSpeed(24000), 0.005)
	assert.InDelta(t, 3.14159, Bit{Diameter: 10 * Millimetre}.RimSpeed(6000), 0.00001)
}

// The table is common practice, no source; what it promises is that no rim
// passes 50 m/s.
func TestSpeedTableKeepsTheRimUnderFiftyMetresASecond(t *testing.T) {
	require.NotEmpty(t, allSpeeds())
	for _, row := range allSpeeds() {
		assert.Less(t, Bit{Diameter: row.diameter}.RimSpeed(row.rpm), 50.0, "%s", row.diameter)
	}
}

func TestTopSpeed(t *testing.T) {
	for _, c := range []struct {
		name   string
		bit    Bit
		router int
		want   TopSpeed
	}{
		{"small", Bit{Diameter: Inch / 2}, 0, TopSpeed{24000, "by its diameter"}},
		{"1 in, the edge", Bit{Diameter: Inch}, 0, TopSpeed{24000, "by its diameter"}},
		{"a hair over 1 in", Bit{Diameter: Inch + 1}, 0, TopSpeed{20000, "by its diameter"}},
		{"50 mm is under 2 in", Bit{Diameter: 50 * Millimetre}, 0, TopSpeed{16000, "by its diameter"}},
		{"3 1/2 in, the last", Bit{Diameter: 7 * Inch / 2}, 0, TopSpeed{10000, "by its diameter"}},
		{"wider than the table", Bit{Diameter: 4 * Inch}, 0, TopSpeed{0, "wider than the table of speeds: ask its maker"}},
		{"wider, but marked", Bit{Diameter: 4 * Inch, Speed: 8000}, 22000, TopSpeed{8000, "the figure on the bit"}},
		{"the bit's own is lower", Bit{Diameter: Inch, Speed: 18000}, 22000, TopSpeed{18000, "the figure on the bit"}},
		{"the bit's own is higher", Bit{Diameter: Inch, Speed: 30000}, 0, TopSpeed{24000, "by its diameter"}},
		{"the router's own is lowest", Bit{Diameter: Inch / 4, Speed: 30000}, 22000, TopSpeed{22000, "the router's own"}},
		{"the measured diameter counts", Bit{Diameter: Inch, Measured: Inch + 1}, 0, TopSpeed{20000, "by its diameter"}},
	} {
		assert.Equal(t, c.want, c.bit.TopSpeed(c.router), c.name)
	}
}

func TestReadSpeedsRefuses(t *testing.T) {
	for _, table := range []string{"1\tfast", "1\t-5", "x\t10000", "2\t16000\n1\t24000"} {
		_, err := readSpeeds(table)
		assert.Error(t, err, table)
	}
}
