package planfile

import (
	"strings"

	"fencecard/joinery"
)

// list joins words as "a, b and c".
func list(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	end := len(words) - 1
	return strings.Join(words[:end], ", ") + " " + last + " " + words[end]
}

// longestQuote is how much of a maker's text a message repeats, in characters.
const longestQuote = 60

// short cuts a text that is too long for a message.
func short(s string) string { return joinery.Brief(s, longestQuote) }

// quoted puts quotes round a maker's text, as it was written.
func quoted(s string) string {
	if strings.Contains(s, `"`) {
		return "‘" + short(s) + "’"
	}
	return `"` + short(s) + `"`
}
