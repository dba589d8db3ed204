package joinery

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery/measure"
)

// A channel in the bottom of a board 8 x 4 x 2, along its length.
func TestWhereAChannelIsOpen(t *testing.T) {
	const in = measure.Inch
	size := Size{8 * in, 4 * in, 2 * in}
	of := func(setback, width, lo, hi measure.Length) Channel {
		return Channel{Down: Bottom, Near: Front, Setback: setback, Width: width, Depth: in, Lo: lo, Hi: hi}
	}
	for _, test := range []struct {
		channel                        Channel
		left, right, front, back, even bool
	}{
		{of(in, in, in, 7*in), false, false, false, false, false},
		{of(in, 2*in, 0, 7*in), true, false, false, false, true},
		{of(in, 2*in, 1, 8*in), false, true, false, false, true},
		{of(in, 2*in+1, 0, 8*in), true, true, false, false, false},
		{of(0, in, 0, 8*in-1), true, false, true, false, false},
		{of(3*in, in, in, 8*in), false, true, false, true, false},
		{of(0, 4*in, 0, 8*in), true, true, true, true, false},
	} {
		c := test.channel
		for _, at := range []Channel{c, c.Reversed(size)} {
			assert.Equal(t, test.left, at.OpenAt(Left, size), at)
			assert.Equal(t, test.right, at.OpenAt(Right, size), at)
			assert.Equal(t, test.left && test.right, at.EndToEnd(size), at)
			assert.Equal(t, test.front, at.OpenBeside(Front, size), at)
			assert.Equal(t, test.back, at.OpenBeside(Back, size), at)
			assert.Equal(t, test.even, at.InMiddle(size), at)
		}
		assert.Equal(t, c, c.Reversed(size).Reversed(size))
	}
}

// Two bits cut alike whose every measure that shows in the wood is the same, whatever
// they are called and however long they are.
func TestBitsThatCutAlike(t *testing.T) {
	const in = measure.Inch
	drawn := func(reach measure.Length) *Outline {
		return &Outline{Shape: Drawn, Corners: []Corner{{0, in / 8}, {in / 4, reach}}}
	}
	like := Bit{Name: "a", Kind: UpCut, Diameter: in / 2, Cutting: in, Shank: in / 4}
	for name, test := range map[string]struct {
		change func(*Bit)
		alike  bool
	}{
		"itself":             {func(*Bit) {}, true},
		"another name":       {func(b *Bit) { b.Name, b.Cutting, b.Shank, b.Speed = "b", 2*in, in/2, 9000 }, true},
		"measured as it is":  {func(b *Bit) { b.Measured = in / 2 }, true},
		"measured otherwise": {func(b *Bit) { b.Measured = in/2 - 1 }, false},
		"a label, and true":  {func(b *Bit) { b.Diameter, b.Measured = 12*measure.Millimetre, in/2 }, true},
		"another diameter":   {func(b *Bit) { b.Diameter = in }, false},
		"another kind":       {func(b *Bit) { b.Kind = DownCut }, false},
		"with a pilot":       {func(b *Bit) { b.Pilot = in / 4 }, false},
		"with an outline":    {func(b *Bit) { b.Outline = drawn(in) }, false},
	} {
		other := like
		test.change(&other)
		assert.Equal(t, test.alike, like.CutsLike(&other), name)
		assert.Equal(t, test.alike, other.CutsLike(&like), name)
	}
	round := func(r measure.Length) *Outline { return &Outline{Shape: Round, Radius: r} }
	for _, pair := range []struct {
		a, b *Outline
		same bool
	}{
		{nil, nil, true}, {nil, round(in), false}, {round(in), round(in), true}, {round(in), round(in / 2), false},
		{round(in), &Outline{Shape: Hollowed, Radius: in}, false}, {drawn(in), drawn(in), true}, {drawn(in), drawn(in / 2), false},
	} {
		assert.Equal(t, pair.same, pair.a.Same(pair.b))
		assert.Equal(t, pair.same, pair.b.Same(pair.a))
	}
	assert.Equal(t, in/2+2*in, drawn(in).Across(in/2), "the reach stands out on either side of the pilot")
}
