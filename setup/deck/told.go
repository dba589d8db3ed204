package deck

import (
	"fencecard/joinery/plantext"
)

// Warning is something that does not stop the work but a maker should know.
type Warning struct {
	Code  string // a word such as "thin-wall"
	Piece string
	Cut   string
	Text  string
	Place plantext.Place
}

// Caution is one thing to mind at a run.
type Caution struct {
	Number int    // its row in the table, for the page of cautions
	Code   string // a word such as "start-stopped"
	Weight Weight
	Words  string // full sentences
	Brief  string // the same in fewer words, for small cards
	Basis  string // what stands behind it
}

// Weight is how grave a caution is. The words follow ANSI Z535.4: a warning is
// of what could cost a finger or worse, a notice is of spoiled work.
type Weight uint8

// The weights, the gravest last.
const (
	Noted Weight = iota
	Grave
)

// String gives the signal word: "WARNING" or "NOTICE".
func (w Weight) String() string {
	if w == Grave {
		return "WARNING"
	}
	return "NOTICE"
}
