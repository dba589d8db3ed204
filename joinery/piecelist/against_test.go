package piecelist_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"fencecard/joinery/piecelist"
	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A list agrees with the plan that was made of it, whatever list of the gallery
// it is; and every single change of a row is told, of that row alone.
func TestCompare(t *testing.T) {
	for _, file := range lists(t) {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		list, _, err := piecelist.Read("list.csv", data, piecelist.Options{Defaults: true})
		if err != nil || list == nil {
			continue
		}
		plan, err := planfile.Read("plan.yaml", list.Plan(), nil)
		require.NoError(t, err)
		differences, questions, err := piecelist.Compare("list.csv", data, piecelist.Options{Defaults: true}, plan)
		require.NoError(t, err, file)
		assert.Empty(t, questions, file)
		assert.Empty(t, differences, file)
	}
}

// A length between shoulders agrees with a list that leaves the tenons to the
// joints, and with one that counts them in.
func TestLengthsBetweenShoulders(t *testing.T) {
	plan, err := planfile.Read("plan.yaml", []byte(`
unit: in
wood: white oak
pieces:
  - {piece: left leg, size: {left-right: 1 1/2, front-back: 1 1/2, top-bottom: 26}}
  - {piece: right leg, mirror: {of: left leg, across: left-right}}
  - {piece: rail, size: {left-right: 18 between shoulders, front-back: 3/4, top-bottom: 3 1/2}}
joints:
  - mortise and tenon: rail
    tenon: rail / left, right
    into: left leg / right, right leg / left
    place: {top: flush, front: 1/8 back}
    thickness: 1/4
    length: 3/4
`), nil)
	require.NoError(t, err)
	for length, told := range map[string]int{"18": 0, "19 1/2": 0, "19": 1} {
		list := "Part,Qty,Length,Width,Thickness,Wood\nLeft leg,1,26,1 1/2,1 1/2,white oak\nRight leg,1,26,1 1/2,1 1/2,white oak\nRail,1," + length + ",3 1/2,3/4,white oak\n"
		differences, questions, err := piecelist.Compare("list.csv", []byte(list), piecelist.Options{Defaults: true}, plan)
		require.NoError(t, err)
		assert.Empty(t, questions)
		assert.Len(t, differences, told, length)
	}
}

func TestChangesAreTold(t *testing.T) {
	const list = `Part,Qty,Length,Width,Thickness,Wood
Leg,4,26,1 1/2,1 1/2,white oak
Front rail,1,18,3 1/2,3/4,white oak
Back rail,1,18,3 1/2,3/4,white oak
Drawer side,2,11,3,1/2,sugar maple
Panel,1,12,14,1/4,plywood
`
	read, _, err := piecelist.Read("list.csv", []byte(list), piecelist.Options{Defaults: true})
	require.NoError(t, err)
	require.NotNil(t, read)
	plan, err := planfile.Read("plan.yaml", read.Plan(), nil)
	require.NoError(t, err)
	for _, c := range []struct{ from, to, says string }{
		{"Leg,4,26", "Leg,4,27", `2 "Leg": length 27 in in the list, 26 in in the plan`},
		{"Leg,4,", "Leg,8,", `2 "Leg": count 8 in the list, 4 in the plan`},
		{"26,1 1/2,1 1/2", "26,1 3/4,1 1/2", `2 "Leg": width and thickness 1 3/4 in x 1 1/2 in in the list, 1 1/2 in x 1 1/2 in in the plan`},
		{"Front rail", "Middle rail", `3 "Middle rail" is not in the plan: 1 of 18 x 3 1/2 x 3/4; 0 "Front rail" is in no row of the list`},
		{"sugar maple", "white oak", `5 "Drawer side": wood white oak in the list, sugar maple in the plan`},
		{"12,14", "14,12", `6 "Panel": length 14 in in the list, 12 in in the plan; 6 "Panel": width and thickness 12 in x 1/4 in in the list, 14 in x 1/4 in in the plan`},
		{"Back rail,1,18,3 1/2,3/4,white oak\n", "", `0 "Back rail" is in no row of the list`},
		{"26,1 1/2,1 1/2", "660.4 mm,1.5,1.5", ""},
	} {
		require.Contains(t, list, c.from)
		changed := strings.Replace(list, c.from, c.to, 1)
		differences, questions, err := piecelist.Compare("list.csv", []byte(changed), piecelist.Options{}, plan)
		require.NoError(t, err)
		require.Empty(t, questions)
		var told []string
		for _, d := range differences {
			told = append(told, fmt.Sprint(d.Row, " ", d.Says))
		}
		assert.Equal(t, c.says, strings.Join(told, "; "), c.to)
	}
}
