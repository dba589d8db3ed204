package joint_test

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// A seat rail 1/8 behind the face of its leg: the front shoulder of 1/4 puts the
// mortise 3/8 from the front.
func ExampleKind_Make() {
	in := measure.Inch
	leg := joinery.Piece{Name: "leg", Size: joinery.Size{7 * in / 4, 7 * in / 4, 17 * in}, Grain: joinery.TopBottom}
	rail := joinery.Piece{Name: "rail", Size: joinery.Size{34 * in, 7 * in / 8, 7 * in / 2}, Grain: joinery.LeftRight}
	meeting := joint.Meeting{Part: &rail, End: joinery.Left, Into: &leg, Side: joinery.Right,
		Place: joint.Place{Sides: []joint.Inset{{Side: joinery.Top}, {Side: joinery.Front, By: in / 8}}}}
	words := joint.Words{Thickness: 3 * in / 8, Length: 3 * in / 4, Deeper: in / 16, Shoulders: []joinery.Cheek{
		{Side: joinery.Front, Depth: in / 4}, {Side: joinery.Top, Depth: in / 2}, {Side: joinery.Bottom, Depth: in / 4}}}
	halves, faults := joint.MortiseAndTenon.Make(meeting, words, measure.InchScale, timber.DefaultClimate)
	s := measure.InchScale
	mortise, tenon := halves.Into[0], halves.Part[0]
	fmt.Println(len(faults), "faults")
	fmt.Println("mortise", s.Say(mortise.Start.Distance), "from", mortise.Start.From, "and", s.Say(mortise.Depth), "deep")
	fmt.Println("from", s.Format(mortise.Span.From), "to", s.Format(mortise.Span.To), "from", mortise.Span.Side)
	for _, c := range tenon.Cheeks {
		fmt.Println(c.Side, s.Format(c.Depth))
	}
	// Output:
	// 0 faults
	// mortise 3/8 in from front and 13/16 in deep
	// from 1/2 to 3 1/4 from top
	// front 1/4
	// back 1/4
	// bottom 1/4
	// top 1/2
}
