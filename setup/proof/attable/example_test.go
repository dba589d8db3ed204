package attable_test

import (
	"fmt"
	"log"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
)

const legPlan = `
unit: in
pieces:
  - piece: leg
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - mortise: seat rail
        in: right
        width: 3/8
        setback: 1/2 from front
        span: 1/2 to 3 from top
        depth: 1
`

// legClaims are the plan of a leg and what its papers say.
func legClaims() (*joinery.Plan, proof.Claims) {
	plan, err := planfile.Read("leg.yaml", []byte(legPlan), nil)
	if err != nil {
		log.Fatal(err)
	}
	deck, err := setup.Make(plan)
	if err != nil {
		log.Fatal(err)
	}
	return plan, proof.Of(deck)
}

func ExampleAsSet() {
	plan, claims := legClaims()
	start := 15 * measure.Inch / 32 // as measured on the table
	as, err := attable.AsSet(plan, &claims, "1.1", attable.Settings{Start: &start})
	if err != nil {
		log.Fatal(err)
	}
	for _, f := range as.Found {
		fmt.Println(f.What, f.As)
		fmt.Println(f.Move)
		for _, m := range f.Makes {
			fmt.Println(m.What, m.Words)
		}
	}
	// Output:
	// start from the bit's trailing (left) edge to the top end, which leads
	// move the start mark 1/32 to the left, the outfeed, and the back stop with it
	// begins 1/32 too near the top
}

// A test cut of the same mortise lies 1/64 too far from the front.
func ExampleCorrect() {
	plan, claims := legClaims()
	lesson, err := attable.Correct(plan, &claims, "1.1", attable.TestCut{Setback: 33 * measure.Inch / 64, Depth: measure.Inch})
	if err != nil {
		log.Fatal(err)
	}
	for _, c := range lesson.Corrections {
		fmt.Printf("%s: %q\n", c.What, c.Move)
	}
	// Output:
	// fence: "move the fence 1/64 toward the bit"
	// height: ""
}
