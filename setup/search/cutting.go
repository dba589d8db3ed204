package search

import "fencecard/joinery"

// priceCutting works out what the cutting of every way takes with as few passes
// as any ladder allows. What the way that takes the least takes is fixed; the
// costs of the model are those beyond it.
func (m *model) priceCutting() {
	minute := m.problem.Minutes.Run
	for i := range m.kinds {
		k := &m.kinds[i]
		for w := range k.ways {
			way := &k.ways[w]
			way.own = 0
			for j := range way.runs {
				r := &way.runs[j]
				r.over = joinery.Time(r.times*k.pieces) * minute
				way.own += r.over * joinery.Time(r.demand.Passes())
			}
			for _, f := range way.fits {
				m.fits = max(m.fits, f+1)
			}
		}
		least := k.ways[0].own
		for w := range k.ways {
			least = min(least, k.ways[w].own)
		}
		for w := range k.ways {
			k.ways[w].own -= least
		}
		m.fixed += least
	}
}
