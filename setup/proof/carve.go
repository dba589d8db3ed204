package proof

import (
	"fencecard/joinery"
	"fencecard/setup/solid"
)

// Carving is a piece and what the cards take out of it, a hollow for each card
// in running order.
type Carving struct {
	Piece   *joinery.Piece
	Cards   []*Card
	Hollows []solid.Hollow
}

// Removed returns the volume taken out of one piece, in cubic millimetres.
func (c *Carving) Removed() float64 { return solid.Removed(c.Hollows, c.Piece.Size) }

// Carve cuts every piece of the plan as the cards say, and by nothing else.
// Cards that the plan or the shop knows nothing of cut nothing.
func Carve(plan *joinery.Plan, claims *Claims) []Carving {
	p := newProver(plan, claims)
	all := make([]Carving, len(plan.Pieces))
	at := make(map[*joinery.Piece]*Carving, len(all))
	for i := range all {
		all[i].Piece = &plan.Pieces[i]
		at[all[i].Piece] = &all[i]
	}
	for i := range claims.Setups {
		s := &claims.Setups[i]
		bit := p.bits[s.Bit.Name]
		for j := range s.Cards {
			card := &s.Cards[j]
			w := p.find(card)
			if w == nil || bit == nil || leading(card.Down, card.Fence) != card.Leads || card.Leads == joinery.NoSide {
				continue
			}
			c := at[w.piece]
			t := table{card, bit.True(), w.piece.Size, w.piece.Size.Between(card.Leads)}
			c.Cards = append(c.Cards, card)
			c.Hollows = append(c.Hollows, t.cut(s.Fence))
		}
	}
	return all
}
