package setup_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// edgesFrom throws a plan of shaped edges, as a maker would write it.
func edgesFrom(seed uint64) string {
	dice := rand.New(rand.NewPCG(seed, 7))
	in := func(n, of int) string { return fmt.Sprintf("%d/%d", n, of) }
	pick := func(of ...string) string { return of[dice.IntN(len(of))] }
	var b strings.Builder
	fmt.Fprintf(&b, "title: Edges\nunit: in\nwood: %s\nshop:\n  opening: 4\n  stops: %s\n", pick("white oak", "yellow-poplar", "eastern white pine"), pick("marks", "blocks"))
	if dice.IntN(3) == 0 {
		b.WriteString("  passes: gentle\n")
	}
	if dice.IntN(3) == 0 {
		fmt.Fprintf(&b, "  bite: 0.0%d\n", 20+dice.IntN(60))
	}
	if dice.IntN(3) == 0 {
		b.WriteString("  crossing: {carriage: 1/2}\n")
	}
	b.WriteString("  bits:\n")
	radius := 2 + dice.IntN(8) // sixteenths
	for _, kind := range []string{"round-over", "cove", "chamfer"} {
		fmt.Fprintf(&b, "    - {bit: %s, kind: %s, radius: %s, pilot: 1/2, diameter: %s, cutting: 1, shank: %s}\n", kind, kind, in(radius, 16), in(8+2*radius, 16), pick("1/4", "1/2"))
	}
	bulge := 1 + dice.IntN(4)
	fmt.Fprintf(&b, "    - {bit: bead, kind: outline, outline: [[0, 0], [1/8, %s], [3/8, %s]], pilot: 1/2, diameter: %s, cutting: 1, shank: 1/2}\n",
		in(bulge+1, 16), in(bulge, 16), in(8+2*(bulge+1), 16))
	b.WriteString("pieces:\n")
	for p := range 1 + dice.IntN(3) {
		fmt.Fprintf(&b, "  - piece: p%d\n    count: %d\n    size: {left-right: 20, front-back: %d, top-bottom: 1 1/4}\n    cuts:\n", p, 1+dice.IntN(3), 4+dice.IntN(8))
		for _, side := range []string{"front", "back", "left", "right"} {
			if dice.IntN(3) == 0 {
				continue
			}
			bit := pick("round-over", "cove", "chamfer", "bead")
			fmt.Fprintf(&b, "      - {profile: %s, on: top %s, bit: %s", side, side, bit)
			if bit != "bead" && dice.IntN(2) == 0 {
				fmt.Fprintf(&b, ", raise: %s", in(1+dice.IntN(2*radius), 32))
			}
			if (side == "front" || side == "back") && dice.IntN(2) == 0 {
				from := dice.IntN(2) * (1 + dice.IntN(6))
				fmt.Fprintf(&b, ", span: %d to %d from left", from, 20-dice.IntN(2)*(1+dice.IntN(7)))
			}
			b.WriteString("}\n")
		}
		b.WriteString("      - {rabbet: r, in: bottom, along: back, width: 1/4, depth: 1/4, by: hand}\n")
	}
	return b.String()
}

// Every plan of shaped edges is proved, or refused in words.
func TestRandomEdgesAreProved(t *testing.T) {
	made := 0
	for seed := range uint64(300) {
		text := edgesFrom(seed)
		plan, err := planfile.Read("edges.yaml", []byte(text), nil)
		require.NoError(t, err, text)
		d, err := setup.Make(plan)
		var faults plantext.Faults
		if errors.As(err, &faults) {
			assert.NotContains(t, err.Error(), "report this", text)
			continue
		}
		require.NoError(t, err, text)
		made++
		for i := range d.Setups {
			for k := range d.Setups[i].Runs {
				r := &d.Setups[i].Runs[k]
				sum := 0.0
				for _, area := range r.Areas() {
					assert.LessOrEqual(t, area, r.Cap.Depth.Millimetres()+1e-6, text)
					sum += area
				}
				if r.Step.Of == 1 {
					assert.InDelta(t, r.Channel.Section.Area(r.Channel.Depth), sum, 1e-9)
				}
			}
		}
	}
	assert.Greater(t, made, 200)
}

// Of two shapes on one arris the one that takes more wood is cut first.
func TestTheLargerShapeOfAnArrisComesFirst(t *testing.T) {
	o := func(r measure.Length) *joinery.Outline { return &joinery.Outline{Shape: joinery.Sloped, Radius: r} }
	plan := workpiece.PlainPlan(t)
	plan.Shop.Bits = nil
	plan.Pieces[0].Cuts = nil
	for i, r := range []measure.Length{measure.Inch / 8, measure.Inch / 4} {
		name := []string{"small", "large"}[i]
		outline := o(r)
		plan.Shop.Bits = append(plan.Shop.Bits, joinery.Bit{Name: name, Kind: joinery.Chamfer, Outline: outline, Pilot: measure.Inch / 2, Diameter: measure.Inch/2 + 2*r})
		plan.Pieces[0].Cuts = append(plan.Pieces[0].Cuts, joinery.Cut{Kind: &joinery.Profile, Name: name,
			Moulding: &joinery.Moulding{Down: joinery.Bottom, Fence: joinery.Front, Outline: outline}})
	}
	require.Empty(t, plan.Pieces[0].LayAll(plan.Shop.Scale))
	d, err := setup.Make(plan)
	require.NoError(t, err)
	require.Len(t, d.Setups, 2)
	assert.Equal(t, "large", d.Setups[0].Bit.Name)
}

// The opening of table and fence bounds the bit, in words.
func TestNoEdgeByABitWiderThanTheOpening(t *testing.T) {
	plan, err := planfile.Read("edges.yaml", []byte(strings.Replace(edgesFrom(1), "opening: 4", "opening: 1/2", 1)), nil)
	require.NoError(t, err)
	_, err = setup.Make(plan)
	assert.ErrorContains(t, err, "table and fence let no bit over 1/2 in turn")
}
