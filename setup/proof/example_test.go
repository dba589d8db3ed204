package proof_test

import (
	"fmt"
	"log"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/proof"
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

func Example() {
	plan, err := planfile.Read("leg.yaml", []byte(legPlan), nil)
	if err != nil {
		log.Fatal(err)
	}
	deck, err := setup.Make(plan)
	if err != nil {
		log.Fatal(err)
	}
	claims := proof.Of(deck)
	report := proof.Check(plan, &claims)
	fmt.Println(report.Proved())

	stop := claims.Setups[0].Runs[0].Stop
	stop.LeadPastEdge -= measure.Inch / 32
	report = proof.Check(plan, &claims)
	for _, fault := range report.Faults {
		fmt.Println(fault)
	}
	// Output:
	// true
	// run 1.1: set by leading end past the leading edge, the mortise would end 1/32 too near the top
}
