package remark

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// findSplinters looks for cuts across the grain that run out through an edge
// after the cut along that edge which would have cleaned their exits.
func findSplinters(w *work) []finding {
	var found []finding
	told := map[*joinery.Cut]bool{}
	for _, m := range w.atTable() {
		r := m.cards[len(m.cards)-1]
		if w.grainless() || told[m.cut] || r.End != deck.RunOut || m.channel.Run() == w.piece.Grain || m.channel.Down.Dimension() == w.piece.Grain {
			continue
		}
		exit := r.Leads.Opposite()
		for _, long := range w.atTable() {
			last := long.cards[len(long.cards)-1]
			if long.cut != m.cut && !slices.Contains(m.cut.After, long.cut.Name) && long.channel.Run() == w.piece.Grain && last.Setup < r.Setup && long.cleans(m, exit, w.piece.Size) {
				told[m.cut] = true
				found = append(found, finding{m.cut, fmt.Sprintf("the %s runs out of the %s across the grain after the %s was cut there, so its splinters stay: ends before long edges, %s, or back it up with scrap that fills that cut",
					m.words(), exit, long.words(), first(m, long)), []string{"after", "in", "at"}})
				break
			}
		}
	}
	return found
}

// cleans reports whether a cut along the grain takes away the wood at the exit
// of another.
func (m *made) cleans(other *made, exit joinery.Side, size joinery.Size) bool {
	d := exit.Dimension()
	reaches := m.box[d].Lo == 0
	if exit.High() {
		reaches = m.box[d].Hi == size[d]
	}
	return reaches && !m.box.And(other.box).Empty()
}
