package model

import "fencecard/joinery"

// priceCutting works out what the cutting of every way takes with as few passes
// as any ladder allows. What the way that takes the least takes is fixed; the
// costs of the model are those beyond it.
func (m *Model) priceCutting() {
	minute := m.Problem.Minutes.Pass
	for i := range m.Kinds {
		k := &m.Kinds[i]
		for w := range k.Ways {
			way := &k.Ways[w]
			way.Own = 0
			for j := range way.Runs {
				r := &way.Runs[j]
				r.Over = joinery.Time(r.times*k.pieces) * minute
				way.Own += r.Over * joinery.Time(r.Demand.Passes())
			}
			for _, f := range way.Fits {
				m.Fits = max(m.Fits, f+1)
			}
		}
		least := k.Ways[0].Own
		for w := range k.Ways {
			least = min(least, k.Ways[w].Own)
		}
		for w := range k.Ways {
			k.Ways[w].Own -= least
		}
		m.Fixed += least
	}
}
