package proof_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
	"fencecard/setup/search/budget"
)

// dice throw random plans that a shop can make. Lengths are multiples of grid.
type dice struct {
	*rand.Rand
	grid    measure.Length
	longest int // of a piece, in grids
	scale   measure.Scale
}

func newDice(seed uint64, longest int) dice {
	r := rand.New(rand.NewPCG(seed, 6))
	d := dice{Rand: r, grid: measure.Inch / 64, longest: longest, scale: measure.InchScale}
	if r.IntN(3) == 0 {
		d.grid, d.scale = measure.Millimetre/2, measure.MetricScale
	}
	return d
}

// between returns a length from lo to hi grids.
func (d dice) between(lo, hi int) measure.Length {
	return d.grid * measure.Length(lo+d.IntN(max(1, hi-lo+1)))
}

// upTo returns a length from one grid to a limit that is a multiple of it.
func (d dice) upTo(limit measure.Length) measure.Length {
	return d.between(1, int(limit/d.grid))
}

func (d dice) side() joinery.Side { return joinery.Sides[d.IntN(6)] }

func (d dice) sideBeside(s joinery.Side) joinery.Side {
	for {
		if other := d.side(); other.Dimension() != s.Dimension() {
			return other
		}
	}
}

func (d dice) shop() joinery.Shop {
	shop := joinery.Shop{Raises: true, Scale: d.scale, Minutes: joinery.Minutes{Bit: 3000, Fence: 2000, Height: 500, Stop: 1000, Pass: 200, Fit: 2000}}
	if d.IntN(4) == 0 {
		shop.Stops = joinery.Blocks
	}
	switch d.IntN(6) {
	case 0:
		shop.Cross = joinery.Crossing{With: joinery.Carriage, Base: d.between(1, 32)}
	case 1:
		shop.Cross.With = joinery.Gauge
	}
	for i := range 1 + d.IntN(4) {
		b := joinery.Bit{
			Name: fmt.Sprint("bit ", i), Kind: joinery.BitKind(d.IntN(3)),
			Diameter: d.between(max(4, d.longest/32), d.longest/5), Plunges: joinery.Answer(d.IntN(2)),
		}
		if d.IntN(3) == 0 {
			b.Measured = b.Diameter - d.between(1, 4)/8
		}
		if d.IntN(4) == 0 {
			b.Shank = measure.Inch / 4
		}
		shop.Bits = append(shop.Bits, b)
	}
	return shop
}

func (d dice) cut(p *joinery.Piece, name string) joinery.Cut {
	c := joinery.Cut{Kind: joinery.Kinds[d.IntN(len(joinery.Kinds))], Name: name, In: d.side(), Square: d.IntN(4) == 0}
	beside := d.sideBeside(c.In)
	long := func(s joinery.Side) measure.Length { return d.upTo(p.Size.Between(s)) }
	c.Depth = long(c.In)
	switch {
	case c.Kind.Has("screw"):
		c.Slot, c.Square, c.Depth = d.slot(p, c.In, beside), false, 0
		c.Bored = d.IntN(2) == 0
		if d.IntN(3) == 0 {
			c.Fence.Either = true
		}
		return c
	case c.Kind.Has("along"):
		c.Along, c.Width = beside, long(beside)
	case c.Kind.Has("at") && c.Kind.Has("depth"):
		c.At, c.Length = beside, long(beside)
	case c.Kind.Has("cheeks"):
		c.At, c.Length = beside, long(beside)
		for _, s := range joinery.Sides {
			if s.Dimension() != beside.Dimension() && d.IntN(2) == 0 {
				c.Cheeks = append(c.Cheeks, joinery.Cheek{Side: s, Depth: long(s)})
			}
		}
		return c
	default:
		c.Start = joinery.Setback{From: beside, Distance: d.between(0, int(p.Size.Between(beside)/d.grid)), Centred: d.IntN(4) == 0}
		c.Width = long(beside)
	}
	run := c.In.Dimension().Third(beside.Dimension())
	if c.Kind.Has("span") && d.IntN(3) > 0 {
		from := d.between(0, int(p.Size[run]/d.grid)-1)
		side := run.Low()
		if d.IntN(2) == 0 {
			side = run.High()
		}
		c.Span = joinery.Span{From: from, To: min(p.Size[run], from+d.upTo(p.Size[run])), Side: side}
	}
	switch d.IntN(5) {
	case 0:
		c.Fence.Either = true
	case 1:
		c.Fence.Side = beside.Opposite()
	}
	return c
}

// slot is a slot for a screw, entered from a side, its walls measured from
// another one.
func (d dice) slot(p *joinery.Piece, in, beside joinery.Side) *joinery.ScrewSlot {
	along := in.Dimension().Third(beside.Dimension())
	screw := d.between(4, 20)
	s := &joinery.ScrewSlot{
		Centre: [2]joinery.Setback{
			{From: beside, Distance: d.upTo(p.Size.Between(beside)), Centred: d.IntN(3) == 0},
			{From: along.Low(), Distance: d.upTo(p.Size[along]), Centred: d.IntN(3) == 0},
		},
		Along: along, Screw: screw, Head: screw + d.between(1, 20), HeadDepth: d.upTo(p.Size.Between(in)),
		Move: timber.ScrewMove{Whole: d.between(1, 30)},
	}
	if d.IntN(2) == 0 {
		s.Move = timber.ScrewMove{From: d.between(4, 800), Climate: timber.DefaultClimate}
		s.Move.Climate.Assembly = float64(4 + d.IntN(12))
	}
	return s
}

// piece has one to five cuts, each of which the shop can make.
func (d dice) piece(name string, shop joinery.Shop) joinery.Piece {
	p := joinery.Piece{Name: name, Count: 1 + d.IntN(4), Grain: joinery.Dimension(d.IntN(3))}
	for i := range p.Size {
		p.Size[i] = d.between(d.longest/4, d.longest)
	}
	for want := 1 + d.IntN(5); want > 0; {
		c := d.cut(&p, fmt.Sprint("cut ", len(p.Cuts)))
		if d.IntN(4) == 0 && len(p.Cuts) > 0 {
			c.After = []string{p.Cuts[d.IntN(len(p.Cuts))].Name}
		}
		if len(c.Lay(&p, d.scale)) > 0 || len(c.Channels) == 0 {
			continue
		}
		alone := p
		alone.Cuts = []joinery.Cut{c}
		if _, err := setup.Jobs(&joinery.Plan{Shop: shop, Pieces: []joinery.Piece{alone}}); err != nil {
			continue
		}
		p.Cuts = append(p.Cuts, c)
		want--
	}
	return p
}

func (d dice) plan(pieces int) *joinery.Plan {
	plan := &joinery.Plan{Title: "thrown", Unit: d.scale.Unit, Shop: d.shop()}
	for i := range 1 + d.IntN(pieces) {
		plan.Pieces = append(plan.Pieces, d.piece(fmt.Sprint("piece ", i), plan.Shop))
	}
	if d.IntN(2) == 0 {
		across := joinery.Dimension(d.IntN(3))
		plan.Pieces = append(plan.Pieces, plan.Pieces[0].Mirrored("mirrored", across, d.scale))
	}
	return plan
}

// deckFor makes a deck in the plain order, or by a short search.
func deckFor(t testing.TB, plan *joinery.Plan, seed uint64) *deck.Deck {
	t.Helper()
	o := setup.Options{Plain: seed%2 == 0, Search: budget.Limit{Steps: 2000}}
	d, err := setup.MakeWith(context.Background(), plan, o)
	require.NoError(t, err, "seed %d", seed)
	return d
}

func TestNoFalseAlarmOnRandomPlans(t *testing.T) {
	t.Parallel()
	for seed := range uint64(1000) {
		plan := newDice(seed, 256).plan(3)
		d := deckFor(t, plan, seed)
		r := proof.Check(plan, claimsOf(d))
		require.Empty(t, r.Faults, "seed %d", seed)
		require.Len(t, r.Results, d.Runs())
	}
}
