package output

import "fencecard/joinery"

// mostQuoted is how much of what somebody else wrote is repeated, in characters.
const mostQuoted = 200

func quoted(text string) string { return joinery.Brief(text, mostQuoted) }
