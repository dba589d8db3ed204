package output

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// pieceIndex lists every piece with all its cards in running order, so that
// one can follow a piece through the shop.
func (s setter) pieceIndex(d *deck.Deck) []page {
	w := s.frame.W
	body, bold := s.letters(s.grade.body), s.bold(s.grade.body)
	of := map[*joinery.Piece][]*deck.Run{}
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			of[r.Piece] = append(of[r.Piece], r)
		}
	}
	var rows []block
	for i := range d.Plan.Pieces {
		p := &d.Plan.Pieces[i]
		name := phrase{}.say(bold, fmt.Sprintf("%s, %d:", p.Name, p.Count))
		if len(of[p]) == 0 {
			rows = append(rows, name.say(body, "no cuts").set(w))
			continue
		}
		head := block{h: 1.5}
		head.below(name.set(w), 0)
		for k, r := range of[p] {
			line := phrase{}.say(bold, r.Number()).say(body, r.Cut.Name+" "+r.Channel.Part).tie(body, ":").
				say(bold, strings.ToUpper(r.Step.Down.String())).say(body, "down,").
				say(bold, strings.ToUpper(r.Step.Fence.String())).say(body, "to the fence,").
				say(bold, strings.ToUpper(r.Leads.String())).say(body, "leads")
			row := ticked(line, 3.5, w)
			if k == 0 {
				head.below(row, 0.5) // a name never stands alone at the foot of a page
				row = head
			}
			rows = append(rows, row)
		}
	}
	return s.pour(func(sheet int) block {
		title := phrase{}.say(s.bold(s.grade.title), "Pieces, and their cards in running order")
		if sheet > 0 {
			title = title.say(s.letters(s.grade.body), fmt.Sprintf("page %d", sheet+1))
		}
		return title.set(w)
	}, rows, 0.5)
}
