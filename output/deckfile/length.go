package deckfile

import (
	"encoding/json"

	"fencecard/joinery"
)

// Length is a length in JSON: exact in millimetres, and as the sheets print it.
type Length struct {
	MM   json.Number `json:"mm"`
	Text string      `json:"text"`
}

// Scale writes lengths for JSON as the cards print them.
type Scale joinery.Scale

// Length is one length.
func (s Scale) Length(l joinery.Length) Length {
	return Length{json.Number(l.MM()), joinery.Scale(s).Format(l)}
}

// Lengths are several.
func (s Scale) Lengths(ls []joinery.Length) []Length {
	out := make([]Length, len(ls))
	for i, l := range ls {
		out[i] = s.Length(l)
	}
	return out
}

// some is a length that may be left out.
func (s Scale) some(l joinery.Length) *Length {
	length := s.Length(l)
	return &length
}
