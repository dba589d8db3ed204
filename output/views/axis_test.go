package views

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
)

func TestAxisDrawsWholeWhereItFits(t *testing.T) {
	a, ok := newAxis(0.5, 100, 4, []span{point(-40), point(150), {-5, 5}})
	require.True(t, ok)
	assert.Zero(t, a.broken())
	assert.InDelta(t, 0, float64(a.place(-40)), 1e-9)
	assert.InDelta(t, 20, float64(a.place(0)), 1e-9)
	assert.InDelta(t, 95, float64(a.place(150)), 1e-9)
}

// TestAxisKeepsScale breaks axes at random: what is seen is drawn at the
// scale, in order, within the room, and with few breaks.
func TestAxisKeepsScale(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	broken := 0
	for range 2000 {
		scale, room := 0.1+r.Float64(), paper.Paper(40+200*r.Float64())
		var seen []span
		for range 2 + r.IntN(5) {
			at := 2000 * r.Float64()
			seen = append(seen, span{at, at + 30*r.Float64()})
		}
		a, ok := newAxis(scale, room, 4, seen)
		if !ok {
			continue
		}
		if a.broken() > 0 {
			broken++
		}
		require.LessOrEqual(t, a.broken(), mostBreaks)
		require.LessOrEqual(t, float64(a.length()), float64(room)+1e-6)
		for i, s := range seen {
			require.InDelta(t, (s.To-s.from)*scale, float64(a.place(s.To)-a.place(s.from)), 1e-6)
			for _, other := range seen[:i] {
				require.Equal(t, s.from < other.from, a.place(s.from) < a.place(other.from))
			}
		}
	}
	assert.Greater(t, broken, 100, "axes that were broken")
}
