package joinery_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

const square = 25.4 * 25.4 // mm2 of a square inch

func shapes() map[string]*joinery.Outline {
	half := measure.Inch / 2
	return map[string]*joinery.Outline{
		"round":  {Shape: joinery.Round, Radius: half},
		"hollow": {Shape: joinery.Hollowed, Radius: half},
		"slope":  {Shape: joinery.Sloped, Radius: half},
		"panel":  {Shape: joinery.Drawn, Corners: []joinery.Corner{{Below: 0, Reach: 3 * measure.Inch / 8}, {Below: measure.Inch / 4, Reach: measure.Inch}}},
		"bead":   {Shape: joinery.Drawn, Corners: []joinery.Corner{{}, {Below: measure.Inch / 8, Reach: measure.Inch / 4}, {Below: 3 * measure.Inch / 8, Reach: measure.Inch / 8}}},
	}
}

// Areas of the whole outline: a square less a quarter circle, a quarter circle, half
// a square (any table of plane figures), and what was worked out by hand.
func TestAreasByClosedFormulas(t *testing.T) {
	const r = 0.5
	for name, want := range map[string]float64{
		"round": r * r * (1 - math.Pi/4), "hollow": math.Pi * r * r / 4, "slope": r * r / 2,
		"panel": (0.375 + 1) / 2 * 0.25, "bead": 0.125*0.25/2 + (0.25+0.125)/2*0.25,
	} {
		o := shapes()[name]
		assert.InDelta(t, want*square, joinery.Section{Outline: o}.Area(o.Deep()), 1e-9, name)
		// Raised over its height it leaves a step as wide as its reach at the end.
		more := joinery.Section{Outline: o}.Area(o.Deep()+measure.Inch/4) - joinery.Section{Outline: o}.Area(o.Deep())
		end := map[bool]float64{true: 0.125, false: 0.5}[name == "bead"]
		if name == "panel" {
			end = 1
		}
		assert.InDelta(t, end*0.25*square, more, 1e-9, name)
	}
}

// A round-over of 1/2 in raised 13/32 takes 0.0254 sq in of its 0.0537, and the
// second pass 0.0283; at 3/8 that would be 0.034, and 7/16 would take 0.033.
func TestARoundOverInTwoPasses(t *testing.T) {
	s := joinery.Section{Outline: shapes()["round"]}
	at := func(n measure.Length) float64 { return s.Area(n*measure.Inch/32) / square }
	assert.InDelta(t, 0.0254, at(13), 0.00005)
	assert.InDelta(t, 0.0283, at(16)-at(13), 0.00005)
	assert.InDelta(t, 0.034, at(16)-at(12), 0.0005)
	assert.InDelta(t, 0.033, at(14), 0.0005)
	const h, r = 13.0 / 32, 0.5
	assert.InDelta(t, r*h-(h*math.Sqrt(r*r-h*h)+r*r*math.Asin(h/r))/2, at(13), 1e-12)
}

// A geometry library measures the polygon of what the bit takes, cut by the fence
// face and the table: every shape, at heights and fence distances of all sorts.
func TestAreasAgainstAGeometryLibrary(t *testing.T) {
	for name, o := range shapes() {
		for raise := measure.Length(1); raise <= 20; raise += 3 {
			for forward := measure.Length(0); forward <= 12; forward += 4 {
				h, s := raise*measure.Inch/32, forward*measure.Inch/32
				section := joinery.Section{Outline: o, Forward: s}
				want := polygon(t, o, h.Millimetres(), s.Millimetres())
				assert.InDelta(t, want, section.Area(h), 0.02, "%s raised %d/32, the fence %d/32 forward", name, raise, forward)
			}
		}
	}
}

func polygon(t *testing.T, o *joinery.Outline, h, s float64) float64 {
	t.Helper()
	const strips = 500
	text := fmt.Sprintf("POLYGON((%.9f %.9f", -s, h)
	for i := range strips + 1 {
		below := h * float64(i) / strips
		text += fmt.Sprintf(",%.9f %.9f", o.ReachAt(below)-s, h-below)
	}
	text += fmt.Sprintf(",%.9f 0,%.9f %.9f))", -s, -s, h)
	// The outline may touch the fence line along its whole length, which is no fault.
	taken, err := geom.UnmarshalWKT(text, geom.NoValidate{})
	require.NoError(t, err)
	wood, err := geom.UnmarshalWKT("POLYGON((0 0,1000 0,1000 1000,0 1000,0 0))")
	require.NoError(t, err)
	both, err := geom.Intersection(taken, wood)
	require.NoError(t, err)
	return both.Area()
}

func TestReaches(t *testing.T) {
	all := shapes()
	for name, at := range map[string][3]float64{ // at 0, at half the height, at the end: inches
		"round": {0, 0.5 - math.Sqrt(0.25-0.0625), 0.5}, "hollow": {0, math.Sqrt(0.25 - 0.0625), 0.5},
		"slope": {0, 0.25, 0.5}, "panel": {0.375, 0.6875, 1},
	} {
		deep := all[name].Deep().Millimetres()
		for i, want := range at {
			assert.InDelta(t, want*25.4, all[name].ReachAt(deep*float64(i)/2), 1e-9, "%s at %d halves", name, i)
		}
		assert.False(t, all[name].Undercut(), name)
	}
	assert.True(t, all["bead"].Undercut())
	assert.Equal(t, measure.Inch/4, all["bead"].Wide())
	assert.Equal(t, 3*measure.Inch/8, all["panel"].Flat())
	assert.InDelta(t, 0.25*25.4, joinery.Section{Outline: all["bead"]}.Widest(all["bead"].Deep()), 1e-9)
}

// What stands higher takes no less at any place, so that passes by height nest; but
// for an outline with a hollow.
func TestPassesByHeightNest(t *testing.T) {
	for name, o := range shapes() {
		nests := true
		for raise := measure.Length(1); raise < 20; raise++ {
			low, high := joinery.Section{Outline: o}, raise*measure.Inch/32
			for z := 0.0; z < high.Millimetres(); z += 0.1 {
				nests = nests && low.ReachAt(high, z) <= low.ReachAt(high+measure.Inch/32, z)+1e-9
			}
		}
		assert.Equal(t, !o.Undercut(), nests, name)
	}
}
