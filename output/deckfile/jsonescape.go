package deckfile

import (
	"encoding/json"
	"fmt"
	"io"
	"unicode/utf8"

	"fencecard/joinery/plantext"
)

// NewEncoder returns an encoder whose documents can be shown on a terminal: what
// joinery.Unprintable tells of is written as its code, such as \u202e, which
// every reader of JSON turns back.
func NewEncoder(w io.Writer, prefix string) *json.Encoder {
	e := json.NewEncoder(jsonEscaper{w})
	e.SetEscapeHTML(false)
	e.SetIndent(prefix, "  ")
	return e
}

// jsonEscaper is given whole documents. The encoder itself leaves nothing under a
// blank but line ends, and these stand between values alone.
type jsonEscaper struct{ To io.Writer }

func (j jsonEscaper) Write(data []byte) (int, error) {
	from := 0
	for at := 0; at < len(data); {
		if c := data[at]; c < utf8.RuneSelf && c != 0x7f {
			at++
			continue
		}
		r, n := utf8.DecodeRune(data[at:])
		if plantext.Unprintable(r) {
			if _, err := j.To.Write(data[from:at]); err != nil {
				return from, err
			}
			if _, err := fmt.Fprintf(j.To, `\u%04x`, r); err != nil { // none is beyond the basic plane
				return at, err
			}
			from = at + n
		}
		at += n
	}
	n, err := j.To.Write(data[from:])
	return from + n, err
}
