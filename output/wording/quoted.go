package wording

import "fencecard/joinery"

// mostQuoted is how much of what somebody else wrote is repeated, in characters.
const mostQuoted = 200

func Quoted(text string) string { return joinery.Brief(text, mostQuoted) }
