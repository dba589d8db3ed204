package deck

import (
	"slices"

	"fencecard/joinery"
)

// Card is the card of one workpiece: all its runs of all setups, and what is
// made by hand.
type Card struct {
	Number int // from 1, the place of the piece in the plan
	Piece  *joinery.Piece
	Runs   []*Run // in running order
	ByHand []HandWork
}

// HandWork is a cut that is not made at the table. It comes before the run
// named, which waits for it, or after all runs where that is nil.
type HandWork struct {
	Cut    *joinery.Cut
	Before *Run
}

// Cards returns a card for each piece of the plan, in the plan's order.
func (d *Deck) Cards() []Card {
	cards := make([]Card, len(d.Plan.Pieces))
	at := make(map[string]*Card, len(cards))
	for i := range cards {
		p := &d.Plan.Pieces[i]
		cards[i] = Card{Number: d.CardNumber(i), Piece: p}
		at[p.Name] = &cards[i]
	}
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			if c := at[r.Piece.Name]; c != nil {
				c.Runs = append(c.Runs, r)
			}
		}
	}
	for i := range cards {
		cards[i].ByHand = handWork(&cards[i])
	}
	return cards
}

// CardNumber returns the number of the card of a piece, by its index in the
// plan. A part of a deck keeps the numbers of the whole.
func (d *Deck) CardNumber(piece int) int {
	if d.Numbers != nil {
		return d.Numbers[piece]
	}
	return piece + 1
}

func handWork(c *Card) []HandWork {
	var all []HandWork
	for i := range c.Piece.Cuts {
		cut := &c.Piece.Cuts[i]
		if cut.By == "" {
			continue
		}
		work := HandWork{Cut: cut}
		at := slices.IndexFunc(c.Runs, func(r *Run) bool { return slices.Contains(r.Cut.After, cut.Name) })
		if at >= 0 {
			work.Before = c.Runs[at]
		}
		all = append(all, work)
	}
	return all
}
