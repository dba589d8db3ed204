package remark_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/internal/workpiece"
)

// What is left long to be cut at one end is as short as it will be when the other is
// cut, so that a longer blank is no advice for both.
func TestALongerBlankServesOneEnd(t *testing.T) {
	const left, right, groove = "tenon l left 1 front:3/16 back:3/16", "tenon r right 1 front:3/16 back:3/16", "groove g bottom 1/4 1/4:front - 1/4"
	for _, c := range []struct {
		cuts []string
		both bool
	}{
		{[]string{left, right}, true},
		{[]string{left, right, groove}, true},
		{[]string{left}, false},
		{[]string{left, groove}, false},
		{[]string{groove}, false},
	} {
		d := workpiece.DeckOf(t, workpiece.PieceFrom(t, "8 3/4 3", c.cuts...))
		for _, w := range d.Warnings {
			if w.Code == "short-piece" {
				assert.Equal(t, c.both, strings.Contains(w.Text, "both its ends are cut"), "%v: %s", c.cuts, w.Text)
			}
		}
		said := 0
		for _, s := range d.Setups {
			for _, r := range s.Runs {
				for _, caution := range r.Cautions {
					if caution.Code == "short-piece" {
						said++
						atEnd := c.both && r.Cut.Name != "g"
						assert.Equal(t, atEnd, strings.Contains(caution.Words, "for its first end only"), "%v, %s", c.cuts, r.Cut.Name)
						assert.Equal(t, atEnd, strings.Contains(caution.Brief, "longer blank for one end"), "%v, %s", c.cuts, r.Cut.Name)
					}
				}
			}
		}
		assert.Positive(t, said)
	}
}
