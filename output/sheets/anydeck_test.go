package sheets

import (
	"fmt"
	"io"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// anyDeck makes a deck of a few pieces of random sizes and cuts, from a thumb's
// width to the length of a bench, in inches or millimetres. Cuts that do not
// fit their piece, or that no bit can make, are left out.
func anyDeck(t testing.TB, r *rand.Rand) *deck.Deck {
	t.Helper()
	unit, scale := measure.Inches, measure.InchScale
	if r.IntN(2) == 0 {
		unit, scale = measure.Millimetres, measure.MetricScale
	}
	length := func(least, most float64) measure.Length {
		mm := least + (most-least)*r.Float64()*r.Float64()
		return max(scale.Division, scale.Round(measure.FromMillimetres(mm)))
	}
	side := func() joinery.Side { return joinery.Sides[r.IntN(6)] }
	name := func() string { return strings.Repeat([]string{"leg ", "Holm-", "ő"}[r.IntN(3)], 1+r.IntN(12)) }
	plan := &joinery.Plan{Name: "any", Title: name(), Unit: unit, Shop: joinery.Shop{Scale: scale}}
	for range 1 + r.IntN(4) {
		plan.Shop.Bits = append(plan.Shop.Bits, joinery.Bit{Name: name(), Diameter: length(2, 60), Plunges: joinery.Yes})
	}
	plan.Shop.Fence = joinery.FenceReach{Infeed: length(50, 900), Outfeed: length(50, 900)}
	for i := range 1 + r.IntN(3) {
		p := joinery.Piece{Name: fmt.Sprintf("%s%d", name(), i), Count: 1 + r.IntN(80), Size: joinery.Size{length(8, 2000), length(8, 600), length(8, 2500)}}
		for range 6 {
			kind := []*joinery.Kind{&joinery.Mortise, &joinery.Groove, &joinery.Dado, &joinery.Rabbet, &joinery.Lap}[r.IntN(5)]
			c := joinery.Cut{Kind: kind, Name: name(), In: side(), Along: side(), At: side(), Width: length(2, 80),
				Length: length(5, 100), Depth: length(1, 60), Square: r.IntN(2) == 0,
				Start: joinery.Setback{Distance: length(0, 300), From: side()}}
			if r.IntN(2) == 0 {
				from := length(0, 400)
				c.Span = joinery.Span{From: from, To: from + length(10, 900), Side: side()}
			}
			p.Cuts = []joinery.Cut{c}
			alone := *plan
			alone.Pieces = []joinery.Piece{p}
			if len(alone.Pieces[0].LayAll(scale)) > 0 {
				continue
			}
			if d, err := setup.Make(&alone); err == nil && d.Runs() > 0 {
				p := alone.Pieces[0]
				p.Name += fmt.Sprint(" ", len(plan.Pieces)) // no two of one name
				plan.Pieces = append(plan.Pieces, p)
			}
		}
	}
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}

// TestAnyDeckHasSoundPages lays random decks out on random paper.
func TestAnyDeckHasSoundPages(t *testing.T) {
	all := allPapers()
	cards := 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 3))
		d := anyDeck(t, r)
		o := Pages{Paper: all[r.IntN(len(all))]}
		o.Units = Units(r.IntN(4))
		pages, err := lay(d, o)
		require.NoError(t, err)
		checkPages(t, fmt.Sprintf("deck %d on %s, units %d", seed, o.Paper, o.Units), slices.Collect(pages), o.Paper.margin())
		cards += d.Runs()
	}
	assert.Greater(t, cards, 100)
}

// TestDeckWithoutCuts prints what there is of a plan without cuts.
func TestDeckWithoutCuts(t *testing.T) {
	d := planDeck(t, []byte("title: Boards\nunit: in\npieces:\n- piece: board\n  size: {left-right: 30, front-back: 6, top-bottom: 1}\n"))
	require.NoError(t, PDF(io.Discard, d, Pages{}))
}
