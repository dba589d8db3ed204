package workpiece

import (
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Legs is a pair of mirrored legs, two of each, with a mortise 1 deep and
// a groove 1/4 deep that share a bit and a fence distance, and a dado of their
// left legs alone.
func Legs(t *testing.T) *joinery.Plan {
	t.Helper()
	scale := measure.InchScale
	left := joinery.Piece{
		Name: "left leg", Count: 2, Grain: joinery.TopBottom,
		Size: joinery.Size{13 * measure.Inch / 8, 13 * measure.Inch / 8, 17 * measure.Inch},
		Cuts: []joinery.Cut{
			{Kind: &joinery.Mortise, Name: "seat rail", In: joinery.Right, Width: 3 * measure.Inch / 8, Depth: measure.Inch,
				Start: joinery.Setback{Distance: measure.Inch / 2, From: joinery.Front},
				Span:  joinery.Span{From: measure.Inch / 2, To: 3 * measure.Inch, Side: joinery.Top}},
		},
	}
	require.Empty(t, left.LayAll(scale))
	right := left.Mirrored("right leg", joinery.LeftRight, scale)
	left.Cuts = append(left.Cuts,
		joinery.Cut{Kind: &joinery.Groove, Name: "panel", In: joinery.Back, Width: 3 * measure.Inch / 8, Depth: measure.Inch / 8,
			Start: joinery.Setback{Distance: measure.Inch / 2, From: joinery.Left}},
		joinery.Cut{Kind: &joinery.Dado, Name: "shelf", In: joinery.Right, Width: 3 * measure.Inch / 4, Depth: measure.Inch / 4,
			Start: joinery.Setback{Distance: 4 * measure.Inch, From: joinery.Bottom}})
	require.Empty(t, left.LayAll(scale))
	return &joinery.Plan{
		Title: "Legs", Pieces: []joinery.Piece{left, right},
		Shop: joinery.Shop{Scale: scale,
			Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2},
			Bits: []joinery.Bit{
				{Name: "three eighths", Diameter: 3 * measure.Inch / 8, Plunges: joinery.Yes},
				{Name: "three quarters", Diameter: 3 * measure.Inch / 4, Plunges: joinery.Yes},
			}},
	}
}
