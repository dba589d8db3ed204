package setup_test

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/search/budget"
)

// bigPlan is a plan as a works would send it in: boards with grooves, mortises
// and rabbets of usual widths, a third of them to be cut from either side, in
// two woods.
func bigPlan(cuts int) *joinery.Plan {
	const in = measure.Inch
	random := rand.New(rand.NewPCG(1, 2))
	plan := &joinery.Plan{Name: "big", Unit: measure.Inches, Shop: shopfile.BuiltIn(measure.Inches)}
	ash, _, _ := timber.FindWood("white ash")
	cherry, _, _ := timber.FindWood("black cherry")
	widths := []measure.Length{in / 4, 3 * in / 8, in / 2, 5 * in / 8, 3 * in / 4, 7 * in / 16, 9 * in / 16, in}
	for n := 0; n < cuts; {
		p := joinery.Piece{
			Name: fmt.Sprintf("board %d", len(plan.Pieces)+1), Count: 1 + random.IntN(4), Wood: ash,
			Size: joinery.Size{measure.Length(20+random.IntN(20)) * in, measure.Length(3+random.IntN(2)) * in / 4, measure.Length(4+random.IntN(4)) * in},
		}
		if random.IntN(3) == 0 {
			p.Wood = cherry
		}
		for range min(cuts-n, 2+random.IntN(7)) {
			c := joinery.Cut{
				Kind: &joinery.Groove, Name: fmt.Sprintf("cut %d", len(p.Cuts)+1), In: joinery.Front,
				Width: widths[min(random.IntN(len(widths)), random.IntN(len(widths)))],
				Depth: measure.Length(2+random.IntN(7)) * in / 16,
				Start: joinery.Setback{Distance: measure.Length(1+random.IntN(44)) * in / 16, From: joinery.Bottom},
				Fence: joinery.Fencing{Either: random.IntN(3) == 0},
			}
			switch random.IntN(4) {
			case 0:
				c.Kind, c.Along = &joinery.Rabbet, joinery.Top
			case 1:
				c.Span = joinery.Span{From: 2 * in, To: measure.Length(6+random.IntN(8)) * in, Side: joinery.Left}
			}
			p.Cuts = append(p.Cuts, c)
			n++
		}
		lay(&p, plan.Shop.Scale)
		plan.Pieces = append(plan.Pieces, p)
	}
	return plan
}

func lay(p *joinery.Piece, scale measure.Scale) {
	if faults := p.LayAll(scale); len(faults) > 0 {
		panic(faults)
	}
}

// withoutWays leaves a plan's cuts one way each: one bit, one side to the fence.
func withoutWays(plan *joinery.Plan) *joinery.Plan {
	plan.Shop.Bits = []joinery.Bit{{Name: "1/4", Diameter: measure.Inch / 4, Plunges: joinery.Yes}}
	for i := range plan.Pieces {
		p := &plan.Pieces[i]
		for j := range p.Cuts {
			p.Cuts[j].Fence = joinery.Fencing{}
			p.Cuts[j].Width = min(p.Cuts[j].Width, 7*measure.Inch/16) // no fence distance between the first and the last
		}
		lay(p, plan.Shop.Scale)
	}
	return plan
}

// BenchmarkBigPlan reports how far above the bound the answer is when 10 s are
// given to the search.
func BenchmarkBigPlan(b *testing.B) {
	for _, cuts := range []int{100, 500, 2000} {
		plan := bigPlan(cuts)
		b.Run(fmt.Sprint(cuts), func(b *testing.B) {
			for b.Loop() {
				d, err := setup.MakeWith(b.Context(), plan, setup.Options{Search: budget.Limit{Time: 10 * time.Second}})
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(100*(d.Changes.Time.Minutes()/d.Changes.Bound.Minutes()-1), "%-over-bound")
				b.ReportMetric(d.Changes.Time.Minutes(), "min-searched")
			}
		})
	}
}

// BenchmarkWithoutWays plans cuts that can be made in one way only: it is to
// grow with their number and no faster.
func BenchmarkWithoutWays(b *testing.B) {
	for _, cuts := range []int{100, 1000, 10_000} {
		plan := withoutWays(bigPlan(cuts))
		b.Run(fmt.Sprint(cuts), func(b *testing.B) {
			for b.Loop() {
				if _, err := setup.Make(plan); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
