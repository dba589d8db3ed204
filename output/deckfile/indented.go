package deckfile

import "io"

// Indented writes a value as one indented JSON document.
func Indented(w io.Writer, v any) error {
	return NewEncoder(w, "").Encode(v)
}
