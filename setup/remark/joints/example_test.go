package joints_test

import (
	"fmt"
	"log"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/setup/remark/joints"
)

// A joint is found before there is a deck, for the drawings beside a plan that is being
// written.
func ExampleOf() {
	plan, err := planfile.Read("stool.yaml", []byte(`
unit: in
pieces:
  - piece: leg
    size: {left-right: 1 1/2, front-back: 1 1/2, top-bottom: 17}
  - piece: rail
    size: {left-right: 12, front-back: 3/4, top-bottom: 3}
joints:
  - mortise and tenon: seat rail
    tenon: rail / left
    into: leg / right
    place: {top: flush, front: 1/4 back}
    thickness: 3/8
    shoulders: {top: 1/2}
    length: 1
`), nil)
	if err != nil {
		log.Fatal(err)
	}
	for _, j := range joints.Of(plan) {
		fmt.Printf("%v goes %s into %v\n", j.Part, plan.Shop.Scale.Say(j.Part.Enters), j.Into)
		fmt.Println(plan.Shop.Scale.Say(joints.ShoulderOf(j.Part, joinery.Top)), "off its top")
	}
	// Output:
	// tenon "seat rail" of "rail" goes 1 in into mortise "seat rail" of "leg"
	// 1/2 in off its top
}
