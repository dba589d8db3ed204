package yamlfile

import (
	"strings"

	"fencecard/joinery/plantext"
)

// longestQuote is how much of a maker's text a message repeats, in characters.
const longestQuote = 60

// Short cuts a text that is too long for a message.
func Short(s string) string { return plantext.Brief(s, longestQuote) }

// Quoted puts quotes round a maker's text, as it was written.
func Quoted(s string) string {
	if strings.Contains(s, `"`) {
		return "‘" + Short(s) + "’"
	}
	return `"` + Short(s) + `"`
}
