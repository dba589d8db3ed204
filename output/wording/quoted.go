package wording

import (
	"fencecard/joinery/plantext"
)

// mostQuoted is how much of what somebody else wrote is repeated, in characters.
const mostQuoted = 200

// Quoted is what somebody else wrote, cut where it is long.
func Quoted(text string) string { return plantext.Brief(text, mostQuoted) }
