package piecelist_test

import (
	"fmt"
	"strings"
	"testing"

	"fencecard/joinery/piecelist"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Rows that name the two sides of one piece are offered as one and its mirror
// image, where they are of one size.
func TestMirroredRows(t *testing.T) {
	const heads = "Part,Qty,Length,Width,Thickness,As\n"
	for _, c := range []struct{ rows, want string }{
		{"Left side,1,30,9,3/4,\nRight side,1,30,9,3/4,\n", "Left side; Right side of Left side [left-right]"},
		{"Left side,1,30,9,3/4,\nRight side,1,30 1/2,9,3/4,\n", "Left side; Right side"},
		{"Left side,1,30,9,3/4,\nRight side,1,30,9,3/4,separate\n", "Left side; Right side"},
		{"Left side,1,30,9,3/4,alike\nRight side,1,30,9,3/4,\n", "Left side; Right side"},
		{"Left side,1,30,9,3/4,\nRight side,1,30,9,3/4,mirror\n", "Left side; Right side of Left side [left-right]"},
		{"Side,1,30,9,3/4,\nRight side,1,30,9,3/4,\n", "Side; Right side"},
		{"Leg front left,1,30,2,2,\nLeg front right,1,30,2,2,\nLeg back left,1,30,2,2,\nLeg back right,1,30,2,2,\n",
			"Leg front left; Leg front right of Leg front left [left-right]; Leg back left of Leg front left [front-back]; Leg back right of Leg front left [left-right front-back]"},
		{"Front leg,2,30,2,2,pair left right\nBack leg,2,30,2,2,pair left right\n",
			"Front left leg; Front right leg of Front left leg [left-right]; Back left leg; Back right leg of Back left leg [left-right]"},
	} {
		list, questions, err := piecelist.Read("list.csv", []byte(heads+c.rows), piecelist.Options{Defaults: true, Unit: piecelist.Inches})
		require.NoError(t, err, c.rows)
		require.Empty(t, questions, c.rows)
		var got []string
		for _, p := range list.Pieces {
			for _, made := range p.Copies {
				text := made.Name
				if made.Of != "" {
					text += fmt.Sprint(" of ", made.Of, " ", made.Across)
				}
				got = append(got, text)
			}
		}
		assert.Equal(t, c.want, strings.Join(got, "; "), c.rows)
		checkPlan(t, list)
	}
	for _, rows := range []string{"Right side,1,30,9,3/4,mirror\n", "Left side,1,30,9,3/4,\nRight side,1,31,9,3/4,mirror\n", "Rail,1,30,9,3/4,mirror\n"} {
		_, _, err := piecelist.Read("list.csv", []byte(heads+rows), piecelist.Options{Defaults: true, Unit: piecelist.Inches})
		assert.ErrorContains(t, err, "is to be a mirror image, but no row before it has that name")
	}
}
