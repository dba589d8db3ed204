package wording_test

import (
	"fmt"

	"fencecard/output/wording"
)

func ExamplePlural() {
	fmt.Println(wording.Plural(0, "run"), wording.Plural(1, "run"), wording.Plural(2, "run"))
	// Output: no runs 1 run 2 runs
}
