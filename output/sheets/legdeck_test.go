package sheets

import (
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// in reads a length in inches.
func in(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.ParseLength(text, measure.Inches)
	require.NoError(t, err)
	return l
}

// legDeck is a leg with its mirror image and a rail between them: a mortise
// stopped at both ends, a dado stopped at one, a groove from end to end,
// tenons with the bit buried in the fence, a groove wider than its bit.
func legDeck(t testing.TB) *deck.Deck {
	t.Helper()
	in := func(text string) measure.Length { return in(t, text) }
	shop := joinery.Shop{
		Name: "built-in shop", Scale: measure.InchScale,
		Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2},
		Bits: []joinery.Bit{
			{Name: "three eighths up-cut", Kind: joinery.UpCut, Diameter: in("3/8"), Cutting: in("1 1/4"), Shank: in("1/2"), Plunges: joinery.Yes},
			{Name: "half inch straight", Diameter: in("1/2"), Measured: in("0.496"), Cutting: in("1"), Shank: in("1/2"), Plunges: joinery.Yes},
			{Name: "three quarters straight", Diameter: in("3/4"), Cutting: in("1"), Shank: in("1/2"), Plunges: joinery.Yes},
		},
	}
	ash := timber.Wood{Name: "white ash", Hardness: 1320}
	leg := joinery.Piece{
		Name: "front left leg", Count: 2, Wood: ash, Grain: joinery.TopBottom,
		Size: joinery.Size{in("1 5/8"), in("1 5/8"), in("17")},
		Cuts: []joinery.Cut{
			{Kind: &joinery.Mortise, Name: "seat rail", In: joinery.Right, Width: in("3/8"), Depth: in("1"),
				Start: joinery.Setback{Distance: in("1/2"), From: joinery.Front},
				Span:  joinery.Span{From: in("1/2"), To: in("3"), Side: joinery.Top}},
			{Kind: &joinery.Dado, Name: "shelf", In: joinery.Right, Width: in("3/4"), Depth: in("1/4"), Square: true,
				Start: joinery.Setback{Distance: in("4"), From: joinery.Bottom},
				Span:  joinery.Span{From: 0, To: in("1 1/4"), Side: joinery.Back}},
		},
	}
	rail := joinery.Piece{
		Name: "seat rail", Count: 14, Wood: ash, Grain: joinery.LeftRight,
		Size: joinery.Size{in("40"), in("3/4"), in("2 1/2")},
		Cuts: []joinery.Cut{
			{Kind: &joinery.Groove, Name: "panel", In: joinery.Bottom, Width: in("1/2"), Depth: in("3/8"),
				Start: joinery.Setback{Distance: in("1/8"), From: joinery.Front}},
			{Kind: &joinery.Tenon, Name: "left tenon", At: joinery.Left, Length: in("1"),
				Cheeks: []joinery.Cheek{{Side: joinery.Front, Depth: in("3/16")}, {Side: joinery.Back, Depth: in("3/16")}}},
			{Kind: &joinery.Rabbet, Name: "seat", In: joinery.Back, Along: joinery.Top, Width: in("1/4"), Depth: in("3/8")},
		},
	}
	require.Empty(t, leg.LayAll(shop.Scale))
	require.Empty(t, rail.LayAll(shop.Scale))
	plan := &joinery.Plan{
		Name: "bench", Title: "Boot bench", Shop: shop,
		Pieces: []joinery.Piece{leg, leg.Mirrored("front right leg", joinery.LeftRight, shop.Scale), rail},
	}
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}
