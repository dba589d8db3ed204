package sheets

import (
	"fmt"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// sizesHeading says what the sizes of the pieces are, and in which order.
const sizesHeading = "Pieces, finished, to saw first: left-right × front-back × top-bottom"

// sizeRows list every piece with its finished size, those of one size together.
// Lengths that a plan leaves to its joints stand nowhere else before a piece
// lies on the bench.
func (s Setter) sizeRows(d *deck.Deck) []paper.Block {
	var all []paper.Block
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	pieces := d.Plan.Pieces
	for len(pieces) > 0 {
		size := pieces[0].Size
		var text paper.Phrase
		for len(pieces) > 0 && pieces[0].Size == size {
			p := pieces[0]
			pieces = pieces[1:]
			if text != nil {
				text = text.Tie(l, ",")
			}
			text = text.Say(l, p.Name)
			if p.Count > 1 {
				text = text.Keep(l, fmt.Sprintf("(%d)", p.Count))
			}
		}
		text = text.Tie(l, ":")
		for k, length := range size {
			if k > 0 {
				text = text.Keep(l, "×")
			}
			text = text.Keep(bold, s.Plain(length))
		}
		all = append(all, text.Set(s.Frame.W))
	}
	return lined(all, s.Frame.W, 6)
}
