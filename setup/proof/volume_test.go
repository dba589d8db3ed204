package proof_test

import (
	"math"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup/proof"
)

// The volumes that runs remove, by the geometry library
// github.com/peterstace/simplefeatures: a piece is sliced across its height,
// the slices of all cuts are joined, and their areas summed. The polygons that
// stand for discs have so many corners here that their areas are right to
// 0.01 %, and those of slots far better.
const roundCorners = 256

// sweep is one run as a polygon in the plane of the side that is down.
type sweep struct {
	plane             geom.Geometry // first along the feed, then from wall to wall, in mm
	feed, walls, down joinery.Dimension
	from, to          float64 // along down
	radius            float64
}

// sweepOf reads a run's numbers.
func sweepOf(c *proof.Run, s *proof.Setup, size joinery.Size) sweep {
	w := sweep{feed: c.Leads.Dimension(), walls: c.Fence.Dimension(), down: c.Down.Dimension()}
	r := s.Bit.Diameter.Millimetres() / 2
	long := size[w.feed].Millimetres()
	from, to := -4*r, long+4*r
	if c.Start != nil {
		from = c.Start.LeadPastCentre.Millimetres()
	}
	if c.Stop != nil {
		to = c.Stop.LeadPastCentre.Millimetres()
	}
	y := s.Fence.Centre.Millimetres()
	if c.Leads.High() {
		from, to = long-to, long-from
	}
	if c.Fence.High() {
		y = size[w.walls].Millimetres() - y
	}
	var passes []geom.Geometry
	for _, back := range aside(c) {
		at := y - back.Millimetres()
		if c.Fence.High() {
			at = y + back.Millimetres()
		}
		passes = append(passes, geom.NewMultiPoint(append(disc(from, at, r, roundCorners), disc(to, at, r, roundCorners)...)).ConvexHull())
	}
	w.plane = must(geom.Intersection(must(geom.UnionMany(passes)), rectangle(0, 0, long, size[w.walls].Millimetres())))
	w.to = c.Heights[len(c.Heights)-1].Millimetres()
	if c.Down.High() {
		w.from, w.to = size[w.down].Millimetres()-w.to, size[w.down].Millimetres()
	}
	w.radius = r
	return w
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// slice is the sweep's section at a height of the piece, in its left-right and
// front-back dimensions; it may be empty.
func (w sweep) slice(z float64) geom.Geometry {
	if w.down == joinery.TopBottom {
		if z < w.from || z > w.to {
			return geom.Geometry{}
		}
		if w.feed == joinery.LeftRight {
			return w.plane
		}
		return w.plane.TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: p.Y, Y: p.X} })
	}
	if low, high := w.heights(); z <= low || z >= high {
		return geom.Geometry{}
	}
	const wide = 1e5
	line := rectangle(-wide, z, wide, z) // a line from wall to wall, or along the feed
	if w.feed == joinery.TopBottom {
		line = rectangle(z, -wide, z, wide)
	}
	low, high, ok := must(geom.Intersection(w.plane, line)).Envelope().MinMaxXYs()
	if !ok {
		return geom.Geometry{}
	}
	from, to := low.X, high.X
	if w.feed == joinery.TopBottom {
		from, to = low.Y, high.Y
	}
	if w.down == joinery.FrontBack {
		return rectangle(from, w.from, to, w.to)
	}
	return rectangle(w.from, from, w.to, to)
}

// levels are the heights at which the sweep's section begins, ends or changes
// its form.
func (w sweep) levels() []float64 {
	if w.down == joinery.TopBottom {
		return []float64{w.from, w.to}
	}
	low, high := w.heights()
	return []float64{low, min(high, low+w.radius), max(low, high-w.radius), high}
}

// heights returns the lowest and highest point of a sweep that does not enter
// from above or below.
func (w sweep) heights() (low, high float64) {
	from, to, _ := w.plane.Envelope().MinMaxXYs()
	if w.feed == joinery.TopBottom {
		return from.X, to.X
	}
	return from.Y, to.Y
}

// slicedVolume sums slices between the levels. They lie closer toward the
// levels, where round ends begin steeply.
func slicedVolume(sweeps []sweep) float64 {
	var levels []float64
	for _, w := range sweeps {
		levels = append(levels, w.levels()...)
	}
	slices.Sort(levels)
	const n = 24
	sum := 0.0
	for i := 1; i < len(levels); i++ {
		from, to := levels[i-1], levels[i]
		if to-from < 1e-9 {
			continue
		}
		at := func(k float64) float64 { return from + (to-from)*(1-math.Cos(math.Pi*k/n))/2 }
		// A section that is the same near one end and in the middle does not change.
		middle := sliceArea(sweeps, (from+to)/2)
		if near := sliceArea(sweeps, at(0.5)); math.Abs(near-middle) < 1e-9*middle {
			sum += middle * (to - from)
			continue
		}
		for k := range n {
			sum += sliceArea(sweeps, at(float64(k)+0.5)) * (at(float64(k+1)) - at(float64(k)))
		}
	}
	return sum
}

func sliceArea(sweeps []sweep, z float64) float64 {
	var sections []geom.Geometry
	for _, w := range sweeps {
		if s := w.slice(z); !s.IsEmpty() {
			sections = append(sections, s)
		}
	}
	if len(sections) == 0 {
		return 0
	}
	return must(geom.UnionMany(sections)).Area()
}

func TestVolumesAgainstGeometryLibrary(t *testing.T) {
	t.Parallel()
	for name, plan := range bothExamples(t) {
		claims := claimsOf(deckOf(t, plan))
		setupOf := map[*proof.Run]*proof.Setup{}
		for i := range claims.Setups {
			for j := range claims.Setups[i].Runs {
				setupOf[&claims.Setups[i].Runs[j]] = &claims.Setups[i]
			}
		}
		cut := 0
		for _, solid := range proof.Carve(plan, claims) {
			var sweeps []sweep
			for _, c := range solid.Runs {
				sweeps = append(sweeps, sweepOf(c, setupOf[c], solid.Piece.Size))
			}
			if len(sweeps) == 0 {
				continue
			}
			cut++
			want := slicedVolume(sweeps)
			assert.InEpsilon(t, want, solid.Removed().MM3, 1e-4, "%s: %s", name, solid.Piece.Name)
		}
		require.Positive(t, cut)
	}
}
