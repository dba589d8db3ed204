package joinery

import (
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pi x D x n is in any machining handbook: 1 in at 24,000 rpm is 31.9 m/s, and
// 1/2 in half of it.
func TestRimSpeed(t *testing.T) {
	assert.InDelta(t, 31.9, Bit{Diameter: measure.Inch}.RimSpeed(24000), 0.05)
	assert.InDelta(t, 15.96, Bit{Diameter: measure.Inch / 2}.RimSpeed(24000), 0.005)
	assert.InDelta(t, 3.14159, Bit{Diameter: 10 * measure.Millimetre}.RimSpeed(6000), 0.00001)
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
		{"small", Bit{Diameter: measure.Inch / 2}, 0, TopSpeed{RPM: 24000, Rule: "by its diameter"}},
		{"1 in, the edge", Bit{Diameter: measure.Inch}, 0, TopSpeed{RPM: 24000, Rule: "by its diameter", Cautious: 18000}},
		{"a hair over 1 in", Bit{Diameter: measure.Inch + 1}, 0, TopSpeed{RPM: 20000, Rule: "by its diameter", Cautious: 18000}},
		{"50 mm is under 2 in", Bit{Diameter: 50 * measure.Millimetre}, 0, TopSpeed{RPM: 16000, Rule: "by its diameter"}},
		{"3 1/2 in, the last", Bit{Diameter: 7 * measure.Inch / 2}, 0, TopSpeed{RPM: 10000, Rule: "by its diameter"}},
		{"wider than the table", Bit{Diameter: 4 * measure.Inch}, 0, TopSpeed{RPM: 0, Rule: "wider than the table of speeds: ask its maker"}},
		{"wider, but marked", Bit{Diameter: 4 * measure.Inch, Speed: 8000}, 22000, TopSpeed{RPM: 8000, Rule: "the figure on the bit"}},
		{"the bit's own is lower", Bit{Diameter: measure.Inch, Speed: 18000}, 22000, TopSpeed{RPM: 18000, Rule: "the figure on the bit"}},
		{"the bit's own is higher", Bit{Diameter: measure.Inch, Speed: 30000}, 0, TopSpeed{RPM: 24000, Rule: "by its diameter", Cautious: 18000}},
		{"the router's own is lowest", Bit{Diameter: measure.Inch / 4, Speed: 30000}, 22000, TopSpeed{RPM: 22000, Rule: "the router's own"}},
		{"the measured diameter counts", Bit{Diameter: measure.Inch, Measured: measure.Inch + 1}, 0, TopSpeed{RPM: 20000, Rule: "by its diameter", Cautious: 18000}},
	} {
		assert.Equal(t, c.want, c.bit.TopSpeed(c.router), c.name)
	}
}

func TestTheMoreCautiousChartIsSaidToo(t *testing.T) {
	assert.Equal(t, "up to 20000 rpm, by its diameter; more cautious: 18000", Bit{Diameter: 5 * measure.Inch / 4}.TopSpeed(0).String())
	assert.Equal(t, "up to 18000 rpm, by its diameter", Bit{Diameter: 3 * measure.Inch / 2}.TopSpeed(0).String())
	assert.Equal(t, "up to 24000 rpm, by its diameter", Bit{Diameter: measure.Inch - 1}.TopSpeed(0).String())
	assert.Equal(t, "up to 16000 rpm, the figure on the bit", Bit{Diameter: measure.Inch, Speed: 16000}.TopSpeed(0).String())
	assert.Equal(t, "wider than the table of speeds: ask its maker", Bit{Diameter: 4 * measure.Inch}.TopSpeed(0).String())
}

func TestReadSpeedsRefuses(t *testing.T) {
	for _, table := range []string{"1\tfast", "1\t-5", "x\t10000", "2\t16000\n1\t24000"} {
		_, err := readSpeeds(table)
		assert.Error(t, err, table)
	}
}
