package remark_test

import (
	"fmt"

	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/remark"
)

// A groove that leaves 1/16 in of wood beside it.
func ExampleOnce() {
	plan, err := planfile.Read("rail.yaml", []byte(`
unit: in
wood: black cherry
pieces:
  - piece: rail
    size: {left-right: 30, front-back: 3/4, top-bottom: 4}
    cuts:
      - {groove: panel, in: top, width: 1/4, setback: 1/16 from front, depth: 3/8}
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
	for _, w := range remark.Once(d) {
		fmt.Println(w.Code, "at", w.Place)
	}
	// Output: thin-wall at rail.yaml:8:55
}
