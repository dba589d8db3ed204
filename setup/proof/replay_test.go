package proof_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/deckfile"
	"fencecard/setup/deck"
)

// The replay knows nothing of the packages that make or prove runs: it reads
// the numbers of the JSON deck, moves a disc from start to stop with the
// geometry library github.com/peterstace/simplefeatures (convex hulls, unions
// and intersections of plane shapes), and lays the slot on the plan's cut.

type replayLength struct {
	MM float64 `json:"mm"`
}

type replayDeck struct {
	Setups []struct {
		Bit   struct{ Diameter replayLength }
		Fence struct {
			ToCentre replayLength `json:"to_centre"`
		}
		Runs []replayRun
	}
}

type replayRun struct {
	Piece, Cut, Part, Down, Fence, Leads, Begin, End string
	Start, Stop                                      *struct {
		LeadPastCentre replayLength `json:"lead_past_centre"`
	}
	Heights []replayLength
	Nibble  *struct {
		Passes   int
		DrawBack replayLength `json:"draw_back"`
	}
}

const (
	closeEnough = 0.001 // mm, for walls and ends
	fewCorners  = 32    // of the polygon that stands for a disc, a multiple of 4
)

// disc is a polygon on a circle, with corners at its four quarters.
func disc(x, y, r float64, corners int) []geom.Point {
	var points []geom.Point
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		at := geom.XY{X: x + r*cos, Y: y + r*sin}
		points = append(points, geom.Coordinates{XY: at, Type: geom.DimXY}.AsPoint())
	}
	return points
}

// swept is the room of a disc moved from one place to another.
func swept(x0, x1, y, r float64) geom.Geometry {
	return geom.NewMultiPoint(append(disc(x0, y, r, fewCorners), disc(x1, y, r, fewCorners)...)).ConvexHull()
}

func rectangle(x0, y0, x1, y1 float64) geom.Geometry {
	return geom.NewEnvelope(geom.XY{X: x0, Y: y0}, geom.XY{X: x1, Y: y1}).AsGeometry()
}

// axis is a side as a direction, from the definition of the axes: X points
// right, Y back, Z to the top.
var axis = map[string][3]int{
	"left": {-1, 0, 0}, "right": {1, 0, 0}, "front": {0, -1, 0}, "back": {0, 1, 0}, "bottom": {0, 0, -1}, "top": {0, 0, 1},
}

// slotPlan is a cut of the plan and the slots that runs make for it in the plane of the side that is down, from the
// low sides: x along the feed, y from wall to wall.
type slotPlan struct {
	size    joinery.Size
	channel joinery.Channel
	slots   []geom.Geometry
	radius  float64
	depth   float64
}

func replay(t *testing.T, plan *joinery.Plan, data []byte) {
	t.Helper()
	var deck replayDeck
	require.NoError(t, json.Unmarshal(data, &deck))
	type key struct{ piece, cut, part, down string }
	slots := map[key]*slotPlan{}
	for _, p := range plan.Pieces {
		for _, c := range p.Cuts {
			for _, ch := range c.Channels {
				slots[key{p.Name, c.Name, ch.Part, ch.Down.String()}] = &slotPlan{size: p.Size, channel: ch}
			}
		}
	}
	for _, s := range deck.Setups {
		for _, c := range s.Runs {
			slot := slots[key{c.Piece, c.Cut, c.Part, c.Down}]
			require.NotNil(t, slot, "%s %s", c.Piece, c.Cut)
			slot.run(t, c, s.Fence.ToCentre.MM, s.Bit.Diameter.MM/2)
		}
	}
	for k, slot := range slots {
		slot.check(t, k.piece+" "+k.cut+" "+k.part+" "+k.down)
	}
}

// run moves the disc as one run says.
func (s *slotPlan) run(t *testing.T, c replayRun, centre, r float64) {
	down, fence, lead := axis[c.Down], axis[c.Fence], axis[c.Leads]
	for i := range 3 { // the leading end is fence x down
		j, k := (i+1)%3, (i+2)%3
		require.Equal(t, lead[i], fence[j]*down[k]-fence[k]*down[j], "leading end")
	}
	long := s.size[s.channel.Run()].Millimetres()
	across := s.size.Between(s.channel.Near).Millimetres()
	from, to := -2*r, long+2*r
	if c.Begin == "drop" {
		from = c.Start.LeadPastCentre.MM
	}
	if c.End == "lift" {
		to = c.Stop.LeadPastCentre.MM
	}
	if lead[0]+lead[1]+lead[2] > 0 { // measured from the high side
		from, to = long-to, long-from
	}
	y := centre
	if fence[0]+fence[1]+fence[2] > 0 {
		y = across - centre
	}
	s.slots = append(s.slots, swept(from, to, y, r))
	if n := c.Nibble; n != nil {
		s.nibble(t, from, to, y, r, n.Passes, n.DrawBack.MM, y == centre)
	}
	s.radius, s.depth = r, c.Heights[len(c.Heights)-1].MM
}

// nibble moves the disc as often as a run says beside its last place, which is
// at y: the work drawn away from the fence, the first time the furthest.
func (s *slotPlan) nibble(t *testing.T, from, to, y, r float64, passes int, back float64, low bool) {
	require.Greater(t, passes, 1)
	for i := range passes - 1 {
		at := y - back*float64(passes-1-i)/float64(passes-1)
		if !low {
			at = 2*y - at
		}
		s.slots = append(s.slots, swept(from, to, at, r))
	}
}

// check lays all runs of a cut together on the plan's rectangle.
func (s *slotPlan) check(t *testing.T, name string) {
	require.NotEmpty(t, s.slots, name)
	all, err := geom.UnionMany(s.slots)
	require.NoError(t, err, name)
	ch := s.channel
	if ch.Near.High() {
		ch = ch.Reversed(s.size)
	}
	long, across := s.size[ch.Run()], s.size.Between(ch.Near)
	low, high, ok := all.Envelope().MinMaxXYs()
	require.True(t, ok, name)
	for _, edge := range []struct {
		what       string
		got        float64
		want, open measure.Length
		outward    float64
	}{
		{"low end", low.X, ch.Lo, 0, -1},
		{"high end", high.X, ch.Hi, long, 1},
		{"low wall", low.Y, ch.Setback, 0, -1},
		{"high wall", high.Y, ch.Setback + ch.Width, across, 1},
	} {
		if edge.want == edge.open { // the bit may run out here
			assert.GreaterOrEqual(t, edge.outward*(edge.got-edge.want.Millimetres()), -closeEnough, "%s: %s", name, edge.what)
			continue
		}
		assert.InDelta(t, edge.want.Millimetres(), edge.got, closeEnough, "%s: %s", name, edge.what)
	}
	assert.InDelta(t, ch.Depth.Millimetres(), s.depth, closeEnough, "%s: depth", name)
	s.checkCleared(t, name, all, ch, long)
}

// checkCleared makes sure that no wood stands between the runs: all of the
// channel but for its round ends lies in the slot.
func (s *slotPlan) checkCleared(t *testing.T, name string, all geom.Geometry, ch joinery.Channel, long measure.Length) {
	x0, x1 := ch.Lo.Millimetres(), ch.Hi.Millimetres()
	if ch.Lo > 0 {
		x0 += s.radius
	}
	if ch.Hi < long {
		x1 -= s.radius
	}
	if x1-x0 < closeEnough {
		return
	}
	inner := rectangle(x0, ch.Setback.Millimetres(), x1, (ch.Setback + ch.Width).Millimetres())
	cleared, err := geom.Intersection(inner, all)
	require.NoError(t, err, name)
	assert.InDelta(t, inner.Area(), cleared.Area(), closeEnough*(x1-x0), "%s: wood left standing", name)
}

func TestReplay(t *testing.T) {
	t.Parallel()
	for name, plan := range bothExamples(t) {
		replayDeckOf(t, name, deckOf(t, plan))
	}
	for seed := range uint64(200) {
		replayDeckOf(t, fmt.Sprint("seed ", seed), deckFor(t, newDice(seed, 256).plan(2), seed))
	}
}

func replayDeckOf(t *testing.T, name string, d *deck.Deck) {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, deckfile.Write(&b, d), name)
	replay(t, d.Plan, b.Bytes())
	if t.Failed() {
		t.Fatal(name)
	}
}
