package plantext_test

import (
	"fmt"

	"fencecard/joinery/plantext"
)

func Example() {
	text := plantext.NewText("bench.yaml", "units: in\nwood: white asch\n")
	var faults plantext.Faults
	faults.Add(plantext.Fault{
		Place:   text.Place(2, 7),
		Problem: "no wood is called white asch",
		Remedy:  "did you mean " + plantext.Nearest("white asch", []string{"white oak", "white ash"}) + "?",
	})
	fmt.Println(faults.Err())
	// Output:
	// bench.yaml:2:7: no wood is called white asch
	//     wood: white asch
	//           ^
	//   did you mean white ash?
}
