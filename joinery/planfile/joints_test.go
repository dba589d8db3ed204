package planfile_test

import (
	"os"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tongue is what a tenon leaves of its piece across its length.
func tongue(p *joinery.Piece, tenon *joinery.Cut) joinery.Size {
	size := p.Size
	for _, c := range tenon.Cheeks {
		size[c.Side.Dimension()] -= c.Depth
	}
	return size
}

// The joints of the examples fit: a mortise is as wide and as long as the
// tongue that goes in, and 1/16 in or 1.5 mm deeper (handbook rule: a mortise a
// little deeper than the tenon is long, "Handwork in Wood", ch. VII).
func TestJointsOfTheExamplesFit(t *testing.T) {
	cabinet, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
	require.NoError(t, err)
	for _, c := range []struct {
		name   string
		data   []byte
		deeper measure.Length
		joints [][4]string // piece, mortise, piece, tenon
	}{
		{"boot-bench.yaml", examples.BootBench, in / 16, [][4]string{
			{"front left leg", "seat rail", "front seat rail", "seat rail left"},
			{"front right leg", "seat rail", "front seat rail", "seat rail right"},
			{"back left leg", "seat rail", "back seat rail", "seat rail left"},
			{"back right leg", "seat rail", "back seat rail", "seat rail right"},
			{"front left leg", "end rail", "end rail", "end rail front"},
			{"back left leg", "end rail", "end rail", "end rail back"},
			{"front left leg", "foot rail", "foot rail", "foot rail front"},
			{"back right leg", "foot rail", "foot rail", "foot rail back"},
		}},
		{"starter.yaml", examples.StarterPlan, in / 16, [][4]string{
			{"left post", "rail", "rail", "rail left"},
			{"right post", "rail", "rail", "rail right"},
		}},
		{"wall-cabinet.yaml", cabinet, 3 * measure.Millimetre / 2, [][4]string{
			{"left stile", "top rail", "top rail", "top rail left"},
			{"right stile", "top rail", "top rail", "top rail right"},
			{"left stile", "bottom rail", "bottom rail", "top rail left"},
			{"right stile", "bottom rail", "bottom rail", "top rail right"},
		}},
	} {
		plan := read(t, c.name, c.data)
		piece := func(name string) *joinery.Piece {
			for i := range plan.Pieces {
				if plan.Pieces[i].Name == name {
					return &plan.Pieces[i]
				}
			}
			t.Fatalf("%s has no piece %q", c.name, name)
			return nil
		}
		for _, j := range c.joints {
			into, part := piece(j[0]), piece(j[2])
			mortise, tenon := into.Cut(j[1]), part.Cut(j[3])
			slot := mortise.Channels[0]
			size := tongue(part, tenon)
			assert.Equal(t, tenon.At.Opposite(), mortise.In, "%v face each other", j)
			assert.Equal(t, slot.Width, size.Between(slot.Near), "%v in thickness", j)
			assert.Equal(t, slot.Hi-slot.Lo, size[slot.Run()], "%v in width", j)
			assert.Equal(t, c.deeper, slot.Depth-tenon.Length, "%v in length", j)
		}
	}
}

// The pieces of the examples come out to the size of the whole.
func TestPiecesOfTheBootBenchAddUp(t *testing.T) {
	plan := read(t, "boot-bench.yaml", examples.BootBench)
	size := map[string]joinery.Size{}
	for _, p := range plan.Pieces {
		size[p.Name] = p.Size
	}
	const wide, deep, tenon, overhang = 36 * in, 15 * in, 3 * in / 4, in / 2
	leg := size["front left leg"]
	between := joinery.Size{wide - 2*leg[0], deep - 2*leg[1], 0}
	assert.Equal(t, between[0]+2*tenon, size["front seat rail"][0])
	assert.Equal(t, between[1]+2*tenon, size["end rail"][1])
	assert.Equal(t, between[1]+2*tenon, size["foot rail"][1])
	assert.Equal(t, between[0]+2*(in/4), size["shelf"][0], "1/4 into the dado of each leg")
	assert.Equal(t, wide+2*overhang, size["seat front"][0])
	opening := deep + 2*overhang - 2*size["seat front"][1]
	assert.Equal(t, opening+2*(3*in/8), size["seat left end"][1], "stub tenons of 3/8")
	grooveToGroove := opening + 2*(7*in/16)
	assert.Less(t, size["seat panel"][1], grooveToGroove, "free to swell")
	assert.Equal(t, 9*in/16, size["seat panel"][2], "its tongue of 1/4 in a groove 5/16 from the top, flush")
	lap := plan.Pieces[len(plan.Pieces)-1]
	for _, c := range lap.Cuts {
		assert.Equal(t, size["tray side"][1], c.Length, "a lap is as long as the other strip is wide")
		assert.Equal(t, size["tray side"][2]/2, c.Depth)
	}
}

// A joint says for its receiving half which bit to make it with and how to start.
func TestAJointSaysHowItsReceivingHalfIsMade(t *testing.T) {
	text := `unit: in
shop:
  bits:
    - {bit: half, diameter: 1/2, plunges: yes}
    - {bit: quarter, diameter: 1/4, plunges: yes}
pieces:
  - {piece: side, size: {left-right: 3/4, front-back: 10, top-bottom: 30}}
  - {piece: shelf, size: {left-right: 20, front-back: 10, top-bottom: 1/2}}
joints:
  - housing: shelf
    board: shelf / left
    into: side / right
    place: {bottom: 4 up, front: flush}
    depth: 1/4
    bit: BIT
    start: hole
`
	plan, err := planfile.Read("side.yaml", []byte(strings.Replace(text, "BIT", "quarter", 1)), nil)
	require.NoError(t, err)
	into := plan.Pieces[0].Cuts[0]
	assert.Equal(t, "quarter", into.Bit)
	assert.True(t, into.Bored)
	_, err = planfile.Read("side.yaml", []byte(strings.Replace(text, "BIT", "third", 1)), nil)
	assert.ErrorContains(t, err, `the shop has no bit named "third"`)
}
