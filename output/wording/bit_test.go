package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/wording"
)

// A collet is named as it is sold, whatever the deck is in: 12 mm of a deck in inches
// would be 15/32 and a hair, and 1/2 in does not hold it.
func TestColletIsNamedAsItIsSold(t *testing.T) {
	const in, mm = measure.Inch, measure.Millimetre
	for shank, want := range map[measure.Length]string{
		0: "", 8 * mm: "collet 8 mm", 12 * mm: "collet 12 mm",
		in / 2: "collet 1/2 in", in / 4: "collet 1/4 in",
	} {
		for _, scale := range []measure.Scale{measure.InchScale, measure.MetricScale} {
			assert.Equal(t, want, wording.Collet(&joinery.Bit{Shank: shank}, scale))
		}
	}
}

func TestKindIsSaidWhereTheNameDoesNotTell(t *testing.T) {
	for _, c := range []struct {
		name string
		kind joinery.BitKind
		want string
	}{
		{"six", joinery.UpCut, "up-cut"}, {"6 mm up-cut", joinery.UpCut, ""}, {"Upcut 6", joinery.UpCut, ""},
		{"twelve", joinery.Straight, "straight"}, {"half round-over", joinery.RoundOver, ""},
		{"small round", joinery.RoundOver, "round-over"}, {"panel cutter", joinery.OwnOutline, ""},
	} {
		assert.Equal(t, c.want, wording.KindOf(&joinery.Bit{Name: c.name, Kind: c.kind}), c.name)
	}
}

// The width of a bit that shapes edges stands on no label.
func TestWidthFrom(t *testing.T) {
	const in = measure.Inch
	for want, bit := range map[string]joinery.Bit{
		"as labelled":                     {Diameter: in},
		"measured":                        {Diameter: in, Measured: in - 1},
		"wide: radius 1/4, pilot 1/2":     {Diameter: in, Pilot: in / 2, Outline: &joinery.Outline{Shape: joinery.Round, Radius: in / 4}},
		"wide: by its outline, pilot 1/2": {Diameter: in, Pilot: in / 2, Outline: &joinery.Outline{}},
	} {
		assert.Equal(t, want, wording.WidthFrom(&bit, measure.InchScale.Format))
	}
}
