package planform_test

import (
	"fmt"

	"fencecard/joinery/planform"
)

// A plan entered by forms: the plan itself, a piece, and a cut in it.
func Example() {
	var text []byte
	put := func(f planform.Form, fields ...string) string {
		for i := 0; i < len(fields); i += 2 {
			f.Set(fields[i], fields[i+1])
		}
		written, at, err := planform.Put(text, f)
		if err != nil {
			fmt.Println(err)
		}
		text = written
		return at
	}
	put(planform.Blank(planform.Plan, "", text), "title", "Boot bench", "unit", "in")
	leg := put(planform.Blank(planform.Piece, "", text), "piece", "front left leg",
		"size.left-right", "1 5/8", "size.front-back", "1 5/8", "size.top-bottom", "17")
	put(planform.BlankCut("mortise", leg, text), "name", "seat rail", "in", "right",
		"width", "3/8", "setback", "1/2 from front", "span", "1/2 to 3 from top", "depth", "1")
	fmt.Print(string(text))
	// Output:
	// title: Boot bench
	// unit: in
	//
	// pieces:
	//
	//   - piece: front left leg
	//     size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
	//     cuts:
	//       - mortise: seat rail
	//         in: right
	//         width: 3/8
	//         setback: 1/2 from front
	//         span: 1/2 to 3 from top
	//         depth: 1
}
