package deck_test

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Work dropped onto a bit 1 in high with 3 in of tail before its far edge.
func ExamplePivotAt() {
	p := deck.PivotAt(3*measure.Inch, 3*measure.Inch/8, measure.Inch)
	fmt.Printf("tilted %.1f degrees, the mouth begins %.3f in early\n", p.Tilt, p.Early.Inches())
	// Output: tilted 20.9 degrees, the mouth begins 0.162 in early
}
