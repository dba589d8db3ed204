package joinery

import (
	"math/rand/v2"
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// everyKind is a piece 8 x 6 x 20 with a cut of each kind, none of them the
// same seen in a mirror.
func everyKind(t *testing.T) *Piece {
	p := &Piece{Name: "post", Count: 2, Size: Size{8 * measure.Inch, 6 * measure.Inch, 20 * measure.Inch}, Grain: TopBottom}
	p.Cuts = []Cut{
		{Kind: &Mortise, Name: "a", In: Right, Width: measure.Inch, Depth: 2 * measure.Inch, Start: Setback{Distance: measure.Inch, From: Front}, Span: Span{From: measure.Inch, To: 4 * measure.Inch, Side: Top}},
		{Kind: &Groove, Name: "b", In: Back, Width: measure.Inch, Depth: measure.Inch, Start: Setback{Distance: measure.Inch, From: Left}, Fence: Fencing{Side: Left}},
		{Kind: &Dado, Name: "c", In: Front, Width: measure.Inch, Depth: measure.Inch, Start: Setback{Distance: 3 * measure.Inch, From: Bottom}, Span: Span{To: 5 * measure.Inch, Side: Left}},
		{Kind: &Groove, Name: "d", In: Left, Width: measure.Inch, Depth: measure.Inch, Start: Setback{Centred: true}},
		{Kind: &Rabbet, Name: "e", In: Back, Along: Right, Width: measure.Inch, Depth: 2 * measure.Inch},
		{Kind: &Lap, Name: "f", In: Front, At: Bottom, Length: 2 * measure.Inch, Depth: 3 * measure.Inch},
		{Kind: &Tenon, Name: "g", At: Top, Length: measure.Inch, Cheeks: []Cheek{{Left, measure.Inch}, {Right, 2 * measure.Inch}, {Front, measure.Inch}}},
	}
	require.Empty(t, p.LayAll(measure.InchScale))
	return p
}

func (b box) mirrored(across Dimension, size Size) box {
	b[across] = [2]measure.Length{size[across] - b[across][1], size[across] - b[across][0]}
	return b
}

func boxes(p *Piece) map[string][]box {
	all := map[string][]box{}
	for _, c := range p.Cuts {
		for _, ch := range c.Channels {
			all[c.Name] = append(all[c.Name], boxOf(ch, p.Size))
		}
	}
	return all
}

// The wood a mirrored cut takes is the mirror image of what the cut takes.
func TestMirroredCutsTakeTheMirroredWood(t *testing.T) {
	p := everyKind(t)
	for _, across := range Dimensions {
		m := p.Mirrored("other", across, measure.InchScale)
		got := boxes(&m)
		for name, want := range boxes(p) {
			for i := range want {
				want[i] = want[i].mirrored(across, p.Size)
			}
			assert.ElementsMatch(t, want, got[name], "%s across %s", name, across)
		}
		assert.Equal(t, "other", m.Name)
		assert.Equal(t, "post", m.MirrorOf)
		assert.Equal(t, p.Size, m.Size)
	}
}

// Twice in the same mirror is the piece itself; which of two mirrors comes
// first makes no difference.
func TestMirrorsOfMirrors(t *testing.T) {
	p := everyKind(t)
	for _, a := range Dimensions {
		for _, b := range Dimensions {
			once, other := p.Mirrored("m", a, measure.InchScale), p.Mirrored("m", b, measure.InchScale)
			twice, swapped := once.Mirrored("m", b, measure.InchScale), other.Mirrored("m", a, measure.InchScale)
			assert.Equal(t, boxes(&twice), boxes(&swapped), "%s, %s", a, b)
			if a == b {
				assert.Equal(t, boxes(p), boxes(&twice))
			}
		}
	}
	assert.Equal(t, Right, p.Cuts[0].In, "the piece itself stays as it is")
}

// A mirrored cut leads with the other end, unless the mirror swaps its ends:
// nothing but the cross product tells left-hand pieces from right-hand ones.
func TestMirrorSwapsTheLeadingEnd(t *testing.T) {
	p := everyKind(t)
	for _, across := range Dimensions {
		m := p.Mirrored("other", across, measure.InchScale)
		for i, c := range p.Cuts {
			for j, ch := range c.Channels {
				mirrored := m.Cuts[i].Channels[j]
				if ch.Part != "" { // the cheeks may come in another order
					continue
				}
				lead, seen := ch.Near.Cross(ch.Down), mirrored.Near.Cross(mirrored.Down)
				image := lead
				if lead.Dimension() == across {
					image = lead.Opposite()
				}
				if c.Start.Centred {
					continue // measured from the low side of either
				}
				assert.Equal(t, image.Opposite(), seen, "%s across %s", c.Name, across)
			}
		}
	}
}

// A channel measured from the far side takes the same wood.
func TestReversedTakesTheSameWood(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	for range 2_000 {
		size := Size{measure.Inch + measure.Length(random.Int64N(int64(measure.Foot))), measure.Inch + measure.Length(random.Int64N(int64(measure.Foot))), measure.Inch + measure.Length(random.Int64N(int64(measure.Foot)))}
		down := Sides[random.IntN(6)]
		near := Sides[random.IntN(6)]
		if near.Dimension() == down.Dimension() {
			continue
		}
		c := Channel{Down: down, Near: near, Depth: 1, Hi: measure.Inch, Setback: measure.Length(random.Int64N(int64(measure.Inch / 2))), Width: 1 + measure.Length(random.Int64N(int64(measure.Inch/2)))}
		r := c.Reversed(size)
		require.Equal(t, near.Opposite(), r.Near)
		require.Equal(t, boxOf(c, size), boxOf(r, size))
		require.Equal(t, c, r.Reversed(size))
		require.Equal(t, c.OpenBeside(near, size), r.OpenBeside(near, size))
		require.Equal(t, c.OpenBeside(r.Near, size), r.OpenBeside(r.Near, size))
	}
}
