package remark_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup/internal/workpiece"
)

const legSize = "1_5/8 1_5/8 17"

func TestWarnings(t *testing.T) {
	for _, test := range []struct {
		name string
		size string
		cuts []string
		want []string // codes, each with words its text must hold after a blank
	}{
		{"a mortise in a leg is sound", legSize, []string{"mortise rail right 3/8 1/2:front 1/2-3:top 1"}, nil},
		{"a quarter-inch mortise centred in 3/4 is sound", "3/4 3 20", []string{"mortise rail front 1/4 1/4:left 1-3:top 1"}, nil},
		{"a groove a quarter from the face is sound", workpiece.BoardSize, []string{"groove panel bottom 1/4 1/4:front - 1/4"}, nil},
		{"a rabbet, laps and tenons are sound", workpiece.BoardSize, []string{
			"rabbet back back bottom 3/8 3/8", "tenon a left 7/8 front:1/4 back:1/4 top:1/2", "tenon b right 7/8 front:1/4 back:1/4"}, nil},
		{"a dado meets the rabbet for the back", "10 3/4 30", []string{
			"rabbet back back right 3/8 3/8", "dado shelf back 3/4 10:bottom - 1/4"}, nil},
		{"a groove runs into a mortise of its line", "3/4 3 20", []string{
			"groove panel front 1/4 1/4:left - 3/8", "mortise rail front 1/4 1/4:left 1-3:top 1_1/4"}, nil},
		{"an eighth between two mortises is enough to stay apart", legSize, []string{
			"mortise a right 3/8 1/2:front 1-3:top 5/8", "mortise b back 3/8 1/2:right 1-3:top 5/8"},
			[]string{"thin-wall 1/8 in of wood is left"}},

		{"two mortises meet in a leg", legSize, []string{
			"mortise a right 3/8 1/2:front 1-3:top 1", "mortise b front 3/8 1/2:right 2-4:top 1"},
			[]string{"cuts-meet from 2 in to 3 in from the top: make the mortise in the right 5/8 in shallower or the mortise in the front 5/8 in shallower"}},
		{"two mortises facing each other meet", legSize, []string{
			"mortise a right 3/8 1/2:front 1-3:top 1", "mortise b left 3/8 1/2:front 1-3:top 1"},
			[]string{"cuts-meet make one of them 1/2 in shallower, or both 1/4 in"}},
		{"round ends pass where square ones would meet", legSize, []string{
			"mortise a right 3/4 3/8:front 1-3:top 3/4", "mortise b back 3/4 3/8:right 2_63/64-5:top 3/4"},
			[]string{"thin-wall"}},
		{"a rabbet for glass leaves most of a mortise", "3/4 3 20", []string{
			"mortise rail front 1/4 1/4:left 1-3:top 1", "rabbet glass front left 3/8 1/2"}, nil},
		{"a recess for a lock plate", "1_3/4 6 40", []string{
			"mortise case front 3/4 1/2:left 34-38:bottom 3", "mortise plate front 7/8 7/16:left 33-39:bottom 1/8"}, nil},
		{"a wedge through a tenon", workpiece.BoardSize, []string{"tenon end left 3 top:2 bottom:2", "mortise wedge top 1/4 1/4:front 1-2:left 7"},
			[]string{"saw-quicker the top out of its cheeks, and add a lap there with by: saw", "saw-quicker the bottom"}},
		{"a haunch", workpiece.BoardSize, []string{"tenon end left 1_1/2 front:1/4 back:1/4", "lap haunch top left 1 3/4"},
			[]string{`saw-quicker the lap "haunch" in the top is the haunch of a tenon and takes 4 passes over the bit, about 0.8 min: a saw is quicker (write by: saw)`}},
		{"an edge shoulder of an inch", workpiece.BoardSize, []string{"tenon end left 1_1/2 front:1/4 back:1/4 top:1"}, nil},
		{"a rabbet breaks into a mortise", "3/4 3 20", []string{
			"mortise rail front 1/4 1/4:left 1-3:top 1", "rabbet glass front left 3/8 5/8"},
			[]string{"cuts-meet move the mortise away"}},

		{"a thin wall at the face", workpiece.BoardSize, []string{"groove panel bottom 1/4 1/8:front - 1/4"},
			[]string{"thin-wall a wall of 1/8 in at the front, under 1/4 in: move it 1/8 in away"}},
		{"a third of thin stock will do", "24 1/2 8", []string{"groove panel bottom 1/8 3/16:front - 1/4"}, nil},
		{"a dado at the very end", "10 3/4 30", []string{"dado top back 3/4 1/8:top - 1/4"}, []string{"thin-wall at the top"}},
		{"short grain beyond a mortise", legSize, []string{"mortise rail right 3/8 1/2:front 3/8-3:top 1"},
			[]string{"short-grain only 3/8 in of short grain is left at the top"}},
		{"a wall between two grooves", workpiece.BoardSize, []string{"groove a bottom 1/8 1/4:front - 1/4", "groove b top 1/8 1/4:front - 1/4",
			"groove c front 1/4 1:bottom - 1/4", "groove d front 1/4 1_3/8:bottom - 1/4"},
			[]string{"thin-wall only 1/8 in of wood"}},
		{"a groove just breaking into a mortise", legSize, []string{"mortise rail right 3/8 1/2:front 4-8:top 1", "groove panel front 1/4 1/4:right - 1/2"},
			[]string{"thin-wall no wood is left between"}},
		{"two grooves side by side make a wide one", workpiece.BoardSize, []string{"groove a back 1/4 1:bottom - 1/4", "groove b back 1/4 1_1/4:bottom - 1/4"}, nil},

		{"a deep dado", workpiece.BoardSize, []string{"dado shelf back 3/4 10:left - 7/16"},
			[]string{"deep-for-thickness takes 7/16 in of the 3/4 in of stock, more than 1/2 of it: make the depth 3/8 in"}},
		{"a dado of half the stock", workpiece.BoardSize, []string{"dado shelf back 3/4 10:left - 3/8"}, nil},
		{"a mortise nearly through", legSize, []string{"mortise rail right 3/8 1/2:front 1/2-3:top 1_33/64"},
			[]string{"deep-for-thickness", "thin-floor"}},
		{"a mortise through", legSize, []string{"mortise rail right 3/8 1/2:front 1/2-3:top 1_5/8"}, nil},
		{"a deep rabbet", workpiece.BoardSize, []string{"rabbet back back bottom 3/8 9/16"}, []string{"deep-for-thickness"}},
		{"a wide rabbet", "24 3/4 3/4", []string{"rabbet back back bottom 9/16 3/8"}, []string{"deep-for-thickness width"}},
		{"a rabbet of two thirds", workpiece.BoardSize, []string{"rabbet back back bottom 3/8 1/2"}, nil},
		{"a deep lap", workpiece.BoardSize, []string{"lap end back left 2 17/32"}, []string{"deep-for-thickness"}},
		{"a thin tenon", workpiece.BoardSize, []string{"tenon a left 7/8 front:5/16 back:5/16"}, []string{"thin-tenon only 1/8 in thick front-back"}},

		{"a short piece", "8 3/4 3", []string{"groove panel bottom 1/4 1/4:front - 1/4"}, []string{"short-piece 8 in is the longest"}},
		{"a piece of twelve inches", "12 3/4 3", []string{"groove panel bottom 1/4 1/4:front - 1/4"}, nil},
		{"a thin board on edge", "24 5/16 8", []string{"groove panel bottom 1/8 3/16:front - 1/8"}, []string{"trapped-wood", "narrow-bearing rides the table"}},
		{"a narrow end at the fence", "24 3/4 3/4", []string{"dado end front 1/4 3:left - 1/4"}, []string{"narrow-bearing rides only 3/4 in of it"}},
		{"an earlier rabbet took the bearing", "24 3/4 3", []string{
			"rabbet back bottom front 1/2 1/4", "groove panel bottom 1/8 9/16:front - 5/16 after back"},
			[]string{"narrow-bearing write it lying, in: front, along: bottom, width: 1/4 in, depth: 1/2 in, so that 2 3/4 in bears", "thin-wall", "narrow-bearing after the rabbet"}},
		{"an earlier cut took the face away", "24 3/4 3", []string{
			"rabbet edge bottom front 1/4 3", "groove panel bottom 1/8 3/8:front - 1/4 after edge"},
			[]string{"deep-for-thickness", `lost-reference set from the front, which the rabbet "edge" in the bottom has taken away by then: cut this one first (take after: edge away from it)`}},
		{"a thin floor", workpiece.BoardSize, []string{"mortise slot front 1/4 3:bottom 2-3:left 21/32"}, []string{"thin-floor a floor of 3/32 in at the back, under 1/8 in: make it 1/32 in shallower"}},
		{"wood between bit and fence", workpiece.BoardSize, []string{"groove edge back 3/8 7_5/8:bottom - 3/8"},
			[]string{"trapped-wood write fence: top"}},
		{"round corners pass each other", "3 2_1/2 20", []string{
			"mortise a front 3/4 1/2:left 4-8:top 1", "mortise b front 3/4 1_3/16:left 7_15/16-12:top 1"},
			[]string{"thin-wall only 7/32+ in of wood is left"}},
		{"squared ones overlap", "3 2_1/2 20", []string{
			"mortise a front 3/4 1/2:left 4-8:top 1 square", "mortise b front 3/4 1_3/16:left 7_15/16-12:top 1 square"},
			[]string{"cuts-meet from 7 15/16 in to 8 in from the top: move one of them"}},
		{"squared ones touch", "3 2_1/2 20", []string{
			"mortise a front 3/4 1/2:left 4-8:top 1 square", "mortise b front 3/4 1_1/4:left 8-12:top 1 square"},
			[]string{"thin-wall no wood is left between"}},
		{"only one of them is squared", "3 2_1/2 20", []string{
			"mortise a front 3/4 1/2:left 4-8:top 1 square", "mortise b front 3/4 1_1/4:left 8-12:top 1"},
			[]string{"thin-wall only 5/32"}},
		{"a web of a hair", "2 2 20", []string{
			"mortise a front 1/2 1/2:left 4-6:top 3/4", "mortise b front 1/2 1/2:left 6_1/256-8:top 3/4"},
			[]string{"thin-wall less than 1/64 in of wood is left between the mortise \"a\" in the front and the mortise \"b\" in the front, under 1/4 in: move one 1/4 in away"}},
		{"only the lower of two has room to move", "20 4 1_1/2", []string{
			"groove a bottom 1/2 7/8:back - 1/4", "groove b bottom 1/2 1/4:back - 1/4"},
			[]string{"thin-wall move the groove \"a\" in the bottom 1/8 in toward the front"}},
		{"a wall of a hair", "24 3/4 8", []string{"groove panel bottom 1/4 1/256:front - 1/4"},
			[]string{"thin-wall a wall of less than 1/64 in at the front, under 1/4 in: move it 1/4 in away"}},
		{"a rabbet that leaves little to ride on", "20 1 1_1/8", []string{"rabbet edge top front 41/64 49/64"},
			[]string{"deep-for-thickness", "narrow-bearing leaves only 23/64 in of the piece on the table and 23/64 in along the fence"}},
		{"a rabbet that leaves enough", "20 1 1_1/8", []string{"rabbet edge top front 5/8 3/4"}, nil},
		{"a piece that reaches out four times as far as it rides", "20 5 3/4", []string{"dado end top 3/4 4:left - 1/4"}, nil},
		{"a floor short by a hair", workpiece.BoardSize, []string{"mortise slot front 1/4 3:bottom 2-3:left 161/256"},
			[]string{"thin-floor under 1/8 in: make it 1/64 in shallower"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := workpiece.DeckOf(t, workpiece.PieceFrom(t, test.size, test.cuts...))
			var got []string
			for _, w := range d.Warnings {
				if slices.Contains([]string{"steep-drop", "early-mouth", "splintered-exit"}, w.Code) {
					continue // of how the piece is run, not of what is cut
				}
				got = append(got, w.Code+": "+w.Text)
				assert.Equal(t, "piece", w.Piece)
			}
			require.Len(t, got, len(test.want), strings.Join(got, "\n"))
			for i, want := range test.want {
				code, words, _ := strings.Cut(want, " ")
				assert.True(t, strings.HasPrefix(got[i], code+": "), got[i])
				assert.Contains(t, got[i], words)
			}
		})
	}
}
