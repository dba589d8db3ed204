package solid_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/solid"
)

// inch is a length in sixty-fourths of an inch.
func inch(n int) measure.Length { return measure.Inch / 64 * measure.Length(n) }

// cubed is a volume in cubic inches as cubic millimetres.
func cubed(v float64) float64 { return v * 25.4 * 25.4 * 25.4 }

var block = joinery.Size{2 * measure.Inch, 2 * measure.Inch, 8 * measure.Inch}

// slot is a channel in a block, near wall and span in sixty-fourths.
func slot(down, near joinery.Side, setback, width, depth, lo, hi int) joinery.Channel {
	return joinery.Channel{Down: down, Near: near, Setback: inch(setback), Width: inch(width), Depth: inch(depth), Lo: inch(lo), Hi: inch(hi)}
}

func TestRemoved(t *testing.T) {
	through := func(down, near joinery.Side) joinery.Channel { return slot(down, near, 48, 32, 128, 240, 272) }
	for _, test := range []struct {
		name     string
		channels []joinery.Channel
		bit      int // diameter
		want     float64
	}{
		{"nothing", nil, 32, 0},
		{"a groove from end to end", []joinery.Channel{slot(joinery.Right, joinery.Front, 32, 32, 32, 0, 512)}, 32, 0.5 * 0.5 * 8},
		{"a mortise with round ends", []joinery.Channel{slot(joinery.Right, joinery.Front, 32, 32, 64, 64, 192)}, 32, 1.5*0.5*1 + math.Pi*0.25*0.25},
		{"a wide mortise with rounded corners", []joinery.Channel{slot(joinery.Top, joinery.Left, 32, 64, 64, 32, 96)}, 32, 1 - (4-math.Pi)*0.25*0.25},
		{"a groove open at one end", []joinery.Channel{slot(joinery.Back, joinery.Left, 32, 32, 64, 0, 128)}, 32, 1.75*0.5 + math.Pi*0.25*0.25/2},
		{"a bore", []joinery.Channel{through(joinery.Right, joinery.Front)}, 32, 2 * math.Pi * 0.25 * 0.25},
		// Two equal cylinders crossing at right angles share 16/3 r^3 (Archimedes,
		// The Method, in the preface).
		{"two bores crossing", []joinery.Channel{through(joinery.Right, joinery.Front), through(joinery.Front, joinery.Left)}, 32,
			4*math.Pi*0.25*0.25 - 16.0/3*0.25*0.25*0.25},
		{"grooves crossing in one face", []joinery.Channel{
			slot(joinery.Right, joinery.Front, 32, 32, 32, 0, 512), slot(joinery.Right, joinery.Bottom, 128, 32, 16, 0, 128)}, 32,
			2 + 0.25*0.5*(2-0.5)},
		{"the same twice", []joinery.Channel{slot(joinery.Left, joinery.Front, 32, 32, 32, 0, 512), slot(joinery.Left, joinery.Front, 32, 32, 32, 0, 512)}, 32, 2},
		{"a rabbet by a buried bit", []joinery.Channel{slot(joinery.Back, joinery.Left, 0, 16, 32, 0, 512)}, 48, 0.25 * 0.5 * 8},
	} {
		t.Run(test.name, func(t *testing.T) {
			var hollows []solid.Hollow
			for _, ch := range test.channels {
				hollows = append(hollows, solid.Of(ch, block, inch(test.bit)))
			}
			want := cubed(test.want)
			assert.InDelta(t, want, solid.Removed(hollows, block), 1e-5*want+1e-9)
		})
	}
}

func TestGap(t *testing.T) {
	for _, test := range []struct {
		name string
		a, b joinery.Channel
		want float64 // inches
	}{
		{"side by side", slot(joinery.Right, joinery.Front, 16, 32, 32, 64, 192), slot(joinery.Right, joinery.Front, 64, 32, 32, 64, 192), 0.25},
		{"end to end, round to round", slot(joinery.Right, joinery.Front, 16, 32, 32, 64, 192), slot(joinery.Right, joinery.Front, 16, 32, 32, 208, 300), 0.25},
		{"round ends aside of each other", slot(joinery.Right, joinery.Front, 16, 32, 32, 64, 192), slot(joinery.Right, joinery.Front, 48, 32, 32, 192, 300), math.Hypot(0.5, 0.5) - 0.5},
		{"floors facing", slot(joinery.Right, joinery.Front, 48, 32, 48, 64, 192), slot(joinery.Left, joinery.Front, 48, 32, 64, 64, 192), 0.25},
		{"meeting", slot(joinery.Right, joinery.Front, 48, 32, 64, 64, 192), slot(joinery.Front, joinery.Right, 48, 32, 64, 128, 256), 0},
		{"touching", slot(joinery.Right, joinery.Front, 48, 32, 64, 64, 192), slot(joinery.Left, joinery.Front, 48, 32, 64, 64, 192), 0},
		{"a floor touching a wall, middles apart", slot(joinery.Right, joinery.Front, 32, 32, 64, 0, 512), slot(joinery.Front, joinery.Right, 64, 32, 128, 300, 400), 0},
		{"a floor before a wall, middles apart", slot(joinery.Right, joinery.Front, 32, 32, 62, 0, 512), slot(joinery.Front, joinery.Right, 64, 32, 128, 300, 400), 1.0 / 32},
		{"into the corner past a round end", slot(joinery.Right, joinery.Front, 48, 32, 64, 64, 192), slot(joinery.Front, joinery.Right, 48, 32, 51, 190, 256), -1},
	} {
		t.Run(test.name, func(t *testing.T) {
			a, b := solid.Of(test.a, block, inch(32)), solid.Of(test.b, block, inch(32))
			got := solid.Gap(a, b, block)
			assert.InDelta(t, got.Millimetres(), solid.Gap(b, a, block).Millimetres(), 1e-5, "either way")
			if test.want < 0 {
				assert.Positive(t, got)
				return
			}
			assert.InDelta(t, test.want, got.Inches(), 1e-5)
			assert.Equal(t, test.want == 0, got == 0)
		})
	}
}

func ExampleGap() {
	leg := joinery.Size{13 * measure.Inch / 8, 13 * measure.Inch / 8, 17 * measure.Inch}
	mortise := joinery.Channel{Down: joinery.Right, Near: joinery.Front, Setback: measure.Inch / 2,
		Width: 3 * measure.Inch / 8, Depth: 5 * measure.Inch / 8, Lo: 14 * measure.Inch, Hi: 16 * measure.Inch}
	other := mortise
	other.Down, other.Near = joinery.Back, joinery.Right
	bit := 3 * measure.Inch / 8
	fmt.Println(measure.InchScale.Format(solid.Gap(solid.Of(mortise, leg, bit), solid.Of(other, leg, bit), leg)))
	mortise.Depth, other.Depth = measure.Inch, measure.Inch
	fmt.Println(measure.InchScale.Format(solid.Gap(solid.Of(mortise, leg, bit), solid.Of(other, leg, bit), leg)))
	// Output:
	// 1/8
	// 0
}
