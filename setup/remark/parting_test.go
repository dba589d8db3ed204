package remark_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

func TestCutsApart(t *testing.T) {
	for _, test := range []struct {
		name  string
		size  string
		cuts  []string
		runs  []string // the cuts whose runs caution of it
		words []string // of the warnings
	}{
		{"a dado through a board", "20 8 3/4", []string{"dado shelf top 3/4 5:left - 3/4"}, []string{"shelf"},
			[]string{`the dado "shelf" in the top cuts the piece apart, and 5 in of wood at the left comes loose`}},
		{"a groove through a board", "20 8 3/4", []string{"groove panel top 1/4 1:back - 3/4"}, []string{"panel"},
			[]string{"1 in of wood at the back comes loose"}},
		{"a wide one is said once", "20 8 3/4", []string{"dado shelf top 1 5:left - 3/4"}, []string{"shelf"}, []string{"5 in of wood"}},
		{"an edge is only made narrower", "20 8 3/4", []string{"groove edge top 1/4 0:back - 3/4"}, nil, nil},
		{"a mortise through", "20 8 3/4", []string{"mortise rail top 1/4 1:back 1/64-19:left 3/4"}, nil, nil},
		{"a slot open at one end", "20 8 3/4", []string{"mortise rail top 1/4 1:back 0-19:left 3/4"}, nil, nil},
		{"a floor is left", "20 8 3/4", []string{"dado shelf top 3/4 5:left - 47/64"}, nil, nil},
		{"dadoes from both sides", "20 8 3/4", []string{"dado a top 3/4 5:left - 3/8", "dado b bottom 3/4 5:left - 3/8"}, []string{"b"},
			[]string{`the dado "b" in the bottom, together with the dado "a" in the top, cuts the piece apart, and a part of it comes loose`}},
		{"the deeper of two is through last", "20 8 3/4", []string{"dado a top 3/4 5:left - 1/2", "dado b bottom 3/4 5:left - 1/4"}, []string{"a"},
			[]string{`"a" in the top, together with the dado "b" in the bottom,`}},
		{"a web is left between them", "20 8 3/4", []string{"dado a top 3/4 5:left - 3/8", "dado b bottom 3/4 5:left - 23/64"}, nil, nil},
		{"side by side from both sides", "20 8 3/4", []string{"dado a top 3/4 5:left - 3/8", "dado b bottom 3/4 5_49/64:left - 3/8"}, nil, nil},
		{"corner to corner", "20 8 3/4", []string{"dado a top 3/4 5:left - 3/8", "dado b bottom 3/4 5_3/4:left - 3/8"}, []string{"b"}, []string{"a part of it"}},
		{"crossing at right angles", "20 8 3/4", []string{"dado a top 3/4 5:left - 3/8", "groove b bottom 3/4 3:front - 3/8"}, nil, nil},
		{"grooves in two faces free the corner", "20 2 2", []string{"groove a top 1/4 1/2:back - 3/4", "groove b back 1/4 1/2:top - 3/4"}, []string{"b"}, []string{"a part of it"}},
		{"and do so corner to corner", "20 2 2", []string{"groove a top 1/4 1/2:back - 1/2", "groove b back 1/4 1/2:top - 1/2"}, []string{"b"}, []string{"a part"}},
		{"and leave it where they do not reach each other", "20 2 2", []string{"groove a top 1/4 1/2:back - 1/2", "groove b back 1/4 1/2:top - 31/64"}, nil, nil},
		{"three together", "20 8 3/4", []string{"groove a top 1/4 1:back - 3/8", "groove c bottom 1/4 1_1/2:back - 3/8", "groove b top 1/4 1_1/4:back - 3/8"}, []string{"c"},
			[]string{"together with cuts made before it"}},
		{"two laps that nibble an end away", "20 2 3/4", []string{"lap a top left 2 3/8", "lap b bottom left 2 3/8"}, nil, nil},
		{"a dado in what a nibbled lap leaves", "20 2 3/4", []string{"lap a top left 3 3/8", "dado b bottom 3/4 1:left - 3/8"}, []string{"a"},
			[]string{`the lap "a" in the top, together with the dado "b" in the bottom, cuts the piece apart`}},
		{"a tenon and its shoulders", "20 2 3/4", []string{"tenon end left 1 top:1/4 bottom:1/4 front:1/4 back:1/4"}, nil, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := workpiece.DeckOf(t, workpiece.PieceFrom(t, test.size, test.cuts...))
			var runs, said []string
			for _, s := range d.Setups {
				for _, r := range s.Runs {
					if slices.Contains(codes(r.Cautions), "cuts-apart") {
						runs = append(runs, r.Cut.Name)
					}
				}
			}
			for _, w := range d.Warnings {
				if w.Code == "cuts-apart" {
					said = append(said, w.Text)
				}
			}
			assert.Equal(t, test.runs, runs)
			if assert.Len(t, said, len(test.words)) {
				for i, words := range test.words {
					assert.Contains(t, said[i], words)
				}
			}
		})
	}
}

func TestAThinFloorIsCutThroughOnlyWhereThePieceStaysWhole(t *testing.T) {
	for cut, offered := range map[string]bool{
		"groove a top 1/4 1:back - 11/16":            false,
		"groove a top 1/4 1:back 0-19:left 11/16":    false,
		"groove a top 1/4 1:back 1-20:left 11/16":    false,
		"groove a top 1/4 1:back 1/64-19:left 11/16": true,
		"mortise a top 1/4 1:back 1-19:left 11/16":   true,
	} {
		at := func(w deck.Warning) bool { return w.Code == "thin-floor" }
		warnings := workpiece.DeckOf(t, workpiece.PieceFrom(t, "20 8 3/4", cut)).Warnings
		if i := slices.IndexFunc(warnings, at); assert.GreaterOrEqual(t, i, 0, cut) {
			want := "make it 1/16 in shallower"
			if offered {
				want += ", or cut it through"
			}
			assert.Regexp(t, want+"$", warnings[i].Text, cut)
		}
	}
}
