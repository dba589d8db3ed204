package deckfile

import "fencecard/setup/deck"

// Kept is what a setup book says of a setup, in JSON.
type Kept struct {
	Name   string   `json:"name"`
	Code   string   `json:"code"`
	Notes  []string `json:"notes"`
	Learnt []string `json:"learnt"`
}

// KeptOf is what a setup book says of a setup; nil where it does not have it.
func KeptOf(k *deck.Kept) *Kept {
	if k == nil {
		return nil
	}
	return &Kept{k.Name, k.Code, OrEmpty(k.Notes), OrEmpty(k.Learnt)}
}

// OrEmpty makes an empty list of none, which is null in JSON.
func OrEmpty(texts []string) []string {
	if texts == nil {
		return []string{}
	}
	return texts
}
