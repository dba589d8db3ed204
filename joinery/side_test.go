package joinery

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// vectors gives the six sides as unit vectors: X to the right, Y to the back,
// Z to the top.
var vectors = map[Side][3]int{
	Left: {-1, 0, 0}, Right: {1, 0, 0},
	Front: {0, -1, 0}, Back: {0, 1, 0},
	Bottom: {0, 0, -1}, Top: {0, 0, 1},
}

func sideOf(v [3]int) Side {
	for s, w := range vectors {
		if v == w {
			return s
		}
	}
	return NoSide
}

// cross is the cross product from the school book.
func cross(a, b [3]int) [3]int {
	return [3]int{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func TestCrossIsTheCrossProduct(t *testing.T) {
	for _, s := range Sides {
		for _, u := range Sides {
			assert.Equal(t, sideOf(cross(vectors[s], vectors[u])), s.Cross(u), "%s x %s", s, u)
		}
		assert.Equal(t, NoSide, s.Cross(NoSide))
		assert.Equal(t, NoSide, NoSide.Cross(s))
	}
}

// A blank lies on the table in 24 ways: one of six sides down, one of the four
// beside it to the fence. Each is found by turning the blank, a quarter turn
// at a time, from the way it stands in the finished work.
func TestEveryWayOntoTheTable(t *testing.T) {
	type turning map[Side]Side // which side of the blank lies where
	quarter := func(at turning, about [3]int) turning {
		turned := turning{}
		for where, side := range at {
			// A quarter turn keeps the axis and takes any other direction to the
			// cross product of the axis with it.
			to := sideOf(cross(about, vectors[where]))
			if to == NoSide {
				to = where
			}
			turned[to] = side
		}
		return turned
	}
	start := turning{}
	for _, s := range Sides {
		start[s] = s
	}
	seen := map[string]turning{}
	var visit func(turning)
	visit = func(at turning) {
		key := fmt.Sprint(at[Bottom], at[Back])
		if _, ok := seen[key]; ok {
			return
		}
		seen[key] = at
		visit(quarter(at, [3]int{1, 0, 0}))
		visit(quarter(at, [3]int{0, 0, 1}))
	}
	visit(start)
	require.Len(t, seen, 24)
	for _, at := range seen {
		// The table is below, the fence at the back, and the work is fed to the
		// left: what lies to the left leads.
		assert.Equal(t, at[Left], at[Back].Cross(at[Bottom]), "%s down, %s to the fence", at[Bottom], at[Back])
		assert.Equal(t, at[Right], at[Left].Opposite())
	}
}

// The table of leading ends worked out by hand for the machine.
func TestLeadingEnds(t *testing.T) {
	for _, c := range []struct{ down, fence, leads Side }{
		{Right, Front, Top}, {Left, Front, Bottom}, {Right, Back, Bottom},
		{Back, Top, Left}, {Back, Bottom, Right}, {Top, Front, Left},
	} {
		assert.Equal(t, c.leads, c.fence.Cross(c.down), "%s down, %s to the fence", c.down, c.fence)
	}
}

func TestSidesAndDimensions(t *testing.T) {
	for _, s := range Sides {
		v, o := vectors[s], vectors[s.Opposite()]
		assert.Equal(t, [3]int{-v[0], -v[1], -v[2]}, o, "opposite %s", s)
		assert.NotZero(t, v[s.Dimension()])
		assert.Equal(t, v[s.Dimension()] > 0, s.High(), "%s", s)
		parsed, ok := ParseSide(s.String())
		assert.True(t, ok)
		assert.Equal(t, s, parsed)
	}
	for _, d := range Dimensions {
		assert.Equal(t, d, d.Low().Dimension())
		assert.Equal(t, d.Low(), d.High().Opposite())
		assert.ElementsMatch(t, strings.Split(d.String(), "-"), []string{d.Low().String(), d.High().String()})
		parsed, ok := ParseDimension(d.String())
		assert.True(t, ok)
		assert.Equal(t, d, parsed)
		for _, e := range Dimensions {
			if d != e {
				assert.ElementsMatch(t, Dimensions, []Dimension{d, e, d.Third(e)})
			}
		}
	}
	for _, word := range []string{"", "Left", "inside", "left-right"} {
		_, ok := ParseSide(word)
		assert.False(t, ok, word)
	}
	assert.Equal(t, NoSide, NoSide.Opposite())
	assert.False(t, NoSide.High())
}
