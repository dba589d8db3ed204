package deck

import (
	"fencecard/joinery"
)

// Cap is the greatest depth of one pass, on the shop's scale, and the rule it
// came from in the maker's words.
type Cap struct {
	Depth joinery.Length
	Rule  string
}
