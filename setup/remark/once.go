package remark

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// Once returns the deck's warnings to be read: what is said of a piece and
// again of its mirror images is said once, with how many others it is true of.
func Once(d *deck.Deck) []deck.Warning {
	type key struct {
		piece, cut, code string
		place            joinery.Place
	}
	source := map[string]string{}
	for i := range d.Plan.Pieces {
		p := &d.Plan.Pieces[i]
		source[p.Name] = p.Name
		if p.MirrorOf != "" {
			source[p.Name] = p.MirrorOf
		}
	}
	var once []deck.Warning
	first := map[key]int{}                  // where in once
	others := make(map[int]map[string]bool) // the other pieces, by name
	for _, w := range d.Warnings {
		k := key{source[w.Piece], w.Cut, w.Code, w.Place}
		at, told := first[k]
		if !told || k.piece == "" || once[at].Piece == w.Piece {
			if !told {
				first[k] = len(once)
			}
			once = append(once, w)
			continue
		}
		if others[at] == nil {
			others[at] = map[string]bool{}
		}
		others[at][w.Piece] = true
	}
	for at, pieces := range others {
		once[at].Text += fmt.Sprintf(" (and %d mirrored)", len(pieces))
	}
	return once
}
