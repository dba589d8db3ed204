package setting_test

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/output/setting"
)

// A length in running text, read off a rule in sixty-fourths.
func ExampleSetter_Plain() {
	s := setting.Setter{Scale: measure.InchScale}
	fmt.Println(s.Plain(measure.Inch+measure.Inch/4), s.Unit())
	// Output: 1 1/4 in
}
