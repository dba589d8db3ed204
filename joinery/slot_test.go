package joinery_test

import (
	"testing"

	. "fencecard/joinery"
	. "fencecard/joinery/measure"
	. "fencecard/joinery/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cleat is a cleat of oak with a slot 10 in from the fixed line.
func cleat(t *testing.T, spoil func(*ScrewSlot)) (*Piece, *Cut) {
	t.Helper()
	oak, _, ok := FindWood("white oak")
	require.True(t, ok)
	s := &ScrewSlot{
		Centre: [2]Setback{{Distance: 4 * Inch, From: Left}, {Distance: 3 * Inch / 4, From: Front}},
		Along:  FrontBack, Screw: 3 * Inch / 16, Head: 3 * Inch / 8, HeadDepth: Inch / 2,
		Move: ScrewMove{From: 10 * Inch},
	}
	if spoil != nil {
		spoil(s)
	}
	p := &Piece{Name: "cleat", Size: Size{20 * Inch, 2 * Inch, Inch}, Grain: LeftRight, Wood: oak}
	return p, &Cut{Kind: &Slot, Name: "top screw", In: Bottom, Slot: s}
}

// White oak, flat-sawn, the screw 10 in from the fixed line, 6.2 to 12.0 %: by
// equation 13-2 and table 13-5 of the Wood Handbook (FPL-GTR-190, 2010)
// 10 x 0.00365 x 5.8 = 0.212 in. So a screw of 3/16 gets 0.399, 13/32 long, and its
// head of 3/8 0.587, 19/32.
func TestASlotIsLongerByTheMovement(t *testing.T) {
	p, c := cleat(t, nil)
	require.Empty(t, c.Lay(p, InchScale))
	require.Len(t, c.Channels, 2)
	head, shank := c.Channels[0], c.Channels[1]
	assert.Equal(t, 13*Inch/32, shank.Hi-shank.Lo)
	assert.Equal(t, 19*Inch/32, head.Hi-head.Lo)
	moves, err := c.Slot.Move.Over(p.Wood)
	require.NoError(t, err)
	assert.InDelta(t, 10*0.00365*5.8, moves.Inches(), 0.005)
	for _, ch := range c.Channels {
		assert.Equal(t, 3*Inch/2, ch.Lo+ch.Hi, "half of it each way")
		assert.Equal(t, 4*Inch, ch.Setback+ch.Width/2, "on one centre line")
		assert.True(t, InchScale.On(ch.Lo), "a line that a rule shows")
		assert.Equal(t, Bottom, ch.Down)
		assert.Equal(t, Left, ch.Near)
		assert.Equal(t, FrontBack, ch.Run())
	}
	assert.Equal(t, Inch/2, head.Depth)
	assert.Equal(t, Inch, shank.Depth)
	assert.Equal(t, Recess{Inch / 2, 3 * Inch / 8, 3 * Inch / 32}, shank.Recess)
}

// For any movement both are long enough, and no longer than the scale asks.
func TestNoSlotIsShortOrNeedlesslyLong(t *testing.T) {
	for _, scale := range []Scale{InchScale, DefaultScale(Millimetres)} {
		for moves := Length(1); moves < Inch/2; moves += Inch/997 + 1 {
			p, c := cleat(t, func(s *ScrewSlot) { s.Move = ScrewMove{Whole: moves} })
			require.Empty(t, c.Lay(p, scale))
			for _, ch := range c.Channels {
				over := ch.Hi - ch.Lo - ch.Width - moves
				assert.GreaterOrEqual(t, over, Length(0))
				assert.Less(t, over, 2*scale.Division)
			}
		}
	}
}

// The movement is of the board that is named, else of the piece's own wood.
func TestTheBoardMayBeOfAnotherWood(t *testing.T) {
	cherry, _, ok := FindWood("black cherry")
	require.True(t, ok)
	p, c := cleat(t, func(s *ScrewSlot) { s.Move.Board = &cherry })
	moves, err := c.Slot.Move.Over(p.Wood)
	require.NoError(t, err)
	assert.InDelta(t, 10*0.00248*5.8, moves.Inches(), 0.004, "table 13-5: CT of black cherry")
	unknown, err := ScrewMove{From: 10 * Inch}.Over(Wood{})
	require.NoError(t, err)
	assert.InDelta(t, 10*0.00431*5.8, unknown.Inches(), 0.006, "American beech stands in for a wood that is not named")
}

// At the driest the screw stands at one end of its way, at the dampest at the
// other; what is put together wetter than any season widens the slot.
func TestWhereTheScrewGoes(t *testing.T) {
	oak, _, _ := FindWood("white oak")
	dry, damp, err := DefaultClimate.Moistures()
	require.NoError(t, err)
	at := func(moisture float64) (whole, place Length) {
		climate := DefaultClimate
		climate.Assembly = moisture
		m := ScrewMove{From: 10 * Inch, Climate: climate}
		whole, err := m.Over(oak)
		require.NoError(t, err)
		place, known := m.Place(oak)
		assert.True(t, known)
		return whole, place
	}
	whole, place := at(dry)
	assert.InDelta(t, -float64(whole)/2, float64(place), 2)
	_, place = at((dry + damp) / 2)
	assert.InDelta(t, 0, float64(place), 2)
	_, place = at(damp)
	assert.InDelta(t, float64(whole)/2, float64(place), 2)
	_, place = at(8)
	assert.InDelta(t, 10*0.00365*(8-(6.2+12.0)/2), place.Inches(), 0.004)
	wetter, place := at(14)
	assert.InDelta(t, 10*0.00365*(14-6.2), wetter.Inches(), 0.005)
	assert.InDelta(t, float64(wetter)/2, float64(place), 2)
	_, known := ScrewMove{From: 10 * Inch}.Place(oak)
	assert.False(t, known, "the moisture at assembly is not said")
	_, known = ScrewMove{Whole: Inch / 4, Climate: Climate{Assembly: 8}}.Place(oak)
	assert.False(t, known, "nothing is known of the board")
}

func TestSlotFaults(t *testing.T) {
	mdf, _, _ := FindWood("MDF")
	for name, c := range map[string]struct {
		spoil func(*ScrewSlot)
		says  string
	}{
		"at the edge":         {func(s *ScrewSlot) { s.Centre[1].Distance = 19 * Inch / 64 }, "leaves nothing at the front"},
		"beyond the edge":     {func(s *ScrewSlot) { s.Centre[1].Distance = Inch / 4 }, "would run 3/64 in out at the front"},
		"beyond the other":    {func(s *ScrewSlot) { s.Centre[1].Distance = 2*Inch - Inch/4 }, "out at the back"},
		"outside":             {func(s *ScrewSlot) { s.Centre[0].Distance = 21 * Inch }, "out at the right"},
		"wide at the end":     {func(s *ScrewSlot) { s.Centre[0].Distance = Inch / 8 }, "3/8 in wide and would run 1/16 in out at the left"},
		"twice one dimension": {func(s *ScrewSlot) { s.Centre[1] = Setback{Distance: Inch, From: Right} }, "measures the centre twice left-right"},
		"from where it goes":  {func(s *ScrewSlot) { s.Centre[1].From = Top }, "opposite the side the bit enters"},
		"the way it is deep":  {func(s *ScrewSlot) { s.Along = TopBottom }, "cannot run top-bottom"},
		"head too narrow":     {func(s *ScrewSlot) { s.Head = s.Screw }, "the head would go through"},
		"head too deep":       {func(s *ScrewSlot) { s.HeadDepth = Inch }, "bears on nothing"},
		"a still board":       {func(s *ScrewSlot) { s.Move.Board = &mdf }, "does not move with the seasons"},
		"a wide board":        {func(s *ScrewSlot) { s.Move.From = 100 * Inch }, "out at the front"},
	} {
		p, cut := cleat(t, c.spoil)
		faults := cut.Lay(p, InchScale)
		require.Len(t, faults, 1, name)
		assert.Contains(t, faults[0].Problem, c.says, name)
		assert.NotEmpty(t, faults[0].Remedy, name)
		assert.Empty(t, cut.Channels, name)
	}
}

// A mirrored slot is the same one seen in the mirror, and the first one stays.
func TestAMirroredSlot(t *testing.T) {
	p, c := cleat(t, nil)
	require.Empty(t, c.Lay(p, InchScale))
	p.Cuts = []Cut{*c}
	for _, d := range Dimensions {
		m := p.Mirrored("other", d, InchScale)
		require.Len(t, m.Cuts[0].Channels, 2)
		again := m.Mirrored("cleat", d, InchScale)
		assert.Equal(t, p.Cuts[0].Channels, again.Cuts[0].Channels)
		assert.Equal(t, Left, p.Cuts[0].Slot.Centre[0].From)
	}
	across := p.Mirrored("other", LeftRight, InchScale)
	assert.Equal(t, Right, across.Cuts[0].Channels[0].Near)
}
