package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Where there is room the other ways to set a mark are read without help.
func TestOtherWaysInWords(t *testing.T) {
	const mm = measure.Millimetre
	m := &deck.PairMark{Mark: deck.Mark{Line: 50 * mm, LeadPastEdge: 704 * mm, TailBeforeEdge: 66 * mm}, Lead: true, Tail: true}
	r := &deck.Run{Cut: &joinery.Cut{}}
	way := wording.WayOf(r, false, deck.ByTail, true)
	assert.Equal(t, "or line 50, lead 704 left", way.Others(m, measure.MetricScale.Format))
	assert.Equal(t, "or pencil a line 50 from the leading end, leading end 704 left", way.OthersInWords(m, measure.MetricScale.Format))
}
