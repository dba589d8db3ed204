package whatif_test

import (
	"context"
	"fmt"

	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/whatif"
)

// Two grooves a hair apart take two fence distances; moving one spares a setup.
func ExampleExplain() {
	plan, err := planfile.Read("shelf.yaml", []byte(`
unit: in
wood: yellow-poplar
pieces:
  - piece: side
    size: {left-right: 3/4, front-back: 10, top-bottom: 30}
    cuts:
      - {groove: back, in: right, width: 1/4, setback: 1/2 from back, depth: 1/4}
      - {groove: lip, in: right, width: 1/4, setback: 33/64 from front, depth: 1/4}
`), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := setup.Make(plan)
	if err != nil {
		fmt.Println(err)
		return
	}
	why, _ := whatif.Explain(context.Background(), d)
	for _, w := range why {
		if w.Saving != nil {
			fmt.Println(w.Saving.Change, "spares", w.Saving.Setups, "setup,", w.Saving.Less.Time.Minutes(), "minutes")
		}
	}
	// Output:
	// setback 33/64 in instead of 1/2 in on the groove "back" spares 1 setup, 2.5 minutes
	// setback 1/2 in instead of 33/64 in on the groove "lip" spares 1 setup, 2.5 minutes
}
