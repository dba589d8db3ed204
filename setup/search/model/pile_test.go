package model

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
)

// What a pile covers adds no rung, whatever else comes to it; a run whose wood
// begins lower than that of the same depth may.
func TestWhatIsCoveredAddsNoRung(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	const eighth = measure.Inch / 8
	demand := func() ladder.Demand {
		d := ladder.Demand{Depth: measure.Length(1+random.IntN(5)) * eighth, Cap: measure.Length(1+random.IntN(3)) * eighth}
		d.From = measure.Length(random.IntN(int(d.Depth/eighth))) * eighth
		return d
	}
	count := func(demands ...ladder.Demand) int {
		var p Pile
		for _, d := range demands {
			p.Add(&ReadyRun{Demand: d})
		}
		return ladder.Count(p.demands(), measure.InchScale)
	}
	covered := 0
	for range 5000 {
		var p Pile
		for range 1 + random.IntN(3) {
			p.Add(&ReadyRun{Demand: demand()})
		}
		d := demand()
		if !p.Covers(d) {
			continue
		}
		covered++
		others := append(p.demands(), demand(), demand())
		require.Equal(t, count(others...), count(append(others, d)...), "%v on %v", d, others)
	}
	assert.Greater(t, covered, 500)
}
