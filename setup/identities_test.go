package setup_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// randomTrench lays one mortise, with or without open ends, in a random blank,
// in any of the 24 placements, with a bit no wider than it.
func randomTrench(t testing.TB, random *rand.Rand) *joinery.Plan {
	division := measure.InchScale.Division
	upTo := func(n measure.Length) measure.Length { return measure.Length(random.Int64N(int64(n))) }
	var size joinery.Size
	for d := range size {
		size[d] = (64 + upTo(600)) * division
	}
	in := joinery.Sides[random.IntN(6)]
	from := joinery.Sides[random.IntN(6)]
	for from.Dimension() == in.Dimension() {
		from = joinery.Sides[random.IntN(6)]
	}
	side := in.Dimension().Third(from.Dimension()).Low()
	if random.IntN(2) == 0 {
		side = side.Opposite()
	}
	across, along := size.Between(from)/division, size.Between(side)/division
	width := 8 + upTo(across/2)
	setback := upTo(across - width + 1)
	bit := 8 + upTo(min(width-7, along/2))
	start := upTo(along - bit)
	end := min(along, start+bit+upTo(along-start))
	cut := joinery.Cut{
		Kind: &joinery.Mortise, Name: "mortise", In: in, Bored: true, // whatever its tail is
		Width: width * division, Depth: (1 + upTo(size.Between(in)/division-1)) * division,
		Start: joinery.Setback{Distance: setback * division, From: from},
		Span:  joinery.Span{From: start * division, To: end * division, Side: side},
	}
	return workpiece.PlanOf(t, measure.Inches, size, cut, workpiece.BitOf(bit*division))
}

// spell is a length as a maker reads it, whole.
func spell(l measure.Length) string { return measure.InchScale.Spell(l) }

func requireLength(t testing.TB, want, got measure.Length) {
	t.Helper()
	require.Equal(t, spell(want), spell(got))
}

// Mirror the piece, and its marks are mirrored about the bit.
func TestMirroredMarks(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		plan := randomTrench(t, random)
		across := joinery.Dimensions[random.IntN(3)]
		mirror := *plan
		mirror.Pieces = []joinery.Piece{plan.Pieces[0].Mirrored("mirror", across, plan.Shop.Scale)}
		here, there := workpiece.DeckOf(t, plan), workpiece.DeckOf(t, &mirror)
		require.Equal(t, here.Runs(), there.Runs())
		for i := range here.Setups {
			require.Equal(t, here.Setups[i].Fence, there.Setups[i].Fence)
			a, b := here.Setups[i].Runs[0], there.Setups[i].Runs[0]
			requireMirrored(t, a.Start, b.Stop)
			requireMirrored(t, a.Stop, b.Start)
		}
	}
}

// Turn the piece end for end, the other side to the fence, and a' = L - b,
// b' = L - a.
func TestTurnedEndForEnd(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		plan := randomTrench(t, random)
		turned := *plan
		turned.Pieces = []joinery.Piece{plan.Pieces[0]}
		p := &turned.Pieces[0]
		p.Cuts = []joinery.Cut{p.Cuts[0]}
		p.Cuts[0].Fence.Side = p.Cuts[0].Start.From.Opposite()
		here, there := workpiece.DeckOf(t, plan), workpiece.DeckOf(t, &turned)
		a, b := here.Setups[0].Runs[0], there.Setups[0].Runs[0]
		require.Equal(t, a.Leads.Opposite(), b.Leads)
		requireLength(t, a.Length-a.B, b.A)
		requireLength(t, a.Length-a.A, b.B)
		requireMirrored(t, a.Start, b.Stop)
		requireMirrored(t, a.Stop, b.Start)
	}
}

func requireMirrored(t testing.TB, a, b *deck.Mark) {
	t.Helper()
	if a == nil || b == nil {
		require.Nil(t, a)
		require.Nil(t, b)
		return
	}
	requireLength(t, a.LeadPastEdge, b.TailBeforeEdge)
	requireLength(t, a.LeadPastCentre, b.TailBeforeCentre)
	requireLength(t, a.TailBeforeEdge, b.LeadPastEdge)
	requireLength(t, a.TailBeforeCentre, b.LeadPastCentre)
}

// The positions of a channel with walls begin at the near wall, end at the far
// one, overlap, and go away from the fence.
func TestPositions(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for range 1000 {
		plan := randomTrench(t, random)
		jobs, err := setup.Jobs(plan)
		require.NoError(t, err)
		ch, runs := jobs[0].Channel, jobs[0].Ways[0].Steps
		d := runs[0].Bit.True()
		requireLength(t, ch.Setback, runs[0].NearEdge)
		requireLength(t, ch.Setback+ch.Width, runs[len(runs)-1].NearEdge+d)
		for i := 1; i < len(runs); i++ {
			require.Greater(t, runs[i].NearEdge, runs[i-1].NearEdge, "run %d at %s, not beyond the %s before it", i+1, spell(runs[i].NearEdge), spell(runs[i-1].NearEdge))
			require.Less(t, runs[i].NearEdge, runs[i-1].NearEdge+d, "run %d at %s leaves wood beside the one before it, which ends at %s", i+1, spell(runs[i].NearEdge), spell(runs[i-1].NearEdge+d))
		}
	}
}

// Common practice, no source: a mortise set a quarter inch in from the face
// with an eighth-inch shoulder on the rail leaves an eighth-inch reveal. The
// near wall of the mortise, cut at the fence distance of its run, stands that
// much further from the face than the rail's cheek.
func TestReveal(t *testing.T) {
	mortise := legMortise(t, joinery.Right)
	mortise.Start.Distance = workpiece.In(t, "1/4")
	leg := workpiece.DeckOf(t, workpiece.PlanOf(t, measure.Inches, leg(t), mortise, workpiece.BitOf(workpiece.In(t, "3/8"))))
	rail := workpiece.DeckOf(t, workpiece.PlanOf(t, measure.Inches, joinery.Size{workpiece.In(t, "15"), workpiece.In(t, "3/4"), workpiece.In(t, "2 1/2")}, joinery.Cut{
		Kind: &joinery.Tenon, Name: "tenon", At: joinery.Left, Length: workpiece.In(t, "15/16"),
		Cheeks: []joinery.Cheek{{Side: joinery.Front, Depth: workpiece.In(t, "1/8")}},
	}, workpiece.BitOf(workpiece.In(t, "3/4"))))
	shoulder := rail.Setups[0].Runs[0]
	require.Equal(t, joinery.Front, shoulder.Step.Down)
	heights := shoulder.Heights
	requireLength(t, workpiece.In(t, "1/8"), leg.Setups[0].Fence.NearEdge-heights[len(heights)-1])
}

// On a stopped mortise the work is dropped at the bit's trailing edge and
// lifted at its leading edge (common practice, no source): when it is dropped,
// the layout line of the cut's nearer end lies at the outfeed edge, so that
// the whole bit is inside the cut.
func TestDroppedAtTrailingLiftedAtLeading(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	for range 500 {
		plan := randomTrench(t, random)
		r := workpiece.DeckOf(t, plan).Setups[0].Runs[0]
		radius := r.Step.Bit.True() / 2
		if r.Start != nil {
			requireLength(t, r.A+radius, r.Start.LeadPastCentre)
		}
		if r.Stop != nil {
			requireLength(t, r.B-radius, r.Stop.LeadPastCentre)
		}
	}
}
