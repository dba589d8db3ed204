package screen_test

import (
	"os"

	"fencecard/joinery/plantext"
	"fencecard/output/screen"
	"fencecard/setup/deck"
)

// A warning as it stands below a deck.
func ExampleWarningLine() {
	os.Stdout.WriteString(screen.WarningLine(deck.Warning{
		Code: "thin-wall", Piece: "rail", Cut: "panel", Text: "1/16 in of wood is left beside it",
		Place: plantext.Place{File: "rail.yaml", Line: 8, Column: 9},
	}) + "\n")
	// Output: rail.yaml:8:9: warning: 1/16 in of wood is left beside it [thin-wall]
}
