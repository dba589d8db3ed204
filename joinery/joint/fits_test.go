package joint_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// grain is the side of the little blocks that pieces are sawn into here: every length
// of these tests is so many of them.
const grain = measure.Inch / 8

func blocks(n int) measure.Length { return measure.Length(n) * grain }

type block [3]int

// wood is a piece in blocks: true where it is, false where a cut took it.
func wood(t *testing.T, p *joinery.Piece, cuts []joinery.Cut) map[block]bool {
	t.Helper()
	left := map[block]bool{}
	var size block
	for d, l := range p.Size {
		size[d] = int(l / grain)
	}
	var each func(d int, at block)
	each = func(d int, at block) {
		if d == 3 {
			left[at] = true
			return
		}
		for at[d] = 0; at[d] < size[d]; at[d]++ {
			each(d+1, at)
		}
	}
	each(0, block{})
	for i := range cuts {
		require.Empty(t, cuts[i].Lay(p, measure.InchScale), "%+v", cuts[i])
		for _, c := range cuts[i].Channels {
			var lo, hi block
			put := func(from joinery.Side, near, far measure.Length) {
				d := from.Dimension()
				if from.High() {
					near, far = p.Size[d]-far, p.Size[d]-near
				}
				lo[d], hi[d] = int(near/grain), int(far/grain)
			}
			put(c.Down, 0, c.Depth)
			put(c.Near, c.Setback, c.Setback+c.Width)
			put(c.Run().Low(), c.Lo, c.Hi)
			for at := range left {
				if at[0] >= lo[0] && at[0] < hi[0] && at[1] >= lo[1] && at[1] < hi[1] && at[2] >= lo[2] && at[2] < hi[2] {
					left[at] = false
				}
			}
		}
	}
	return left
}

// together puts the entering piece where the meeting and the joint say, and counts the
// blocks that both have (which would not go together), the blocks cut out of the
// receiving piece that stay empty, and those cut out of the entering one that do.
func together(t *testing.T, m joint.Meeting, h joint.Halves, flat bool) (both, emptyInto, emptyPart int) {
	t.Helper()
	into, part := wood(t, m.Into, h.Into), wood(t, m.Part, h.Part)
	var at block
	for d, l := range m.Offsets() {
		at[d] = int(l / grain)
	}
	d := m.Side.Dimension()
	enters := h.Enters
	if flat { // the one comes flush with the face of the other
		enters = m.Part.Size[d]
	}
	at[d] = int((enters - m.Part.Size[d]) / grain)
	if m.Side.High() {
		at[d] = int((m.Into.Size[d] - enters) / grain)
	}
	if flat && m.End != joinery.NoSide { // an end that lies on the other ends at its far side
		e := m.End.Dimension()
		if at[e] = 0; m.End.High() {
			at[e] = int((m.Into.Size[e] - m.Part.Size[e]) / grain)
		}
	}
	place := func(b block) block { return block{b[0] + at[0], b[1] + at[1], b[2] + at[2]} }
	filled := map[block]bool{}
	for b, is := range part {
		to := place(b)
		filled[to] = is
		there, inside := into[to]
		switch {
		case is && there:
			both++
		case !is && inside && !there:
			emptyPart++
		}
	}
	for b, is := range into {
		if !is && !filled[b] {
			emptyInto++
		}
	}
	return both, emptyInto, emptyPart
}

func upright(wide, deep, high int) joinery.Piece {
	return joinery.Piece{Name: "leg", Size: joinery.Size{blocks(wide), blocks(deep), blocks(high)}, Grain: joinery.TopBottom}
}

func lying(long, deep, high int) joinery.Piece {
	return joinery.Piece{Name: "rail", Size: joinery.Size{blocks(long), blocks(deep), blocks(high)}, Grain: joinery.LeftRight}
}

func inset(side joinery.Side, n int) joint.Inset { return joint.Inset{Side: side, By: blocks(n)} }

// Whatever the sizes, sides and shoulders: what is cut out of the one half is what is
// left of the other, block for block. That holds for joints without play and room.
func TestTheHalvesFitEachOther(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	n := func(least, most int) int { return least + random.IntN(most-least+1) }
	either := func(a, b joinery.Side) joinery.Side {
		if random.IntN(2) == 0 {
			return a
		}
		return b
	}
	for name, some := range map[string]func() (*joint.Kind, joint.Meeting, joint.Words){
		"mortise and tenon": func() (*joint.Kind, joint.Meeting, joint.Words) {
			leg, rail := upright(n(6, 9), n(8, 10), 20), lying(24, n(5, 8), n(6, 9))
			side := either(joinery.Left, joinery.Right)
			thick := n(1, int(rail.Size[1]/grain))
			w := joint.Words{Thickness: blocks(thick), Length: blocks(n(1, 4))}
			if spare := int(rail.Size[1]/grain) - thick; spare%2 > 0 || random.IntN(2) == 0 {
				w.Shoulders = append(w.Shoulders, joinery.Cheek{Side: either(joinery.Front, joinery.Back), Depth: blocks(n(0, spare))})
			}
			for _, s := range []joinery.Side{joinery.Top, joinery.Bottom} {
				w.Shoulders = append(w.Shoulders, joinery.Cheek{Side: s, Depth: blocks(n(0, 2))})
			}
			if random.IntN(4) == 0 {
				w.Length, w.Through = 0, true
			}
			return &joint.MortiseAndTenon, joint.Meeting{Part: &rail, End: side.Opposite(), Into: &leg, Side: side, Place: joint.Place{Sides: []joint.Inset{
				inset(either(joinery.Top, joinery.Bottom), n(1, 5)), inset(either(joinery.Front, joinery.Back), 0)}}}, w
		},
		"bridle": func() (*joint.Kind, joint.Meeting, joint.Words) {
			stile, rail := upright(n(5, 8), 6, 20), lying(24, 6, n(4, 8))
			side := either(joinery.Left, joinery.Right)
			return &joint.Bridle, joint.Meeting{Part: &rail, End: side.Opposite(), Into: &stile, Side: side, Place: joint.Place{
				Sides: []joint.Inset{inset(either(joinery.Top, joinery.Bottom), 0)}, Centred: [3]bool{false, true, false}}}, joint.Words{Thickness: blocks(2 * n(1, 2))}
		},
		"housing": func() (*joint.Kind, joint.Meeting, joint.Words) {
			board, shelf := upright(6, n(10, 14), 24), lying(24, n(8, 10), n(3, 5))
			side := either(joinery.Left, joinery.Right)
			w := joint.Words{Depth: blocks(n(1, 3))}
			at, in := either(joinery.Front, joinery.Back), n(0, 2)
			if random.IntN(2) == 0 {
				w.Stopped = []joint.Line{{Distance: blocks(n(in, 4)), From: at}}
			}
			if random.IntN(2) == 0 {
				w.Tongue = joint.Line{Distance: blocks(n(1, 2)), From: either(joinery.Top, joinery.Bottom)}
				w.Stopped = nil // a notch across a tongue is one block twice
			}
			return &joint.Housing, joint.Meeting{Part: &shelf, End: side.Opposite(), Into: &board, Side: side, Place: joint.Place{Sides: []joint.Inset{
				inset(either(joinery.Top, joinery.Bottom), n(1, 6)), inset(at, in)}}}, w
		},
		"panel": func() (*joint.Kind, joint.Meeting, joint.Words) {
			stile, panel := upright(8, 6, 20), lying(12, n(2, 4), 20)
			side := either(joinery.Left, joinery.Right)
			face := either(joinery.Front, joinery.Back)
			w := joint.Words{Depth: blocks(n(1, 3)), Groove: panel.Size[1]}
			if random.IntN(2) == 0 {
				w.Groove = blocks(n(1, 1))
				w.Tongue = joint.Line{Distance: w.Groove, From: either(joinery.Front, joinery.Back)}
			}
			return &joint.Panel, joint.Meeting{Part: &panel, End: side.Opposite(), Into: &stile, Side: side, Place: joint.Place{Sides: []joint.Inset{inset(face, n(0, 2))}}}, w
		},
		"halving": func() (*joint.Kind, joint.Meeting, joint.Words) {
			stile, rail := upright(n(4, 6), n(4, 6), 20), lying(24, n(4, 6), n(4, 6))
			side := either(joinery.Front, joinery.Back)
			m := joint.Meeting{Part: &rail, End: either(joinery.Left, joinery.Right), Into: &stile, Side: side, Place: joint.Place{Sides: []joint.Inset{inset(either(joinery.Top, joinery.Bottom), n(0, 6))}}}
			if random.IntN(3) == 0 {
				m.End = joinery.NoSide
				m.Place.Sides = append(m.Place.Sides, inset(either(joinery.Left, joinery.Right), -n(1, 9)))
			}
			return &joint.Halving, m, joint.Words{Depth: blocks(n(1, 3))}
		},
	} {
		made := 0
		for range 300 {
			k, m, w := some()
			halves, faults := k.Make(m, w, measure.InchScale, timber.DefaultClimate)
			if len(faults) > 0 {
				continue
			}
			made++
			both, emptyInto, emptyPart := together(t, m, halves, k.Flat)
			if !assert.Zero(t, both, "%s: so many blocks are in both halves\n%+v\n%+v", name, m, w) ||
				!assert.Zero(t, emptyInto, "%s: so many blocks of the receiving half stay empty\n%+v\n%+v", name, m, w) ||
				!assert.Zero(t, emptyPart, "%s: so many blocks of the entering half stay empty\n%+v\n%+v", name, m, w) {
				break
			}
		}
		assert.Greater(t, made, 250, "%s: most of these can be made", name)
	}
}
