package page_test

import (
	"bytes"
	"fmt"
	"strings"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/page"
	"fencecard/setup"
)

// The built-in bench as a page in a file by itself.
func Example() {
	plan, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	deck, err := setup.Make(plan)
	if err != nil {
		fmt.Println(err)
		return
	}
	var file bytes.Buffer
	if err := page.Write(&file, deck, page.About{}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Count(file.String(), `<section id="setup-`), "setups,", strings.Count(file.String(), `<section id="run-`), "runs")
	// Output: 10 setups, 78 runs
}
