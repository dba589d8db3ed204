package joinery_test

import (
	"fmt"
	"testing"

	. "fencecard/joinery"
	. "fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
)

func ExamplePencilled_Name() {
	called := Pencilled{Left: "inside", Top: "edge"}
	mirrored := called.Mirrored(LeftRight)
	fmt.Println(called.Name(Left), called.Name(Right), called.Name(Top))
	fmt.Println(mirrored.Name(Left), mirrored.Name(Right), mirrored.Name(Top))
	// Output:
	// inside right edge
	// left inside edge
}

// A mirrored piece is pencilled as its twin would see it, whichever way round.
func TestMirroredPieceMirrorsItsNames(t *testing.T) {
	p := Piece{Name: "post", Called: Pencilled{Left: "a", Front: "b", Back: "c", Top: "d"}}
	for _, d := range Dimensions {
		m := p.Mirrored("other", d, InchScale)
		for _, s := range Sides {
			twin := s
			if s.Dimension() == d {
				twin = s.Opposite()
			}
			assert.Equal(t, p.Called[s], m.Called[twin], "%s across %s", s, d)
		}
		assert.Equal(t, p.Called, m.Called.Mirrored(d))
	}
}
