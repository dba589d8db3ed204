package setting_test

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/output/setting"
)

// A length in running text, read off a rule in sixty-fourths.
func ExampleSetter_Plain() {
	s := setting.Setter{Scale: joinery.InchScale}
	fmt.Println(s.Plain(joinery.Inch+joinery.Inch/4), s.Unit())
	// Output: 1 1/4 in
}
