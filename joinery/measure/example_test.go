package measure_test

import (
	"fmt"

	"fencecard/joinery/measure"
)

func Example() {
	leg, err := measure.ParseLength("1 3/8", measure.Inches)
	fmt.Println(leg, err)
	fmt.Println(measure.InchScale.Say(leg / 4))
	// Output:
	// 34.925 mm <nil>
	// 11/32 in
}

func ExampleParseLength_slip() {
	_, err := measure.ParseLength("0,375", measure.Inches)
	fmt.Println(err)
	// Output: "0,375" has a comma where a point belongs; write 0.375
}
