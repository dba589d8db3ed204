package planfile_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Frames of four legs and four rails are made at random from joints, put together
// in space, and sliced with the geometry library
// github.com/peterstace/simplefeatures, which knows nothing of joints: every
// tenon lies in its mortise with the play at its cheeks and the room at its
// edges, the wood of leg and rail touches at the shoulders and never overlaps.

// units is a length in 128ths of an inch: whole numbers, so that the library's
// arithmetic in floats is exact.
func units(l measure.Length) float64 { return float64(l) / float64(in/128) }

// placed is a piece in its place in the frame.
type placed struct {
	*joinery.Piece
	at [3]float64 // of its low corner
}

// boxOfChannel is the room of a channel from the low corner of its piece, found
// anew from what the fields of a channel mean.
func boxOfChannel(c joinery.Channel, size joinery.Size) (lo, hi [3]float64) {
	from := func(side joinery.Side, near, far measure.Length) {
		d := side.Dimension()
		if side == d.High() {
			near, far = size[d]-far, size[d]-near
		}
		lo[d], hi[d] = units(near), units(far)
	}
	from(c.Down, 0, c.Depth)
	from(c.Near, c.Setback, c.Setback+c.Width)
	from(c.Down.Dimension().Third(c.Near.Dimension()).Low(), c.Lo, c.Hi)
	return lo, hi
}

func sheet(lo, hi [3]float64, d int) geom.Geometry {
	x, y := (d+1)%3, (d+2)%3
	return geom.NewEnvelope(geom.XY{X: lo[x], Y: lo[y]}, geom.XY{X: hi[x], Y: hi[y]}).AsGeometry()
}

// slice is the wood of a piece, and the blank, where a plane across a dimension
// cuts them.
func (p placed) slice(t *testing.T, d int, at float64) (wood, blank geom.Geometry) {
	lo, hi := p.at, p.at
	for i := range hi {
		hi[i] += units(p.Size[i])
	}
	blank = sheet(lo, hi, d)
	wood = blank
	for _, cut := range p.Cuts {
		for _, c := range cut.Channels {
			a, b := boxOfChannel(c, p.Size)
			for i := range a {
				a[i], b[i] = a[i]+p.at[i], b[i]+p.at[i]
			}
			if a[d] < at && at < b[d] {
				var err error
				wood, err = geom.Difference(wood, sheet(a, b, d))
				require.NoError(t, err)
			}
		}
	}
	return wood, blank
}

// bounds are the sides of what was sliced.
func bounds(t *testing.T, g geom.Geometry) (lo, hi geom.XY) {
	t.Helper()
	lo, hi, ok := g.Envelope().MinMaxXYs()
	require.True(t, ok)
	return lo, hi
}

// frame is what one random frame is made from, in 64ths of an inch.
type frame struct {
	leg                       [3]int
	opening                   [2]int
	thick, high               int // of the rails
	reveal, down              int
	tenon, shoulder           int
	top, bottom, long, deeper int
	play, room                int
	glue                      bool
	centred, allNamed         bool
}

func randomFrame(r *rand.Rand) frame {
	between := func(lo, hi int) int { return lo + r.IntN(hi-lo+1) }
	f := frame{leg: [3]int{between(96, 200), between(96, 200), between(800, 1800)}, opening: [2]int{between(400, 2200), between(400, 1200)}}
	least := min(f.leg[0], f.leg[1])
	f.thick = between(40, least-24)
	f.high = between(120, 400)
	f.reveal = between(0, least-f.thick-16)
	f.tenon = between(16, f.thick-16)
	f.shoulder = between(8, f.thick-f.tenon-8)
	f.down = between(0, 40)
	f.top, f.bottom = between(16, 40), between(16, 40)
	f.deeper = between(1, 4)
	f.centred = r.IntN(3) == 0
	far := f.reveal + f.shoulder + f.tenon // of the other rail's mortise, which this one must not meet
	if f.centred {
		far = f.reveal + (f.thick+f.tenon+1)/2
	}
	if least-f.deeper-far < 8 {
		return randomFrame(r)
	}
	f.long = between(4, least-f.deeper-far-2)
	f.play = 2 * between(0, 2)
	f.room = 2 * between(0, 6)
	f.glue, f.allNamed = r.IntN(2) == 0, r.IntN(2) == 0
	return f
}

func (f frame) plan() string {
	l := func(n int) string { return measure.InchScale.Format(measure.Length(n) * in / 64) }
	joint := func(name, rail, ends, into, side, along string) string {
		across := fmt.Sprintf("%s: %s %s", side, l(f.reveal), along)
		if f.reveal == 0 {
			across = side + ": flush"
		}
		shoulder := fmt.Sprintf("%s: %s, ", side, l(f.shoulder))
		if f.centred {
			shoulder = ""
		}
		text := fmt.Sprintf("  - mortise and tenon: %s\n    tenon: %s / %s\n    into: %s\n    place: {top: %s down, %s}\n    thickness: %s\n    shoulders: {%stop: %s, bottom: %s}\n    length: %s\n    deeper: %s\n",
			name, rail, ends, into, l(f.down), across, l(f.tenon), shoulder, l(f.top), l(f.bottom), l(f.long), l(f.deeper))
		if f.play > 0 {
			text += "    play: " + l(f.play) + "\n"
		}
		if f.room > 0 {
			text += "    room: " + l(f.room) + "\n"
			if f.glue {
				text += "    glue: top\n"
			}
		}
		return text
	}
	front := joint("front", "front rail", "left", "front left leg / right", "front", "back")
	end := joint("end", "end rail", "front, back", "front left leg / back, back left leg / front", "left", "right")
	if f.allNamed {
		front = joint("front", "front rail", "left, right", "front left leg / right, front right leg / left", "front", "back")
	}
	return fmt.Sprintf(`unit: in
wood: white oak
pieces:
  - {piece: front left leg, size: {left-right: %s, front-back: %s, top-bottom: %s}, grain: top-bottom}
  - {piece: front right leg, mirror: {of: front left leg, across: left-right}}
  - {piece: back left leg, mirror: {of: front left leg, across: front-back}}
  - {piece: back right leg, mirror: {of: front left leg, across: [left-right, front-back]}}
  - {piece: front rail, size: {left-right: %s between shoulders, front-back: %s, top-bottom: %s}}
  - {piece: back rail, mirror: {of: front rail, across: front-back}}
  - {piece: end rail, count: 2, size: {left-right: %s, front-back: %s between shoulders, top-bottom: %s}}
joints:
`, l(f.leg[0]), l(f.leg[1]), l(f.leg[2]), l(f.opening[0]), l(f.thick), l(f.high), l(f.thick), l(f.opening[1]), l(f.high)) + front + end
}

func TestRandomFramesGoTogether(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 500))
	for range 500 {
		f := randomFrame(random)
		text := f.plan()
		plan := read(t, "frame.yaml", []byte(text))
		wide := func(n int) float64 { return float64(2 * n) }
		piece := func(name string, x, y, z float64) placed {
			p := plan.Piece(name)
			require.NotNil(t, p)
			return placed{p, [3]float64{x, y, z}}
		}
		farX, farY := wide(f.leg[0]+f.opening[0]), wide(f.leg[1]+f.opening[1])
		z := wide(f.leg[2] - f.down - f.high)
		right, back := farX+wide(f.leg[0]), farY+wide(f.leg[1]) // the outsides of the frame
		rails := []struct {
			placed
			along int
			legs  [2]placed
		}{
			{piece("front rail", wide(f.leg[0]-f.long), wide(f.reveal), z), 0, [2]placed{piece("front left leg", 0, 0, 0), piece("front right leg", farX, 0, 0)}},
			{piece("back rail", wide(f.leg[0]-f.long), back-wide(f.reveal+f.thick), z), 0, [2]placed{piece("back left leg", 0, farY, 0), piece("back right leg", farX, farY, 0)}},
			{piece("end rail", wide(f.reveal), wide(f.leg[1]-f.long), z), 1, [2]placed{piece("front left leg", 0, 0, 0), piece("back left leg", 0, farY, 0)}},
		}
		for _, rail := range rails {
			long := wide(f.opening[rail.along] + 2*f.long)
			require.InDelta(t, long, units(rail.Size[rail.along]), 1e-6, text)
			// Each end in half of the frames: slicing takes longer than reading.
			for end, leg := range rail.legs {
				if random.IntN(2) == 0 {
					continue
				}
				middle := rail.at[rail.along] + wide(f.long)/2
				if end == 1 {
					middle = rail.at[rail.along] + long - wide(f.long)/2
				}
				f.checkAcross(t, rail.placed, leg, rail.along, middle)
				f.checkFromAbove(t, rail.placed, leg)
			}
		}
		// The second end rail is the first one turned about: the frame closes.
		if !f.centred {
			continue
		}
		second := piece("end rail", right-wide(f.reveal+f.thick), wide(f.leg[1]-f.long), z)
		f.checkFromAbove(t, second, piece("front right leg", farX, 0, 0))
	}
}

// checkAcross slices through the middle of a tenon, across it.
func (f frame) checkAcross(t *testing.T, rail, leg placed, along int, at float64) {
	tenon, _ := rail.slice(t, along, at)
	wood, blank := leg.slice(t, along, at)
	hole, err := geom.Difference(blank, wood)
	require.NoError(t, err)
	outside, err := geom.Difference(tenon, hole)
	require.NoError(t, err)
	assert.Less(t, outside.Area(), 1e-6, "the tenon lies in its mortise")
	tenonLo, tenonHi := bounds(t, tenon)
	holeLo, holeHi := bounds(t, hole)
	cheek, low, high := float64(f.play), float64(f.room), float64(f.room)
	if f.glue {
		low, high = low+high, 0
	}
	// The axes of a slice across x are y, z, of one across y they are z, x.
	gaps := [4]float64{tenonLo.X - holeLo.X, holeHi.X - tenonHi.X, tenonLo.Y - holeLo.Y, holeHi.Y - tenonHi.Y}
	want := [4]float64{cheek, cheek, low, high}
	if along == 1 {
		want = [4]float64{low, high, cheek, cheek}
	}
	for i := range gaps {
		assert.InDelta(t, want[i], gaps[i], 1e-6, "gap %d of %v in %s", i, f, leg.Name)
	}
}

// checkFromAbove slices level through a tenon: leg and rail touch at the
// shoulders and nowhere overlap.
func (f frame) checkFromAbove(t *testing.T, rail, leg placed) {
	const top = 2
	at := rail.at[top] + units(rail.Size[top])/2
	a, _ := rail.slice(t, top, at)
	b, blank := leg.slice(t, top, at)
	left, err := geom.Difference(a, b)
	require.NoError(t, err)
	assert.InDelta(t, a.Area(), left.Area(), 1e-6, "two pieces in one place: %v", f)
	gap, ok := geom.Distance(a, b)
	require.True(t, ok)
	assert.Less(t, gap, 1e-6, "the shoulders are tight")
	out, err := geom.Difference(a, blank)
	require.NoError(t, err)
	assert.InDelta(t, 2*(f.tenon-f.play)*2*f.long, a.Area()-out.Area(), 1e-3, "what is inside the leg is the tenon")
}
