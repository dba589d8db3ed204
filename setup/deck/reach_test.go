package deck_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// TestReach sets the marks of a 17 in leg with a mortise from 1/2 to 3 below
// the end that leads (or, turned, from 14 to 16 1/2), cut with a 3/8 bit.
func TestReach(t *testing.T) {
	const in = measure.Inch
	for _, test := range []struct {
		name            string
		a, b            measure.Length
		infeed, outfeed measure.Length
		start, stop     deck.Reached
	}{
		{"a long fence: the end that is nearer", in / 2, 3 * in, 20 * in, 20 * in,
			deck.Reached{Guide: deck.ByLead, At: -11 * in / 16}, deck.Reached{Guide: deck.ByLead, At: -(2*in + 13*in/16)}},
		{"the nearer end just on the fence", in / 2, 3 * in, 20 * in, 2*in + 13*in/16,
			deck.Reached{Guide: deck.ByLead, At: -11 * in / 16}, deck.Reached{Guide: deck.ByLead, At: -(2*in + 13*in/16)}},
		{"the nearer end a hair off it at the stop", in / 2, 3 * in, 20 * in, 2*in + 13*in/16 - 1,
			deck.Reached{Guide: deck.ByLead, At: -11 * in / 16}, deck.Reached{Guide: deck.ByTail, At: 14*in + 3*in/16}},
		{"both ends as near", 8*in + 5*in/16, 8*in + 11*in/16, 20 * in, 20 * in,
			deck.Reached{Guide: deck.ByTail, At: 8*in + in/2}, deck.Reached{Guide: deck.ByLead, At: -(8*in + in/2)}},
		{"the leading end off it at the stop", 14 * in, 16*in + in/2, 16 * in, 16 * in,
			deck.Reached{Guide: deck.ByTail, At: 2*in + 13*in/16}, deck.Reached{Guide: deck.ByTail, At: 11 * in / 16}},
		{"no end on a short fence", 6 * in, 12 * in, 4 * in, 4 * in,
			deck.Reached{Guide: deck.ByLine, At: -3 * in / 16}, deck.Reached{Guide: deck.ByLine, At: 3 * in / 16}},
		{"a fence nobody measured", in / 2, 3 * in, 0, 0,
			deck.Reached{Guide: deck.ByLead, At: -11 * in / 16}, deck.Reached{Guide: deck.ByLead, At: -(2*in + 13*in/16)}},
		{"an end over the bit is no guide", in / 2, 17*in - in/8, 16 * in, 16 * in,
			deck.Reached{Guide: deck.ByLead, At: -11 * in / 16}, deck.Reached{Guide: deck.ByTail, At: in/8 + 3*in/16}},
	} {
		run := markedCard(test.a, test.b, 17*in)
		fence := joinery.FenceReach{Infeed: test.infeed, Outfeed: test.outfeed}
		assert.Equal(t, test.start, run.Reach(false, fence), test.name)
		assert.Equal(t, test.stop, run.Reach(true, fence), test.name)
	}
}

// markedCard is a card for a cut stopped at both ends, from a to b behind the
// leading end of a piece of a length, with a 3/8 bit.
func markedCard(a, b, length measure.Length) deck.Run {
	bit := joinery.Bit{Diameter: 3 * measure.Inch / 8}
	piece := joinery.Piece{Size: joinery.Size{2 * measure.Inch, 2 * measure.Inch, length}}
	channel := joinery.Channel{Lo: length - b, Hi: length - a}
	run := deck.Step{Bit: &bit, Down: joinery.Right, Fence: joinery.Front}
	return setup.RunOf(&piece, nil, channel, run, measure.InchScale)
}

// A mark set by an end stands on the usable fence and beside the bit, whatever
// the work; only where neither end does is it the layout line.
func TestReachedMarksAreOnTheFence(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	length := func(n int64) measure.Length { return measure.Length(1+random.Int64N(n)) * measure.InchScale.Division }
	guides := map[deck.Guide]int{}
	for range 2000 {
		a, travel, rest := length(600), length(600), length(600)
		run := markedCard(a, a+travel+3*measure.Inch/8, a+travel+3*measure.Inch/8+rest)
		fence := joinery.FenceReach{Infeed: length(1000), Outfeed: length(1000)}
		for _, stop := range []bool{false, true} {
			r, m := run.Reach(stop, fence), run.Start
			if stop {
				m = run.Stop
			}
			guides[r.Guide]++
			radius := 3 * measure.Inch / 16
			leadOn := -m.LeadPastCentre < -radius && -m.LeadPastCentre >= -fence.Outfeed
			tailOn := m.TailBeforeCentre > radius && m.TailBeforeCentre <= fence.Infeed
			switch r.Guide {
			case deck.ByLead:
				require.True(t, leadOn)
				require.Equal(t, -m.LeadPastCentre, r.At)
			case deck.ByTail:
				require.True(t, tailOn)
				require.Equal(t, m.TailBeforeCentre, r.At)
			default:
				require.False(t, leadOn || tailOn)
				require.Equal(t, radius, r.At.Abs())
			}
		}
	}
	assert.Len(t, guides, 3)
}

// TestFenceMarks shares marks among cards, and keeps apart what only stands at
// the same place.
func TestFenceMarks(t *testing.T) {
	const in = measure.Inch
	runs := []deck.Run{
		markedCard(in/2, 3*in, 17*in),
		markedCard(in/2, 4*in, 17*in),
		markedCard(2*in+3*in/8+in/4, 12*in, 17*in), // starts where the first stops: 2 13/16 past the centre
		markedCard(30*in, 40*in, 70*in),
		markedCard(31*in, 40*in, 71*in),
	}
	marks := deck.FenceMarks(runs, &joinery.Shop{Fence: joinery.FenceReach{Infeed: 4 * in, Outfeed: 16 * in}})
	type seen struct {
		stop  bool
		guide deck.Guide
		at    measure.Length
		line  measure.Length
		cards int
	}
	var got []seen
	for _, m := range marks {
		got = append(got, seen{m.Stop, m.Guide, m.At, m.Line, len(m.Runs)})
	}
	radius := 3 * in / 16
	assert.Equal(t, []seen{
		{true, deck.ByLead, -12*in + radius, 0, 1},
		{true, deck.ByLead, -4*in + radius, 0, 1},
		{true, deck.ByLead, -3*in + radius, 0, 1},
		{false, deck.ByLead, -3*in + radius, 0, 1},
		{false, deck.ByLead, -in/2 - radius, 0, 2},
		{false, deck.ByLine, -radius, 30 * in, 1},
		{false, deck.ByLine, -radius, 31 * in, 1},
		{true, deck.ByLine, radius, 40 * in, 2},
	}, got)
}
