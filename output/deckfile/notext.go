package deckfile

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// checkText refuses what is no text before any of it is read.
func (d *document) checkText() {
	start := d.text[:min(len(d.text), 4)]
	switch at := strings.IndexByte(d.text, 0); {
	case strings.HasPrefix(start, "\xff\xfe"), strings.HasPrefix(start, "\xfe\xff"), at >= 0 && strings.Count(start, "\x00") == 2:
		d.refuse(0, "the deck is saved as UTF-16", "save it again as plain text in UTF-8, or "+anew)
	case at >= 0:
		d.refuse(at, "there is a zero byte here, so this is no text", "is it the file you mean? "+anew)
	case !utf8.ValidString(d.text):
		d.refuse(firstBad(d.text), "this letter is not UTF-8", "save the file again as plain text in UTF-8, or "+anew)
	}
}

func firstBad(text string) int {
	for i, r := range text {
		if r == utf8.RuneError && !strings.HasPrefix(text[i:], string(utf8.RuneError)) {
			return i
		}
	}
	return 0
}

// noJSON refuses a text from the place on where the decoder found that it is not
// JSON: at a letter that cannot stand there, or where a value begins in which
// there is one; which of the two, its error tells.
func (d *document) noJSON(err error) {
	at := min(int(d.tokens.InputOffset()), len(d.text))
	letter, _ := utf8.DecodeRuneInString(d.text[at:])
	begun := len(d.text) - len(strings.TrimLeft(d.text, " \t\r\n"))
	switch {
	case !strings.HasPrefix(d.text[begun:], "{"):
		d.refuse(begun, "this is no deck: one begins with {", "name the file that fencecard cards --format json wrote")
	case !strings.Contains(err.Error(), " in "):
		d.refuse(at, fmt.Sprintf("this is not JSON: %q cannot stand here", letter),
			"look for a comma, a colon, a quotation mark or a bracket that is missing or too much; or "+anew)
	case letter == '"':
		d.refuse(at, "the text that begins here is not JSON", `write it on one line, with \\ for \ and \" for "; or `+anew)
	default:
		d.refuse(at, "the value that begins here is not JSON", "write a number such as 9.525, or true, false or null, or a text in quotation marks; or "+anew)
	}
}
