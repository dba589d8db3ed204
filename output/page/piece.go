package page

import (
	"html/template"

	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// pieceView is a piece and its card.
type pieceView struct {
	Number, Count int
	Name          string
	Card          template.HTML
}

func pieceOf(s *sheets.Screen, c *deck.Card) (pieceView, error) {
	card, err := drawn(s.Card(c))
	return pieceView{c.Number, c.Piece.Count, c.Piece.Name, card}, err
}
