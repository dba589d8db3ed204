package planfile_test

import (
	"fmt"

	"fencecard/joinery/planfile"
)

func ExampleRead() {
	plan, err := planfile.Read("shelf.yaml", []byte(`
unit: in
wood: white oak
pieces:
  - piece: left side
    size: {left-right: 3/4, front-back: 9, top-bottom: 24}
    cuts:
      - dado: shelf
        in: right
        width: 3/4
        setback: 12 from bottom
        depth: 1/4
  - piece: right side
    mirror: {of: left side, across: left-right}
`), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range plan.Pieces {
		cut := p.Cut("shelf")
		fmt.Printf("%s: %s in the %s, %s\n", p.Name, cut.Kind, cut.In, p.Wood)
	}
	// Output:
	// left side: dado in the right, white oak
	// right side: dado in the left, white oak
}

func ExampleRead_faults() {
	_, err := planfile.Read("shelf.yaml", []byte(`unit: in
pieces:
  - piece: side
    size: {left-right: 3/4, front-back: 9, top-bottom: 24}
    cuts:
      - dado: shelf
        in: rigth
        width: 0,75
        setback: 12 from bottom
        depth: 1/4
`), nil)
	fmt.Println(err)
	// Output:
	// shelf.yaml:7:13: "rigth" is no side
	//             in: rigth
	//                 ^
	//   write right
	//
	// shelf.yaml:8:16: "0,75" has a comma where a point belongs
	//             width: 0,75
	//                    ^
	//   write 0.75
}
