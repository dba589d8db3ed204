package output

import "io"

// indented writes a value as one indented JSON document.
func indented(w io.Writer, v any) error {
	return newEncoder(w, "").Encode(v)
}
