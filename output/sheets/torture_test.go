package sheets

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// tortureDeck is a plan that is hard to put on paper: names of 60 characters
// with and without spaces, 40 cuts in one setup, a rail 90 in long, sixty-fourths
// and lengths off the scale, letters from many alphabets, long notes, a bit
// far wider than its cut, hundreds of pieces.
func tortureDeck(t testing.TB) *deck.Deck {
	t.Helper()
	in := func(text string) measure.Length { return in(t, text) }
	shop := joinery.Shop{
		Name: "shop", Scale: measure.InchScale,
		Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2},
		Bits: []joinery.Bit{
			{Name: "Schaftfräser mit Spiralschneiden, lang, für Łódź, Ω, 3/8 Zoll", Kind: joinery.UpCut, Diameter: in("3/8"), Measured: in("0.3719"), Plunges: joinery.Yes},
			{Name: strings.Repeat("w", 60), Diameter: in("1/8"), Plunges: joinery.Yes},
			{Name: "wide", Diameter: in("2"), Plunges: joinery.Yes},
		},
	}
	mortise := func(name string, width, setback, from, to, depth string) joinery.Cut {
		return joinery.Cut{Kind: &joinery.Mortise, Name: name, In: joinery.Right, Width: in(width), Depth: in(depth), Square: true,
			Start: joinery.Setback{Distance: in(setback), From: joinery.Front},
			Span:  joinery.Span{From: in(from), To: in(to), Side: joinery.Top}}
	}
	slats := joinery.Piece{
		Name: "Längsholm, außen, für die Rückenlehne über dem Fußteil, ł Ω ő", Count: 400, Grain: joinery.TopBottom,
		Size: joinery.Size{in("1 63/64"), in("2 31/64"), in("90")},
	}
	for i := range 40 {
		from := in("1 1/64") + measure.Length(i)*in("2 13/64")
		cut := mortise(fmt.Sprintf("slat number %d of the forty in the long rail of the bench", i+1), "3/8", "33/64", "0", "1", "61/64")
		cut.Span.From, cut.Span.To = from, from+in("1 1/4")
		slats.Cuts = append(slats.Cuts, cut)
	}
	slats.Cuts[0].Note = strings.Repeat("the tenons of this one are cut from the offcuts of the wide board; ", 30)
	rail := joinery.Piece{
		Name: strings.Repeat("W", 60), Count: 13, Grain: joinery.LeftRight,
		Size: joinery.Size{in("90"), in("23/64"), in("7 47/64")},
		Cuts: []joinery.Cut{
			{Kind: &joinery.Rabbet, Name: strings.Repeat("r", 60), In: joinery.Back, Along: joinery.Top, Width: in("9/64"), Depth: in("7/64"),
				Span: joinery.Span{From: in("1 3/64"), To: in("88 61/64"), Side: joinery.Left}},
			{Kind: &joinery.Groove, Name: "narrow", In: joinery.Bottom, Width: in("1/8"), Depth: in("1/4"),
				Start: joinery.Setback{Distance: in("0.1171"), From: joinery.Front}},
			{Kind: &joinery.Dado, Name: "far from the fence", In: joinery.Front, Width: in("1/8"), Depth: in("3/64"), Note: "世界 ∴ ṣ \t tab",
				Start: joinery.Setback{Distance: in("31 29/64"), From: joinery.Left}},
			{Kind: &joinery.Tenon, Name: "end", At: joinery.Right, Length: in("1 59/64"),
				Cheeks: []joinery.Cheek{{Side: joinery.Front, Depth: in("5/64")}, {Side: joinery.Top, Depth: in("1 1/2")}}},
		},
	}
	require.Empty(t, slats.LayAll(shop.Scale))
	require.Empty(t, rail.LayAll(shop.Scale))
	plan := &joinery.Plan{
		Name: "torture", Title: "Ein Titel mit sechzig Zeichen, länger als jeder vernünftige!", Shop: shop,
		Pieces: []joinery.Piece{slats, rail, rail.Mirrored("its mirror image", joinery.LeftRight, shop.Scale)},
	}
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}
