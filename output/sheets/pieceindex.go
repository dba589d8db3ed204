package sheets

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// pieceIndex lists every piece with all its cards in running order, so that
// one can follow a piece through the shop.
func (s Setter) pieceIndex(d *deck.Deck) []page {
	w := s.frame.W
	body, bold := s.Letters(s.grade.body), s.bold(s.grade.body)
	of := map[*joinery.Piece][]*deck.Run{}
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			of[r.Piece] = append(of[r.Piece], r)
		}
	}
	var rows []paper.Block
	for i := range d.Plan.Pieces {
		p := &d.Plan.Pieces[i]
		name := paper.Phrase{}.Say(bold, fmt.Sprintf("%s, %d:", p.Name, p.Count))
		if len(of[p]) == 0 {
			rows = append(rows, name.Say(body, "no cuts").Set(w))
			continue
		}
		head := paper.Block{H: 1.5}
		head.Below(name.Set(w), 0)
		for k, r := range of[p] {
			line := paper.Phrase{}.Say(bold, r.Number()).Say(body, r.Cut.Name+" "+r.Channel.Part).Tie(body, ":").
				Say(bold, strings.ToUpper(r.Step.Down.String())).Say(body, "down,").
				Say(bold, strings.ToUpper(r.Step.Fence.String())).Say(body, "to the fence,").
				Say(bold, strings.ToUpper(r.Leads.String())).Say(body, "leads")
			row := ticked(line, 3.5, w)
			if k == 0 {
				head.Below(row, 0.5) // a name never stands alone at the foot of a page
				row = head
			}
			rows = append(rows, row)
		}
	}
	return s.pour(func(sheet int) paper.Block {
		title := paper.Phrase{}.Say(s.bold(s.grade.title), "Pieces, and their cards in running order")
		if sheet > 0 {
			title = title.Say(s.Letters(s.grade.body), fmt.Sprintf("page %d", sheet+1))
		}
		return title.Set(w)
	}, rows, 0.5)
}
