package book

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
)

const (
	in = measure.Inch
	mm = measure.Millimetre
)

var spring = time.Date(2026, 3, 31, 12, 0, 0, 0, time.UTC)

// bench is a plan with every kind of cut but one kind of trouble: mirrored
// legs with a mortise, a rail with tenons, a dado, a rabbet wider than its bit.
func bench(t testing.TB) *joinery.Plan {
	t.Helper()
	ash, _, ok := timber.FindWood("white ash")
	require.True(t, ok)
	scale := measure.InchScale
	leg := joinery.Piece{
		Name: "front left leg", Count: 1, Grain: joinery.TopBottom, Wood: ash,
		Size: joinery.Size{13 * in / 8, 13 * in / 8, 17 * in},
		Cuts: []joinery.Cut{
			{Kind: &joinery.Mortise, Name: "seat rail", In: joinery.Right, Width: 3 * in / 8, Depth: in, Square: true, Note: "haunch later",
				Start: joinery.Setback{Distance: in / 2, From: joinery.Front},
				Span:  joinery.Span{From: in / 2, To: 3 * in, Side: joinery.Top}},
			{Kind: &joinery.Dado, Name: "shelf", In: joinery.Right, Width: 3 * in / 4, Depth: in / 4,
				Start: joinery.Setback{Distance: 4 * in, From: joinery.Bottom},
				Span:  joinery.Span{From: 0, To: 5 * in / 4, Side: joinery.Back}},
		},
	}
	rail := joinery.Piece{
		Name: "seat rail", Count: 2, Grain: joinery.LeftRight, Wood: ash,
		Size: joinery.Size{30 * in, 7 * in / 8, 3 * in},
		Cuts: []joinery.Cut{
			{Kind: &joinery.Tenon, Name: "left tenon", At: joinery.Left, Length: 15 * in / 16,
				Cheeks: []joinery.Cheek{{Side: joinery.Front, Depth: in / 4}, {Side: joinery.Back, Depth: in / 4}}},
			{Kind: &joinery.Rabbet, Name: "seat boards", In: joinery.Top, Along: joinery.Back, Width: 3 * in / 8, Depth: in / 2},
			{Kind: &joinery.Groove, Name: "wide groove", In: joinery.Bottom, Width: in / 2, Depth: in / 4,
				Start: joinery.Setback{Distance: in / 8, From: joinery.Front}},
		},
	}
	require.Empty(t, leg.LayAll(scale))
	require.Empty(t, rail.LayAll(scale))
	return &joinery.Plan{
		Name: "bench", Title: "Boot bench", Unit: measure.Inches,
		Pieces: []joinery.Piece{leg, leg.Mirrored("front right leg", joinery.LeftRight, scale), rail},
		Shop: joinery.Shop{
			Scale: scale, Fence: joinery.FenceReach{Infeed: 14 * in, Outfeed: 14 * in},
			Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2},
			Bits: []joinery.Bit{
				{Name: "three eighths up-cut", Kind: joinery.UpCut, Diameter: 3 * in / 8, Cutting: 5 * in / 4, Shank: in / 2, Plunges: joinery.Yes},
				{Name: "three quarters straight", Diameter: 3 * in / 4, Measured: 748 * in / 1000, Cutting: in, Shank: in / 2, Plunges: joinery.Yes},
				{Name: "three quarters full", Diameter: 3 * in / 4, Cutting: in, Shank: in / 2, Plunges: joinery.Yes},
			},
		},
	}
}

func deckOf(t testing.TB, plan *joinery.Plan) *deck.Deck {
	t.Helper()
	d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
	require.NoError(t, err)
	return d
}

// keepAs keeps a setup of the bench.
func keepAs(t testing.TB, d *deck.Deck, number int, name string) *Entry {
	t.Helper()
	e, err := Keep(d, number, Keeping{Name: name, From: "bench.yaml", On: spring})
	require.NoError(t, err)
	return e
}

// bookOf is a book of all setups of the bench, "setup 1", "setup 2" and so on.
func bookOf(t testing.TB) (*Book, *deck.Deck) {
	t.Helper()
	d := deckOf(t, bench(t))
	b := read(t, "")
	for i := range d.Setups {
		next, err := b.Put(keepAs(t, d, i+1, fmt.Sprintf("setup %d", i+1)), false)
		require.NoError(t, err)
		b = next
	}
	return b, d
}

func read(t testing.TB, text string) *Book {
	t.Helper()
	b, err := Read("book.txt", []byte(text))
	require.NoError(t, err)
	return b
}

// randomPlan is one to three pieces with a random cut or two each, some of
// which no bit can make.
func randomPlan(random *rand.Rand) *joinery.Plan {
	some := func(n int64) measure.Length { return measure.Length(1+random.Int64N(n)) * in / 64 }
	plan := &joinery.Plan{Title: "random", Shop: joinery.Shop{Scale: measure.InchScale}}
	if random.IntN(2) == 0 {
		some = func(n int64) measure.Length { return measure.Length(1+random.Int64N(n*4)) * mm / 10 }
		plan.Shop.Scale, plan.Unit = measure.MetricScale, measure.Millimetres
	}
	plan.Shop.Stops = joinery.Stops(random.IntN(2))
	plan.Shop.Bits = []joinery.Bit{
		{Name: "one", Kind: joinery.BitKind(random.IntN(3)), Diameter: some(40), Measured: some(40), Shank: some(32)},
		{Name: "two # two", Diameter: some(20), Plunges: joinery.Yes},
	}
	woods := timber.Woods()
	for i := range 1 + random.IntN(3) {
		p := joinery.Piece{
			Name: fmt.Sprintf("piece: %d, ä", i), Count: 1 + random.IntN(9), Wood: woods[random.IntN(len(woods))],
			Size:  joinery.Size{some(900), some(900), some(900)},
			Grain: joinery.Dimensions[random.IntN(3)],
		}
		for k := range 1 + random.IntN(3) {
			side, near := joinery.Sides[random.IntN(6)], joinery.Sides[random.IntN(6)]
			p.Cuts = append(p.Cuts, joinery.Cut{
				Kind: &joinery.Groove, Name: fmt.Sprintf("cut #%d", k), In: side, Width: some(60), Depth: some(60),
				Start: joinery.Setback{Distance: some(60), From: near}, Square: random.IntN(2) == 0,
				Fence: joinery.Fencing{Either: random.IntN(3) == 0},
			})
		}
		p.LayAll(plan.Shop.Scale)
		plan.Pieces = append(plan.Pieces, p)
	}
	return plan
}
