package remark

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// Order is two cuts of a piece of which a maker would make the first first.
type Order struct{ First, Then *joinery.Cut }

// Splintered lists the exits across the grain of a deck whose cut along the edge,
// which would take their splinters away, comes first, but for those that the maker
// wants so.
func Splintered(d *deck.Deck) []Order {
	var all []Order
	for _, w := range works(d) {
		for _, e := range w.splintered() {
			all = append(all, Order{First: e.across.cut, Then: e.along.cut})
		}
	}
	return all
}

// exit is a cut across the grain that runs out through an edge, the cut along that
// edge that takes its splinters away where it comes later, and the side it is at.
type exit struct {
	across, along *made
	at            joinery.Side
}

// splintered lists the exits of a piece, one for each cut across; the edge of a board
// without grain breaks out there as well.
func (w *work) splintered() []exit {
	var found []exit
	told := map[*joinery.Cut]bool{}
	for _, m := range w.atTable() {
		r := m.runs[len(m.runs)-1]
		if told[m.cut] || r.End != deck.RunOut || m.channel.Run() == w.piece.Grain || m.channel.Down.Dimension() == w.piece.Grain {
			continue
		}
		at := r.Leads.Opposite()
		for _, long := range w.atTable() {
			last := long.runs[len(long.runs)-1]
			if long.cut != m.cut && !slices.Contains(m.cut.After, long.cut.Name) && long.channel.Run() == w.piece.Grain &&
				last.Setup < r.Setup && long.cleans(m, at, w.piece.Size) {
				told[m.cut] = true
				found = append(found, exit{m, long, at})
				break
			}
		}
	}
	return found
}

// findSplinters looks for cuts across the grain that run out through an edge
// after the cut along that edge which would have cleaned their exits.
func findSplinters(w *work) []finding {
	var found []finding
	for _, e := range w.splintered() {
		across := " across the grain"
		if w.grainless() {
			across = ""
		}
		found = append(found, finding{e.across.cut, fmt.Sprintf("the %s runs out of the %s%s after the %s was cut there, so its splinters stay: ends before long edges, %s, or back it up with scrap that fills that cut",
			e.across.words(), e.at, across, e.along.words(), first(e.across, e.along)), []string{"after", "in", "at"}})
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

// filled names the kind of an earlier cut that has taken the edge where a run comes out
// across the grain, as a rabbet does where a dado ends in it: scrap flat against the
// piece backs nothing up there.
func filled(d *deck.Deck) map[*deck.Run]string {
	found := map[*deck.Run]string{}
	for _, w := range works(d) {
		for _, m := range w.atTable() {
			for _, r := range m.runs {
				if r.End != deck.RunOut || m.channel.Run() == w.piece.Grain {
					continue
				}
				for _, other := range w.atTable() {
					if other.cut != m.cut && !other.channel.Section.Shaped() && other.channel.Run() == w.piece.Grain &&
						deck.ByLastPass(other.runs[len(other.runs)-1], r) < 0 && other.cleans(m, r.Leads.Opposite(), w.piece.Size) {
						found[r] = other.cut.Kind.Name
					}
				}
			}
		}
	}
	return found
}
