package deckfile

import "fencecard/setup/deck"

// jsonCard is the card of one piece.
type jsonCard struct {
	Number int        `json:"number"`
	Piece  string     `json:"piece"`
	Count  int        `json:"count"`
	Runs   []string   `json:"runs"`
	ByHand []jsonHand `json:"by_hand"`
}

type jsonHand struct {
	Cut    string  `json:"cut"`
	By     string  `json:"by"`
	Before *string `json:"before"` // the run that waits for it; null where it comes after all
}

func cardsToJSON(cards []deck.Card) []jsonCard {
	out := make([]jsonCard, len(cards))
	for i, c := range cards {
		out[i] = jsonCard{Number: c.Number, Piece: c.Piece.Name, Count: c.Piece.Count, Runs: []string{}, ByHand: []jsonHand{}}
		for _, r := range c.Runs {
			out[i].Runs = append(out[i].Runs, r.Number())
		}
		for _, h := range c.ByHand {
			hand := jsonHand{Cut: h.Cut.Name, By: h.Cut.By}
			if h.Before != nil {
				number := h.Before.Number()
				hand.Before = &number
			}
			out[i].ByHand = append(out[i].ByHand, hand)
		}
	}
	return out
}
