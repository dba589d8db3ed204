package deckfile

import (
	"encoding/json"

	"fencecard/joinery/measure"
)

// Length is a length in JSON: exact in millimetres, and as the sheets print it.
type Length struct {
	MM   json.Number `json:"mm"`
	Text string      `json:"text"`
}

// Scale writes lengths for JSON as the papers print them.
type Scale measure.Scale

// Length is one length.
func (s Scale) Length(l measure.Length) Length {
	return Length{json.Number(l.MM()), measure.Scale(s).Format(l)}
}

// Lengths are several.
func (s Scale) Lengths(ls []measure.Length) []Length {
	out := make([]Length, len(ls))
	for i, l := range ls {
		out[i] = s.Length(l)
	}
	return out
}

// some is a length that may be left out.
func (s Scale) some(l measure.Length) *Length {
	length := s.Length(l)
	return &length
}
