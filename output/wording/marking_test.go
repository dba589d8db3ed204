package wording_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

const mm = measure.Millimetre

// Work is fed from right to left: its tail is at the right, its leading end at the
// left. What holds the tail of a drop is a stop, never a mark; between stop blocks the
// tail meets the back stop, and the leading end the front one, whatever the guide.
func TestWhatIsSetAndOnWhichSide(t *testing.T) {
	m := &deck.Mark{Line: 50 * mm, LeadPastEdge: 704 * mm, TailBeforeEdge: 66 * mm}
	r := &deck.Run{Cut: &joinery.Cut{}}
	for _, test := range []struct {
		stop   bool
		guide  deck.Guide
		blocks bool
		set    string
		end    string
		from   string
		length measure.Length
	}{
		{false, deck.ByTail, false, "BACK STOP, RIGHT", "TAIL", "TRAILING", 66 * mm},
		{true, deck.ByTail, false, "MARK, RIGHT", "TAIL", "LEADING", 66 * mm},
		{false, deck.ByLead, false, "MARK, LEFT", "LEADING", "TRAILING", 704 * mm},
		{true, deck.ByLead, false, "MARK, LEFT", "LEADING", "LEADING", 704 * mm},
		{false, deck.ByLine, false, "PENCIL LINE", "LEADING", "TRAILING", 50 * mm},
		{true, deck.ByLine, false, "PENCIL LINE", "LEADING", "LEADING", 50 * mm},
		{false, deck.ByLead, true, "BACK STOP, RIGHT", "TAIL", "TRAILING", 66 * mm},
		{false, deck.ByLine, true, "BACK STOP, RIGHT", "TAIL", "TRAILING", 66 * mm},
		{true, deck.ByTail, true, "FRONT STOP, LEFT", "LEADING", "LEADING", 704 * mm},
	} {
		marking := wording.MarkingOf(r, test.stop, test.guide, test.blocks)
		assert.Equal(t, test.set, marking.Set, test)
		assert.Contains(t, marking.For, test.end, test)
		assert.Contains(t, marking.From, test.from, test)
		assert.Equal(t, test.length, marking.Length(m), test)
		assert.Equal(t, strings.Contains(test.set, " STOP, "), marking.Clamped(), "%v: its sign", test)
	}
	shaped := &deck.Run{Cut: &joinery.Cut{}}
	shaped.Channel.Section.Outline = &joinery.Outline{Shape: joinery.Sloped, Radius: mm}
	assert.Contains(t, wording.MarkingOf(shaped, true, deck.ByTail, false).From, "RIGHT edge at the fence")
	assert.Contains(t, wording.MarkingOf(shaped, false, deck.ByTail, false).From, "LEFT edge at the fence")
}

// A length below 0 is on the other side of the bit, and is never said with its sign.
func TestAStopOnTheOtherSide(t *testing.T) {
	r := &deck.Run{Cut: &joinery.Cut{}}
	marking := wording.MarkingOf(r, false, deck.ByLead, false)
	at := func(tail measure.Length) string {
		return marking.BackStopAt(&deck.PairMark{Mark: deck.Mark{TailBeforeEdge: tail}}, measure.MetricScale.Format)
	}
	assert.Equal(t, "BACK STOP 66 RIGHT", at(66*mm))
	assert.Equal(t, "BACK STOP 0 RIGHT", at(0))
	assert.Equal(t, "BACK STOP 5 LEFT", at(-5*mm))
	assert.Empty(t, wording.MarkingOf(r, true, deck.ByLead, false).BackStopAt(&deck.PairMark{}, measure.MetricScale.Format), "an end has no back stop")
	assert.Empty(t, wording.MarkingOf(r, false, deck.ByTail, false).BackStopAt(&deck.PairMark{}, measure.MetricScale.Format), "it is what is set")
}

// Only a drop that is set by a mark has its back stop brought up to the work.
func TestWhichBackStopIsBroughtUp(t *testing.T) {
	by := func(g deck.Guide) *deck.Pair { return &deck.Pair{Start: &deck.PairMark{Guide: g}} }
	assert.True(t, wording.BroughtUp(by(deck.ByLead), false))
	assert.False(t, wording.BroughtUp(by(deck.ByLead), true))
	assert.False(t, wording.BroughtUp(by(deck.ByTail), false))
	assert.False(t, wording.BroughtUp(&deck.Pair{}, false))
}

// Where there is room the other ways to set a mark are read without help.
func TestOtherWaysInWords(t *testing.T) {
	m := &deck.PairMark{Mark: deck.Mark{Line: 50 * mm, LeadPastEdge: 704 * mm, TailBeforeEdge: 66 * mm}, Lead: true, Tail: true}
	r := &deck.Run{Cut: &joinery.Cut{}}
	marking := wording.MarkingOf(r, false, deck.ByTail, true)
	assert.Equal(t, "or line 50, lead 704 left", marking.Others(m, measure.MetricScale.Format))
	assert.Equal(t, "or pencil a line 50 from the leading end, leading end 704 left", marking.OthersInWords(m, measure.MetricScale.Format))
}

// A back stop that other runs of a setup have would stand in the way of what is fed in.
func TestBackStopIsTakenOffForWhatIsFedIn(t *testing.T) {
	u := &deck.Setup{Marks: []deck.Pair{{Letter: "A", Stop: &deck.PairMark{}}}}
	assert.Equal(t, "feed in from the right", wording.Unmarked(u, false))
	u.Marks = append(u.Marks, deck.Pair{Letter: "B", Start: &deck.PairMark{}})
	assert.Equal(t, "back stop off; feed in from the right", wording.Unmarked(u, false))
	assert.Equal(t, "run out to the left", wording.Unmarked(u, true))
	assert.Equal(t, "NO MARKS: back stop off; feed in from the right, run out left.", wording.NoMarks(u))
}
