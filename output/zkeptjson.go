package output

import "fencecard/setup/deck"

type jsonKept struct {
	Name   string   `json:"name"`
	Code   string   `json:"code"`
	Notes  []string `json:"notes"`
	Learnt []string `json:"learnt"`
}

func keptToJSON(k *deck.Kept) *jsonKept {
	if k == nil {
		return nil
	}
	return &jsonKept{k.Name, k.Code, orEmpty(k.Notes), orEmpty(k.Learnt)}
}

// orEmpty makes an empty list of none, which is null in JSON.
func orEmpty(texts []string) []string {
	if texts == nil {
		return []string{}
	}
	return texts
}
