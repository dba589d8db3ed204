package output_test

import (
	"bytes"
	"fmt"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/sheets"
	"fencecard/setup"
)

// The boot bench is printed on A4, two cards on a sheet.
func ExamplePDF() {
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
	if err := sheets.PDF(&file, deck, sheets.Pages{Paper: sheets.A4}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s\n", file.Bytes()[:8])
	// Output: %PDF-1.3
}
