package proof_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/proof"
	"fencecard/setup/solid"
)

// raster is a piece as cells of 1/64 in (or half a millimetre), cut by brute
// force: a disc is moved in steps along the feed, and every cell whose middle
// it covers is gone. It knows only the numbers of a run.
type raster struct {
	n    [3]int // cells along each dimension
	gone []uint16
}

func newRaster(size joinery.Size, cell measure.Length) *raster {
	r := &raster{}
	for d := range size {
		r.n[d] = int(size[d] / cell)
	}
	r.gone = make([]uint16, r.n[0]*r.n[1]*r.n[2])
	return r
}

func (r *raster) at(c [3]int) *uint16 { return &r.gone[(c[0]*r.n[1]+c[1])*r.n[2]+c[2]] }

// maxMarks is how many runs one cell tells apart.
const maxMarks = 16

// cut moves the disc as a run says, in steps of a quarter of a cell, and marks
// what is gone with a bit. All of it is done in whole lengths.
func (r *raster) cut(c *proof.Run, s *proof.Setup, cell measure.Length, mark uint16) {
	feed, across, up := c.Leads.Dimension(), c.Fence.Dimension(), c.Down.Dimension()
	radius := s.Bit.Diameter / 2
	from, to := -2*radius, cell*measure.Length(r.n[feed])+2*radius
	if c.Start != nil {
		from = c.Start.LeadPastCentre
	}
	if c.Stop != nil {
		to = c.Stop.LeadPastCentre
	}
	deep := c.Heights[len(c.Heights)-1]
	middle := func(at int, d joinery.Dimension, from joinery.Side) measure.Length {
		if from.High() {
			at = r.n[d] - 1 - at
		}
		return cell*measure.Length(at) + cell/2
	}
	for x := range r.n[feed] {
		for y := range r.n[across] {
			if !slices.ContainsFunc(aside(c), func(back measure.Length) bool {
				return covered(middle(x, feed, c.Leads), middle(y, across, c.Fence)-s.Fence.Centre+back, from, to, radius, cell/4)
			}) {
				continue
			}
			for z := range r.n[up] {
				if middle(z, up, c.Down) < deep {
					var at [3]int
					at[feed], at[across], at[up] = x, y, z
					*r.at(at) |= mark
				}
			}
		}
	}
}

// aside lists how far the work is drawn back from the fence in the passes of a
// run, evenly from the first to the last.
func aside(c *proof.Run) []measure.Length {
	if c.Nibble == nil {
		return []measure.Length{0}
	}
	var back []measure.Length
	for i := range c.Nibble.Passes {
		left := measure.Length(c.Nibble.Passes - 1 - i)
		back = append(back, c.Nibble.DrawBack*left/measure.Length(c.Nibble.Passes-1))
	}
	return back
}

// covered reports whether a disc covers a place at one of its steps.
func covered(x, y, from, to, radius, step measure.Length) bool {
	for centre := from; y.Abs() <= radius; centre += step {
		centre = min(centre, to)
		if dx := x - centre; dx*dx+y*y <= radius*radius {
			return true
		}
		if centre == to {
			break
		}
	}
	return false
}

// tinyPlan is a plan of one piece of up to 20 cells a side.
func tinyPlan(seed uint64) (*joinery.Plan, measure.Length) {
	d := newDice(seed, 20)
	plan := d.plan(1)
	plan.Pieces = plan.Pieces[:1]
	return plan, d.grid
}

// TestSolidAgainstRaster compares the solid with the raster, both cut by the
// runs: every cell, and whether two runs' cuts meet. The solid made from the
// plan, which the warnings look at, must hold the same cells.
func TestSolidAgainstRaster(t *testing.T) {
	t.Parallel()
	plans := uint64(300)
	if testing.Short() {
		plans = 30
	}
	cells, meeting := 0, 0
	for seed := range plans {
		plan, grid := tinyPlan(seed)
		deck := deckFor(t, plan, seed)
		claims := proof.Of(deck)
		solids := proof.Carve(plan, &claims)[0]
		size := plan.Pieces[0].Size
		r := newRaster(size, grid)
		n := min(len(solids.Runs), maxMarks)
		at := 0
		for i := range claims.Setups {
			for j := range claims.Setups[i].Runs {
				if at < n {
					r.cut(solids.Runs[at], &claims.Setups[i], grid, 1<<at)
					c := &deck.Setups[i].Runs[j]
					made := solid.Run(c.Channel, size, c.Step.Bit.True(), c.Step.Fence, c.Step.NearEdge)
					if c.Nibble != nil {
						made = solid.Of(c.Channel, size, c.Step.Bit.True())
					}
					require.Equal(t, made.Box(size), solids.Hollows[at].Box(size), "seed %d run %s", seed, c.Number())
				}
				at++
			}
		}
		cells += len(r.gone)
		shared := r.compare(t, seed, size, grid, solids.Hollows[:n])
		for a := range n {
			for b := range a {
				if shared[1<<a|1<<b] {
					meeting++
					require.Zero(t, solid.Gap(solids.Hollows[a], solids.Hollows[b], size), "seed %d: runs %d and %d share a cell", seed, a, b)
				}
			}
		}
	}
	t.Logf("%d cells, %d pairs of cuts that meet", cells, meeting)
	require.Positive(t, meeting)
}

// skin is what the steps of the disc may leave on a wall; a cell whose middle
// lies as near to the surface of a cut is not compared.
const skin = 4 * measure.Millimetre / 1000

func grown(h solid.Hollow, by measure.Length) solid.Hollow {
	h.Walls.Lo, h.Walls.Hi = h.Walls.Lo-by, h.Walls.Hi+by
	h.Ends.Lo, h.Ends.Hi = h.Ends.Lo-by, h.Ends.Hi+by
	h.Depth, h.Radius = h.Depth+by, h.Radius+by
	return h
}

func onSurface(h solid.Hollow, at [3]float64, size joinery.Size) bool {
	return grown(h, -skin).Contains(at, size) != grown(h, skin).Contains(at, size)
}

// compare looks at every cell and returns which pairs of marks share one.
func (r *raster) compare(t *testing.T, seed uint64, size joinery.Size, cell measure.Length, hollows []solid.Hollow) map[uint16]bool {
	t.Helper()
	shared := map[uint16]bool{}
	mm := cell.Millimetres()
	var c [3]int
	for c[0] = 0; c[0] < r.n[0]; c[0]++ {
		for c[1] = 0; c[1] < r.n[1]; c[1]++ {
			for c[2] = 0; c[2] < r.n[2]; c[2]++ {
				middle := [3]float64{(float64(c[0]) + 0.5) * mm, (float64(c[1]) + 0.5) * mm, (float64(c[2]) + 0.5) * mm}
				gone := *r.at(c)
				for i, h := range hollows {
					if h.Contains(middle, size) != (gone>>i&1 == 1) && !onSurface(h, middle, size) {
						t.Fatalf("seed %d: cell %v of run %d (%+v): the raster says gone %v", seed, c, i, h, gone>>i&1 == 1)
					}
					for j := range i {
						if pair := uint16(1<<i | 1<<j); gone&pair == pair {
							shared[pair] = true
						}
					}
				}
			}
		}
	}
	return shared
}
