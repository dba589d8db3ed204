package setup_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/brute"
	"fencecard/setup/ladder"
	"fencecard/setup/search/model"
)

// smallPlan is one or two boards with seven cuts at the most, that want few
// fence distances and two or three bits, and wait for one another now and then.
// With ends, some cuts are laps that are pushed over the bit on a carriage.
func smallPlan(random *rand.Rand, stops joinery.Stops, ends bool) *joinery.Plan {
	const in = measure.Inch
	plan := &joinery.Plan{Name: "small", Shop: joinery.Shop{
		Scale: measure.InchScale, Stops: stops,
		Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2, Stop: joinery.Minute, Pass: joinery.Minute / 5, Fit: 2 * joinery.Minute},
	}}
	for _, eighths := range []measure.Length{2, 3, 4}[:2+random.IntN(2)] {
		plan.Shop.Bits = append(plan.Shop.Bits, joinery.Bit{Name: fmt.Sprint(eighths), Diameter: eighths * in / 8, Plunges: joinery.Yes})
	}
	if ends {
		plan.Shop.Cross = joinery.Crossing{With: joinery.Carriage, Base: in / 2}
	}
	for left := 1 + random.IntN(7); left > 0; {
		p := joinery.Piece{Name: fmt.Sprint("board ", len(plan.Pieces)), Count: 1 + 5*random.IntN(3), Size: joinery.Size{12 * in, in, 4 * in}}
		for range 1 + random.IntN(left) {
			c := joinery.Cut{
				Kind: &joinery.Groove, Name: fmt.Sprint("cut ", len(p.Cuts)), In: joinery.Front,
				Width: measure.Length(2+random.IntN(3)) * in / 8, Depth: measure.Length(1+random.IntN(4)) * in / 8,
				Start: joinery.Setback{Distance: measure.Length(1+random.IntN(3)) * in / 4, From: joinery.Bottom},
				Fence: joinery.Fencing{Either: random.IntN(6) == 0},
			}
			switch random.IntN(4) {
			case 0:
				c.Start = joinery.Setback{From: joinery.Bottom, Centred: true}
				c.Fence.Either = true
			case 1:
				c.Span = joinery.Span{From: in, To: measure.Length(4+random.IntN(2)) * in, Side: joinery.Left}
			}
			if ends && random.IntN(2) == 0 {
				c = joinery.Cut{Kind: &joinery.Lap, Name: c.Name, In: joinery.Front, At: joinery.Left,
					Length: measure.Length(2+random.IntN(5)) * in / 4, Depth: c.Depth}
			}
			if n := len(p.Cuts); n > 0 && random.IntN(3) == 0 {
				c.After = []string{p.Cuts[random.IntN(n)].Name}
			}
			p.Cuts = append(p.Cuts, c)
			left--
		}
		lay(&p, plan.Shop.Scale)
		plan.Pieces = append(plan.Pieces, p)
	}
	return plan
}

// asProblem spells a plan out for the brute force, from its jobs and runs
// alone.
func asProblem(t *testing.T, plan *joinery.Plan) *model.Problem {
	jobs, err := setup.Jobs(plan)
	require.NoError(t, err)
	p := &model.Problem{Minutes: plan.Shop.Minutes, Scale: plan.Shop.Scale}
	bits, blocks, fits := map[string]int{}, map[string]int{}, map[string]int{}
	for _, j := range jobs {
		job := model.Job{After: j.After}
		for _, w := range j.Ways {
			way := model.Way{Turned: w.Steps[0].Turned}
			for _, r := range w.Steps {
				if _, ok := bits[r.Bit.Name]; !ok {
					bits[r.Bit.Name] = len(bits)
				}
				run := model.Run{Bit: bits[r.Bit.Name], Fence: r.NearEdge, Demand: ladder.Demand{
					Depth: j.Channel.Depth, From: p.Scale.Floor(j.Channel.Recess.Depth), Cap: ladder.CapFor(r.Bit, j.Piece.Wood, &plan.Shop).Depth,
				}, Over: j.Piece.Count * sideBySide(j, r, p.Scale), Raised: r.Carriage > 0}
				c := setup.RunOf(j.Piece, j.Cut, j.Channel, r, p.Scale)
				if plan.Shop.Stops == joinery.Blocks && (c.Start != nil || c.Stop != nil) {
					at := ""
					if c.Start != nil {
						at += fmt.Sprint("back ", c.Start.TailBeforeEdge)
					}
					if c.Stop != nil {
						at += fmt.Sprint("front ", c.Stop.LeadPastEdge)
					}
					if _, ok := blocks[at]; !ok {
						blocks[at] = len(blocks) + 1
					}
					run.Blocks = blocks[at]
				}
				way.Runs = append(way.Runs, run)
			}
			across := j.Piece.Size.Between(j.Channel.Near)
			if n := len(w.Steps); n > 1 && j.Channel.Setback > 0 && j.Channel.Setback+j.Channel.Width < across {
				pair := fmt.Sprint(w.Bit.Name, w.Steps[0].NearEdge, w.Steps[n-1].NearEdge)
				if _, ok := fits[pair]; !ok {
					fits[pair] = len(fits)
				}
				way.Fits = []int{fits[pair]}
			}
			job.Ways = append(job.Ways, way)
		}
		p.Jobs = append(p.Jobs, job)
	}
	return p
}

// sideBySide counts the passes that take the waste of a lap, each as far beside
// the one before as the bit is wide, less a division.
func sideBySide(j setup.Job, r deck.Step, scale measure.Scale) int {
	n := 1
	if j.Cut.Kind == &joinery.Lap {
		for reached := r.Bit.True(); reached < j.Channel.Width; n++ {
			reached += r.Bit.True() - scale.Division
		}
	}
	return n
}

// mostChoices keeps the brute force short.
const mostChoices = 40

// The deck of a plan takes as long as the cheapest of all its ways and orders.
func TestDecksAgainstBruteForce(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		stops joinery.Stops
		free  bool // the cutting costs nothing
		ends  bool
	}{"marks": {}, "blocks": {stops: joinery.Blocks}, "cutting for nothing": {free: true}, "ends on a carriage": {ends: true}} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			tried := 0
			for seed := uint64(0); tried < 250; seed++ {
				plan := smallPlan(rand.New(rand.NewPCG(seed, 3)), c.stops, c.ends)
				if c.free {
					plan.Shop.Minutes.Pass, plan.Shop.Minutes.Fit = 0, 0
				}
				p := asProblem(t, plan)
				choices := 1
				for _, j := range p.Jobs {
					choices *= len(j.Ways)
				}
				if choices > mostChoices {
					continue
				}
				tried++
				d, err := setup.Make(plan)
				require.NoError(t, err)
				require.Equal(t, brute.Least(p), d.Changes.Time, "seed %d", seed)
				require.True(t, d.Changes.Proved, "seed %d", seed)
				require.Equal(t, deck.Count(d.Setups, &plan.Shop).Time, d.Changes.Time)
			}
		})
	}
}
