package planfile

import (
	"strings"

	"fencecard/joinery"
)

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
