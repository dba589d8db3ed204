package deckfile_test

import (
	"bytes"
	"fmt"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/deckfile"
	"fencecard/setup"
	"fencecard/setup/proof"
)

// A deck goes through its JSON and proves as before.
func Example() {
	plan, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := setup.Make(plan)
	if err != nil {
		fmt.Println(err)
		return
	}
	var file bytes.Buffer
	if err := deckfile.Write(&file, d); err != nil {
		fmt.Println(err)
		return
	}
	claims, err := deckfile.Read("deck.json", file.Bytes(), plan.Shop.Scale)
	if err != nil {
		fmt.Println(err)
		return
	}
	report := proof.Check(plan, claims)
	fmt.Println(report.Proved())
	// Output: true
}
