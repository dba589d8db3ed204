package deck

import (
	"fencecard/joinery"
)

// Warning is something that does not stop the work but a maker should know.
type Warning struct {
	Code  string // a word such as "thin-wall"
	Piece string
	Cut   string
	Text  string
	Place joinery.Place
}
