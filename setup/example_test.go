package setup_test

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
)

// A leg with a mortise in its right side, and its mirror image: one setup, two
// runs, the other end first.
func ExampleMake() {
	scale := measure.InchScale
	leg := joinery.Piece{
		Name: "left leg", Count: 1,
		Size:  joinery.Size{13 * measure.Inch / 8, 13 * measure.Inch / 8, 17 * measure.Inch},
		Grain: joinery.TopBottom,
		Cuts: []joinery.Cut{{
			Kind: &joinery.Mortise, Name: "rail", In: joinery.Right,
			Width: 3 * measure.Inch / 8, Depth: measure.Inch,
			Start: joinery.Setback{Distance: measure.Inch / 2, From: joinery.Front},
			Span:  joinery.Span{From: measure.Inch / 2, To: 3 * measure.Inch, Side: joinery.Top},
		}},
	}
	leg.LayAll(scale)
	plan := &joinery.Plan{
		Pieces: []joinery.Piece{leg, leg.Mirrored("right leg", joinery.LeftRight, scale)},
		Shop: joinery.Shop{Scale: scale, Bits: []joinery.Bit{
			{Name: "3/8 up-cut", Kind: joinery.UpCut, Diameter: 3 * measure.Inch / 8, Plunges: joinery.Yes},
		}},
	}
	deck, err := setup.Make(plan)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range deck.Setups[0].Runs {
		fmt.Printf("%s %s: %s down, %s to the fence, %s leads, dropped on %s past the trailing edge\n",
			r.Number(), r.Piece.Name, r.Step.Down, r.Step.Fence, r.Leads, scale.Format(r.Start.LeadPastEdge))
	}
	// Output:
	// 1.1 left leg: right down, front to the fence, top leads, dropped on 1/2 past the trailing edge
	// 1.2 right leg: left down, front to the fence, bottom leads, dropped on 14 past the trailing edge
}
