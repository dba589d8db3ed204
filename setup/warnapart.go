package setup

import (
	"fmt"

	"fencecard/joinery"
)

// findApart looks for cuts that leave the piece in two: what comes loose lies
// free beside a turning bit.
func findApart(w *work) []finding {
	var cards []*Card
	by := map[*Card]*made{}
	for _, m := range w.cuts {
		for _, c := range m.cards {
			cards, by[c] = append(cards, c), m
		}
	}
	var found []finding
	told := map[*made]bool{}
	for _, p := range partings(cards) {
		m := by[p.card]
		if told[m] {
			continue
		}
		told[m] = true
		found = append(found, finding{m.cut, fmt.Sprintf("the %s%s cuts the piece apart, and %s comes loose beside the turning bit and may be thrown: saw it instead, or make it shallower",
			m.words(), needing(p, by), w.loose(p)), []string{"depth", "cheeks"}})
	}
	return found
}

// needing names what a cut needs to part the wood, besides itself.
func needing(p parting, by map[*Card]*made) string {
	m := by[p.card]
	if m.channel.Depth == p.card.Piece.Size.Between(m.channel.Down) {
		return ""
	}
	others := map[*joinery.Cut]bool{}
	for _, c := range p.with {
		others[c.Cut] = c.Cut != m.cut
	}
	if len(others) == 1 && others[p.with[0].Cut] {
		return ", together with the " + by[p.with[0]].words() + ","
	}
	return ", together with cuts made before it,"
}

// loose says what falls off. A cut through all the stock leaves a strip or an
// end at the fence; of several cuts together only that there is one is said.
func (w *work) loose(p parting) string {
	c := p.card
	if c.Channel.Depth < w.piece.Size.Between(c.Channel.Down) || c.Run.NearEdge <= 0 {
		return "a part of it"
	}
	return fmt.Sprintf("%s of wood at the %s", w.text(c.Run.NearEdge), c.Run.Fence)
}
