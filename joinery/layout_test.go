package joinery

import (
	"maps"
	"slices"
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// box is the wood a channel takes, from and to along X, Y, Z.
type box [3][2]measure.Length

// boxOf works a channel out as a box from the meaning of its fields alone.
func boxOf(c Channel, size Size) box {
	var b box
	along := func(from Side, near, far measure.Length) {
		d := from.Dimension()
		if from.High() {
			near, far = size[d]-far, size[d]-near
		}
		b[d] = [2]measure.Length{near, far}
	}
	along(c.Down, 0, c.Depth)
	along(c.Near, c.Setback, c.Setback+c.Width)
	b[c.Run()] = [2]measure.Length{c.Lo, c.Hi}
	return b
}

func eighths(n int) measure.Length { return measure.Length(n) * measure.Inch / 8 }

// leg is 1 5/8 x 1 5/8 and 17 tall.
func leg() *Piece {
	return &Piece{Name: "leg", Size: Size{eighths(13), eighths(13), 17 * measure.Inch}, Grain: TopBottom}
}

func lay(t *testing.T, p *Piece, c Cut) []Channel {
	t.Helper()
	require.Empty(t, c.Lay(p, measure.InchScale))
	return c.Channels
}

// The leg of the worked examples: the mortise from 1/2 to 3 below the top lies
// 14 to 16 1/2 above the bottom, 5/8 to 1 5/8 from the left.
func TestMortise(t *testing.T) {
	channels := lay(t, leg(), Cut{
		Kind: &Mortise, In: Right, Width: eighths(3), Depth: measure.Inch,
		Start: Setback{Distance: eighths(4), From: Front},
		Span:  Span{From: eighths(4), To: 3 * measure.Inch, Side: Top},
	})
	require.Len(t, channels, 1)
	assert.Equal(t, Channel{
		Down: Right, Near: Front, Setback: eighths(4), Width: eighths(3), Depth: measure.Inch,
		Lo: 14 * measure.Inch, Hi: 16*measure.Inch + eighths(4),
	}, channels[0])
	assert.Equal(t, box{{eighths(5), eighths(13)}, {eighths(4), eighths(7)}, {14 * measure.Inch, 16*measure.Inch + eighths(4)}},
		boxOf(channels[0], leg().Size))
	assert.False(t, channels[0].OpenAt(Top, leg().Size))
	assert.False(t, channels[0].OpenBeside(Front, leg().Size))
}

// A dado open at the back, stopped 3/8 from the front.
func TestStoppedDado(t *testing.T) {
	c := lay(t, leg(), Cut{
		Kind: &Dado, In: Right, Width: eighths(6), Depth: eighths(2),
		Start: Setback{Distance: 4 * measure.Inch, From: Bottom},
		Span:  Span{To: eighths(10), Side: Back},
	})[0]
	assert.Equal(t, box{{eighths(11), eighths(13)}, {eighths(3), eighths(13)}, {4 * measure.Inch, 4*measure.Inch + eighths(6)}}, boxOf(c, leg().Size))
	assert.True(t, c.OpenAt(Back, leg().Size))
	assert.False(t, c.OpenAt(Front, leg().Size))
}

func TestCentredChannels(t *testing.T) {
	board := &Piece{Name: "board", Size: Size{20 * measure.Inch, eighths(6), 4 * measure.Inch}, Grain: LeftRight}
	for _, c := range []struct {
		name string
		cut  Cut
		near Side
		at   measure.Length
	}{
		{"a groove runs with the grain", Cut{Kind: &Groove, In: Top}, Front, eighths(2)},
		{"a dado across it", Cut{Kind: &Dado, In: Front}, Left, 10*measure.Inch - eighths(1)},
		{"the span says which way", Cut{Kind: &Dado, In: Front, Span: Span{To: measure.Inch, Side: Left}}, Bottom, 2*measure.Inch - eighths(1)},
		{"the side is named", Cut{Kind: &Groove, In: Top, Start: Setback{From: Back}}, Back, eighths(2)},
		{"the fence is named", Cut{Kind: &Groove, In: Top, Fence: Fencing{Side: Back}}, Back, eighths(2)},
		{"into the end grain, from a side", Cut{Kind: &Mortise, In: Left, Start: Setback{From: Bottom}}, Bottom, 2*measure.Inch - eighths(1)},
	} {
		c.cut.Width, c.cut.Depth, c.cut.Start.Centred = eighths(2), eighths(2), true
		channel := lay(t, board, c.cut)[0]
		assert.Equal(t, c.near, channel.Near, c.name)
		assert.Equal(t, c.at, channel.Setback, c.name)
		assert.Equal(t, channel.Setback, channel.Reversed(board.Size).Setback, c.name)
	}
}

func TestRabbet(t *testing.T) {
	c := lay(t, leg(), Cut{Kind: &Rabbet, In: Back, Along: Left, Width: eighths(3), Depth: eighths(4)})[0]
	assert.Equal(t, box{{0, eighths(3)}, {eighths(9), eighths(13)}, {0, 17 * measure.Inch}}, boxOf(c, leg().Size))
	assert.True(t, c.OpenBeside(Left, leg().Size))
	stopped := lay(t, leg(), Cut{Kind: &Rabbet, In: Back, Along: Left, Width: eighths(3), Depth: eighths(4), Span: Span{From: measure.Inch, To: 2 * measure.Inch, Side: Top}})[0]
	assert.Equal(t, [2]measure.Length{15 * measure.Inch, 16 * measure.Inch}, boxOf(stopped, leg().Size)[TopBottom])
}

func TestLap(t *testing.T) {
	c := lay(t, leg(), Cut{Kind: &Lap, In: Front, At: Top, Length: 2 * measure.Inch, Depth: eighths(6)})[0]
	assert.Equal(t, box{{0, eighths(13)}, {0, eighths(6)}, {15 * measure.Inch, 17 * measure.Inch}}, boxOf(c, leg().Size))
}

// Each cheek is a channel across the end; a side not named keeps its wood.
func TestTenon(t *testing.T) {
	rail := &Piece{Name: "rail", Size: Size{20 * measure.Inch, eighths(6), 4 * measure.Inch}, Grain: LeftRight}
	channels := lay(t, rail, Cut{Kind: &Tenon, At: Right, Length: measure.Inch, Cheeks: []Cheek{
		{Front, eighths(1)}, {Back, eighths(2)}, {Top, eighths(4)},
	}})
	require.Len(t, channels, 3)
	for i, want := range []struct {
		part string
		box  box
	}{
		{"front cheek", box{{19 * measure.Inch, 20 * measure.Inch}, {0, eighths(1)}, {0, 4 * measure.Inch}}},
		{"back cheek", box{{19 * measure.Inch, 20 * measure.Inch}, {eighths(4), eighths(6)}, {0, 4 * measure.Inch}}},
		{"top cheek", box{{19 * measure.Inch, 20 * measure.Inch}, {0, eighths(6)}, {3*measure.Inch + eighths(4), 4 * measure.Inch}}},
	} {
		assert.Equal(t, want.part, channels[i].Part)
		assert.Equal(t, want.box, boxOf(channels[i], rail.Size), want.part)
		assert.Equal(t, Right, channels[i].Near)
	}
}

func TestCutsThatDoNotFit(t *testing.T) {
	sound := Cut{
		Kind: &Mortise, Name: "rail", In: Right, Width: eighths(3), Depth: measure.Inch,
		Start: Setback{Distance: eighths(4), From: Front},
		Span:  Span{From: eighths(4), To: 3 * measure.Inch, Side: Top},
	}
	for _, c := range []struct {
		change  func(*Cut)
		problem string
	}{
		{func(c *Cut) { c.Depth = 0 }, "the depth is 0"},
		{func(c *Cut) { c.Depth = eighths(14) }, "1 3/4 in deep from the right, but the piece measures 1 5/8 in left-right"},
		{func(c *Cut) { c.Width = 0 }, "the width is 0"},
		{func(c *Cut) { c.Width = 2 * measure.Inch }, "a width of 2 in is more than the piece has"},
		{func(c *Cut) { c.Start.Distance = eighths(11) }, "1 3/8 in from the front plus 3/8 in of width ends 1/8 in outside the piece"},
		{func(c *Cut) { c.Start.From = Left }, "setback names the left, opposite the side the bit enters"},
		{func(c *Cut) { c.Span.To = 18 * measure.Inch }, "the span ends 1 in outside the piece"},
		{func(c *Cut) { c.Span.To = 0 }, "the span begins at 1/2 in and ends at 0 in"},
		{func(c *Cut) { c.Span.To = eighths(4) }, "the span begins and ends at 1/2 in"},
		{func(c *Cut) { c.Span.Side = Front }, "the span is measured from the front, but the cut runs top-bottom"},
		{func(c *Cut) { c.Fence.Side = Top }, "the top cannot go to the fence: it is an end of the cut"},
		{func(c *Cut) { c.Fence.Side = Left }, "the left cannot go to the fence: the bit enters the right"},
		{func(c *Cut) { c.In, c.Span, c.Start = Top, Span{}, Setback{Centred: true} }, "the bit enters the end grain"},
		{func(c *Cut) { c.Start, c.Span.Side = Setback{Centred: true}, Right }, "the span is measured from the right, but the bit enters the right"},
	} {
		cut := sound
		c.change(&cut)
		faults := cut.Lay(leg(), measure.InchScale)
		require.Len(t, faults, 1, c.problem)
		assert.Contains(t, faults[0].Problem, `mortise "rail" in "leg": `+c.problem)
		assert.NotEmpty(t, faults[0].Remedy, c.problem)
		assert.Empty(t, cut.Channels)
	}
	for _, cut := range []Cut{
		{Kind: &Rabbet, In: Back, Along: Front, Width: measure.Inch, Depth: measure.Inch},
		{Kind: &Rabbet, In: Back, Along: Left, Width: measure.Inch, Depth: 2 * measure.Inch},
		{Kind: &Lap, In: Top, At: Top, Length: measure.Inch, Depth: measure.Inch},
		{Kind: &Lap, In: Front, At: Top, Length: 18 * measure.Inch, Depth: measure.Inch},
		{Kind: &Tenon, At: Top, Length: measure.Inch, Cheeks: []Cheek{{Top, measure.Inch}}},
		{Kind: &Tenon, At: Top, Length: measure.Inch, Cheeks: []Cheek{{Left, measure.Inch}, {Right, measure.Inch}}},
	} {
		faults := cut.Lay(leg(), measure.InchScale)
		require.Len(t, faults, 1, "%v", cut.Kind)
		assert.NotEmpty(t, faults[0].Remedy)
	}
}

// A lap may be as deep as it likes short of the whole piece, a cut as deep as
// the piece goes through.
func TestCutsThatJustFit(t *testing.T) {
	p := leg()
	lay(t, p, Cut{Kind: &Mortise, In: Right, Width: eighths(13), Depth: eighths(13), Start: Setback{From: Front}})
	lay(t, p, Cut{Kind: &Mortise, In: Right, Width: measure.Inch, Depth: 1, Start: Setback{From: Back, Distance: eighths(5)}, Span: Span{To: 17 * measure.Inch, Side: Bottom}})
}

func TestKinds(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Kinds {
		for _, word := range append([]string{k.Name}, k.Also...) {
			assert.False(t, seen[word], word)
			seen[word] = true
			named := KindNamed(word)
			require.NotNil(t, named, word)
			assert.Equal(t, word, named.String(), "a maker reads the word that was written")
			assert.Equal(t, k.Name, named.Common(), "a program reads the one word")
			assert.Same(t, named, KindNamed(word))
			assert.Equal(t, k.Keys(), named.Keys())
		}
		assert.ElementsMatch(t, CommonKeys, append(slices.Clone(k.Keys()[len(k.Required)+len(k.Optional):]), slices.Collect(maps.Keys(k.Refuses))...))
		assert.NotEmpty(t, k.Example)
		assert.Equal(t, k.Name, k.String())
	}
	for _, word := range []string{"mortice", "rebate", "housing", "half-lap"} {
		assert.NotNil(t, KindNamed(word), word)
	}
	assert.Nil(t, KindNamed("dovetail"))
}

// A kind that makes nonsense of the maker's numbers lays nothing, and says what
// about them is wrong.
func TestWhatAKindLaysLiesInsideThePiece(t *testing.T) {
	size, sound := leg().Size, Channel{Down: Right, Near: Front, Setback: eighths(4), Width: eighths(3), Depth: eighths(8), Lo: eighths(8), Hi: eighths(16)}
	for _, spoiled := range []struct {
		spoil func(*Channel)
		says  string
	}{
		{func(*Channel) {}, ""},
		{func(c *Channel) { c.Down = NoSide }, "from which side"},
		{func(c *Channel) { c.Near = NoSide }, "from which side"},
		{func(c *Channel) { c.Near = c.Down.Opposite() }, "from which side"},
		{func(c *Channel) { c.Depth = 0 }, "it has no depth"},
		{func(c *Channel) { c.Depth = eighths(14) }, "1/8 in deeper from the right"},
		{func(c *Channel) { c.Width = 0 }, "it has no width"},
		{func(c *Channel) { c.Setback = -eighths(1) }, "begin 1/8 in outside the piece at the front"},
		{func(c *Channel) { c.Setback = eighths(11) }, "end 1/8 in outside the piece at the back"},
		{func(c *Channel) { c.Lo = -eighths(32) }, "run 4 in out of the piece at the bottom"},
		{func(c *Channel) { c.Hi = size[TopBottom] + eighths(4) }, "run 1/2 in out of the piece at the top"},
		{func(c *Channel) { c.Lo = c.Hi }, "it begins where it ends"},
	} {
		made := Kind{Name: "made-up", lay: func(l *layout) {
			c := sound
			spoiled.spoil(&c)
			l.channels = append(l.channels, c)
		}}
		cut := Cut{Kind: &made, Name: "a"}
		faults := cut.Lay(leg(), measure.InchScale)
		if spoiled.says == "" {
			assert.Empty(t, faults)
			assert.Equal(t, []Channel{sound}, cut.Channels)
			continue
		}
		require.Len(t, faults, 1, spoiled.says)
		assert.Contains(t, faults[0].Problem, `made-up "a" in "leg": `)
		assert.Contains(t, faults[0].Problem, spoiled.says)
		assert.Empty(t, cut.Channels)
	}
}

// A wish for the fence that no cheek of a tenon can follow is told once.
func TestAFenceThatNoCheekCanFollowIsToldOnce(t *testing.T) {
	cut := Cut{Kind: &Tenon, Name: "a", At: Top, Length: eighths(8), Fence: Fencing{Side: Front},
		Cheeks: []Cheek{{Side: Front, Depth: eighths(2)}, {Side: Back, Depth: eighths(2)}}}
	faults := cut.Lay(leg(), measure.InchScale)
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Problem, "the front cannot go to the fence")
}
