package paper

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Lacking lists the letters of a text that the fonts do not have.
func Lacking(text string) []rune {
	if Printable(text) == text {
		return nil
	}
	var lacking []rune
	has := faces()[Regular]
	for _, r := range norm.NFC.String(strings.ToValidUTF8(text, "\uFFFD")) {
		if _, ok := has.of(r); !ok && !unicode.IsSpace(r) {
			lacking = append(lacking, r)
		}
	}
	return lacking
}

// InPlaceOf is what is printed for a letter that the fonts do not have.
func InPlaceOf(r rune) string { return substitute(r, faces()[Regular]) }
