package piecelist_test

import (
	"fmt"
	"testing"

	"fencecard/joinery/piecelist"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What becomes of one row, read with every default: the plan's length, width and
// thickness, or what is asked or wrong.
func TestOneRow(t *testing.T) {
	for _, c := range []struct{ heads, cells, want string }{
		{"Part,Length,Width,Thickness", "Shelf,30,9,3/4", "30 x 9 x 3/4 in"},
		{"Part,Length,Width,Thickness", `Shelf,"30""","9""","3/4"""`, "30 x 9 x 3/4 in"},
		{"Part,Length,Width,Thickness", "Shelf,2' 6,9,3/4", "30 x 9 x 3/4 in"},
		{"Part,Length,Width,Thickness", `Shelf,"2'-6 1/2""",9,3/4`, "30 1/2 x 9 x 3/4 in"},
		{"Part,Length,Width,Thickness", "Shelf,762,228,19", "762 x 228 x 19 mm"},
		{"Part,Length,Width,Thickness", "Shelf,30,9,19 mm", "the list does not say whether its lengths are in inches or in millimetres"},
		{"Part,Length,Width,Thickness", "Shelf,30,9 1/2,19 mm", "30 x 9 1/2 x 19 mm in"},
		{"Part,Length,Width,Thickness", "Shelf,76.2 cm,22.8 cm,1.9 cm", "762 x 228 x 19 mm"},
		{"Part,Length (cm),Width (cm),Thickness (cm)", "Shelf,76.2,22.8,1.9", "762 x 228 x 19 mm"},
		{"Part,Length (cm),Width (cm),Thickness (cm)", "Shelf,12. Mai,8,1.9", "125 x 80 x 19 mm"},
		{"Part,Length (mm),Width (mm),Thickness (in)", "Shelf,762,228,3-Apr", "762 x 228 x 3/4 in mm"},
		{"Part,Length (mm),Width (mm),Thickness (in)", "Shelf,762,228,0.63", "762 x 228 x 5/8 in mm"},
		{"Part,Length (mm),Width (mm),Thickness (in)", "Shelf,762,228,5/4", `D2: "5/4" of "Shelf" is the name of rough stock, and no size`},
		{"Part,Length (mm),Width (mm),Thickness (mm)", "Shelf,762,228,0.75", `D2: the thickness of "Shelf" is "0.75": that would be 0.75 mm`},
		{"Part,Length,Width,Thickness", "Shelf,3010,9 1/2,3/4", "the list does not say whether its lengths are in inches or in millimetres"},
		{"Part,Length (in),Width,Thickness", "Shelf,3010 in,9 1/2,3/4", "3010 x 9 1/2 x 3/4 in"},
		{"Part,Length,Width,Thickness", "Shelf,30 1/2,9,2x4", `D2: "2x4" of "Shelf" is the name of rough stock, and no size`},
		{"Part,Length,Width,Thickness", "Shelf,30 1/2,9,", `D2: the thickness of "Shelf" is missing`},
		{"Part,Length,Width,Thickness", "Shelf,30 1/2,9,0", `D2: the thickness of "Shelf": "0" is no length of a piece`},
		{"Part,Length,Width,Thickness", "Shelf,30 1/2,9,3/0", `D2: the thickness of "Shelf": "3/0" divides by zero`},
		{"Part,Length,Width,Thickness", "Shelf,30 1/2,9,-3", `D2: the thickness of "Shelf": "-3" is negative`},
		{"Part,Size", "Shelf,30 1/2 x 9 x 3/4", "30 1/2 x 9 x 3/4 in"},
		{"Part,Size", "Shelf,3/4 x 9 x 30 1/2", "30 1/2 x 9 x 3/4 in"},
		{"Part,T x W x L", "Shelf,3/4 x 9 x 30 1/2", "30 1/2 x 9 x 3/4 in"},
		{"Part,W x L,Thickness", "Shelf,9 x 30 1/2,3/4", "30 1/2 x 9 x 3/4 in"},
		{"Part,L x W x T", "Shelf,30 1/2 x 9", `B2: the length of "Shelf": "30 1/2 x 9" gives more than one length`},
		{"Part,Size", "Shelf,9 x 3/4 x 30 1/2", `"9 x 3/4 x 30 1/2" has several lengths in one cell`},
		{"Part,Length,Width", "Shelf,30 1/2,9", "no column says the thickness"},
		{"Part,Length,Thickness", "Shelf,30 1/2,9", "no column says the width"},
		{"Part,Length,Width,Thickness,Width", "Shelf,30 1/2,9,3/4,9", `column C, "Width" and column E, "Width" both seem to hold the width`},
	} {
		list, questions, err := piecelist.Read("list.csv", []byte(c.heads+"\n"+c.cells+"\n"), piecelist.Options{Defaults: true})
		got := ""
		switch {
		case err != nil:
			got = err.Error()
		case len(questions) > 0:
			got = questions[0].Problem
		default:
			require.Len(t, list.Pieces, 1)
			p := list.Pieces[0]
			got = fmt.Sprintf("%s x %s x %s %s", p.Length.Text, p.Width.Text, p.Thickness.Text, list.Unit)
			checkPlan(t, list)
		}
		assert.Contains(t, got, c.want, c.heads+"\n"+c.cells)
	}
}

// Rows that are no pieces are left out, and told.
func TestRowsThatAreNoPieces(t *testing.T) {
	list, questions, err := piecelist.Read("list.csv", []byte(`Hall bench,,,,
Part,Qty,Length,Width,Thickness
,,,,
BASE:,,,,
Rail,1,30,3,3/4
-----,,,,
Part,Qty,Length,Width,Thickness
Shelf,1,30,9,3/4
,2,,,
Grand total,2,,,
`), piecelist.Options{Defaults: true})
	require.NoError(t, err)
	require.Empty(t, questions)
	assert.Equal(t, "Hall bench", list.Title)
	assert.Equal(t, []string{
		`row 4, "BASE:": nothing but a name, taken for a heading`,
		`row 7, "Part | Qty | Length | Width | Thickness": the heads again`,
		`row 9, "2": no name and no size`,
		`row 10, "Grand total | 2": a total`,
	}, list.Left)
	require.Len(t, list.Pieces, 2)
	assert.Equal(t, "BASE", list.Pieces[0].Heading)
	assert.Equal(t, 8, list.Pieces[1].Row)
}
