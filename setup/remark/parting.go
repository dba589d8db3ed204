package remark

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/remark/loose"
)

// findApart looks for cuts that leave the piece in two: what comes loose lies
// free beside a turning bit.
func findApart(w *work) []finding {
	var runs []*deck.Run
	by := map[*deck.Run]*made{}
	for _, m := range w.cuts {
		for _, r := range m.runs {
			runs, by[r] = append(runs, r), m
		}
	}
	var found []finding
	told := map[*made]bool{}
	parted, whole := loose.Partings(runs)
	if !whole {
		found = append(found, finding{text: "so many cuts run into one another that not all were looked at for parts that come loose: look for them yourself before you cut", keys: []string{"cuts"}})
	}
	for _, p := range parted {
		m := by[p.Run]
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
func needing(p loose.Parting, by map[*deck.Run]*made) string {
	m := by[p.Run]
	if m.channel.Depth == p.Run.Piece.Size.Between(m.channel.Down) {
		return ""
	}
	others := map[*joinery.Cut]bool{}
	for _, r := range p.With {
		others[r.Cut] = r.Cut != m.cut
	}
	if len(others) == 1 && others[p.With[0].Cut] {
		return ", together with the " + by[p.With[0]].words() + ","
	}
	return ", together with cuts made before it,"
}

// loose says what falls off. A cut through all the stock leaves a strip or an
// end at the fence; of several cuts together only that there is one is said.
func (w *work) loose(p loose.Parting) string {
	r := p.Run
	if r.Channel.Depth < w.piece.Size.Between(r.Channel.Down) || r.Step.NearEdge <= 0 {
		return "a part of it"
	}
	return fmt.Sprintf("%s of wood at the %s", w.text(r.Step.NearEdge), r.Step.Fence)
}
