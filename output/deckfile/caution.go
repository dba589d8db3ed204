package deckfile

import (
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// jsonCaution is a caution in general words; cards refer to it by number.
type jsonCaution struct {
	Number int    `json:"number"`
	Code   string `json:"code"`
	Weight string `json:"weight"`
	Text   string `json:"text"`
	Basis  string `json:"basis"`
}

func cautionsToJSON(d *deck.Deck) []jsonCaution {
	out := []jsonCaution{}
	for _, c := range wording.UsedCautions(d, 0) {
		out = append(out, jsonCaution{c.Number, c.Code, c.Weight.String(), c.Words, c.Basis})
	}
	return out
}
