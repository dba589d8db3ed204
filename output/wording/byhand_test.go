package wording

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// What is cut by hand is pencilled from an end or a side of the piece, also where it was
// measured from the other one, and says where it ends along its run.
func TestLayOut(t *testing.T) {
	in := func(eighths int) measure.Length { return measure.Length(eighths) * measure.Inch / 8 }
	scale := measure.DefaultScale(measure.Inches)
	rail := &joinery.Piece{Size: joinery.Size{in(160), in(7), in(32)}, Grain: joinery.LeftRight}
	for _, c := range []struct {
		of   joinery.Channel
		says string
	}{
		{joinery.Channel{Down: joinery.Front, Near: joinery.Left, Width: in(2), Depth: in(3), Hi: in(32)},
			"cut out the corner: 1/4 from the left end, 3/8 from the front, top to bottom"},
		{joinery.Channel{Down: joinery.Front, Near: joinery.Left, Setback: in(158), Width: in(2), Depth: in(3), Hi: in(32)},
			"cut out the corner: 1/4 from the right end, 3/8 from the front, top to bottom"},
		{joinery.Channel{Down: joinery.Top, Near: joinery.Right, Width: in(3), Depth: in(4), Lo: in(3), Hi: in(7)},
			"cut out the corner: 3/8 from the right end, 1/2 from the top, from the back to 1/2"},
		{joinery.Channel{Part: "front cheek", Down: joinery.Front, Near: joinery.Left, Width: in(6), Depth: in(2), Hi: in(32)},
			"front cheek: 3/4 from the left end, 1/4 from the front, top to bottom"},
		{joinery.Channel{Down: joinery.Top, Near: joinery.Front, Setback: in(2), Width: in(3), Depth: in(3), Hi: in(160)},
			"in the top: between lines 1/4 and 5/8 from the front, 3/8 deep, end to end"},
		{joinery.Channel{Down: joinery.Top, Near: joinery.Front, Setback: in(2), Width: in(3), Depth: in(3), Lo: in(140), Hi: in(156)},
			"in the top: between lines 1/4 and 5/8 from the front, 3/8 deep, between 1/2 and 2 1/2 from the right end"},
		{joinery.Channel{Down: joinery.Front, Near: joinery.Top, Width: in(32), Depth: in(2), Hi: in(40)},
			"all of the front, 1/4 deep, from the left end to 5"},
	} {
		var words []string
		LayOut(rail, c.of, func(text string) { words = append(words, text) }, func(at measure.Length) { words = append(words, scale.Format(at)) })
		assert.Equal(t, c.says, strings.Join(words, " "))
	}
}
