package joinery

import (
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// frame is four legs, each a mirror of the first, a front rail and its mirror,
// and a rail that serves both ends.
func frame(legNames, railNames bool) *Plan {
	leg := Piece{Name: "front left leg", Size: Size{2 * measure.Inch, 2 * measure.Inch, 17 * measure.Inch}, Grain: TopBottom, Cuts: []Cut{
		{Kind: &Mortise, Name: "rail", In: Right},
		{Kind: &Mortise, Name: "end rail", In: Back},
	}}
	rail := Piece{Name: "front rail", Size: Size{30 * measure.Inch, measure.Inch, 3 * measure.Inch}, Cuts: []Cut{
		{Kind: &Tenon, Name: "left", At: Left}, {Kind: &Tenon, Name: "right", At: Right},
	}}
	end := Piece{Name: "end rail", Size: Size{measure.Inch, 12 * measure.Inch, 3 * measure.Inch}, Cuts: []Cut{
		{Kind: &Tenon, Name: "front", At: Front}, {Kind: &Tenon, Name: "back", At: Back},
	}}
	if legNames {
		leg.Cuts[0].Mates = Mate{Piece: "front rail", Cut: "left"}
		leg.Cuts[1].Mates = Mate{Piece: "end rail", Cut: "front"}
	}
	if railNames {
		rail.Cuts[0].Mates = Mate{Piece: "front left leg", Cut: "rail"}
		rail.Cuts[1].Mates = Mate{Piece: "front right leg", Cut: "rail"}
	}
	right := leg.Mirrored("front right leg", LeftRight, measure.InchScale)
	both := right.Mirrored("back right leg", FrontBack, measure.InchScale)
	both.MirrorOf = leg.Name
	return &Plan{Pieces: []Piece{leg, right, leg.Mirrored("back left leg", FrontBack, measure.InchScale), both,
		rail, rail.Mirrored("back rail", FrontBack, measure.InchScale), end}}
}

func TestMatesOfMirroredPieces(t *testing.T) {
	for _, c := range []struct{ piece, cut, want string }{
		{"front left leg", "rail", "front rail / left"},
		{"front right leg", "rail", "front rail / right"},
		{"back left leg", "rail", "back rail / left"},
		{"back right leg", "rail", "back rail / right"},
		{"front left leg", "end rail", "end rail / front"},
		{"front right leg", "end rail", "end rail / front"},
		{"back left leg", "end rail", "end rail / back"},
		{"back right leg", "end rail", "end rail / back"},
	} {
		plan := frame(true, false)
		p, cut := plan.Mate(plan.Piece(c.piece).Cut(c.cut))
		require.NotNil(t, cut, c.piece)
		assert.Equal(t, c.want, p.Name+" / "+cut.Name, "%s / %s", c.piece, c.cut)
	}
	for _, c := range []struct{ piece, cut, want string }{
		{"front rail", "left", "front left leg / rail"},
		{"front rail", "right", "front right leg / rail"},
		{"back rail", "left", "back left leg / rail"},
		{"back rail", "right", "back right leg / rail"},
	} {
		plan := frame(false, true)
		p, cut := plan.Mate(plan.Piece(c.piece).Cut(c.cut))
		require.NotNil(t, cut, c.piece)
		assert.Equal(t, c.want, p.Name+" / "+cut.Name, "%s / %s", c.piece, c.cut)
	}
}

// The lap of a stile does not say at which end of the rail it lies: that of the other
// stile, its mirror image, lies at the rail's other end.
func TestMatesOfMirroredLaps(t *testing.T) {
	stile := Piece{Name: "left stile", Size: Size{2 * measure.Inch, measure.Inch, 20 * measure.Inch}, Grain: TopBottom, Cuts: []Cut{
		{Kind: &Lap, Name: "rail", In: Front, At: Bottom, Mates: Mate{Piece: "rail", Cut: "left"}},
	}}
	rail := Piece{Name: "rail", Size: Size{18 * measure.Inch, measure.Inch, 2 * measure.Inch}, Cuts: []Cut{
		{Kind: &Lap, Name: "left", In: Back, At: Left}, {Kind: &Lap, Name: "right", In: Back, At: Right},
	}}
	plan := &Plan{Pieces: []Piece{stile, stile.Mirrored("right stile", LeftRight, measure.InchScale), rail}}
	for piece, want := range map[string]string{"left stile": "left", "right stile": "right"} {
		_, cut := plan.Mate(plan.Piece(piece).Cut("rail"))
		require.NotNil(t, cut, piece)
		assert.Equal(t, want, cut.Name, piece)
	}
}

func TestMateOfNone(t *testing.T) {
	plan := frame(false, false)
	for _, mate := range []Mate{{}, {Piece: "nowhere"}, {Piece: "front rail", Cut: "nowhere"}} {
		p, c := plan.Mate(&Cut{Kind: &Mortise, In: Right, Mates: mate})
		assert.Nil(t, p)
		assert.Nil(t, c)
	}
	// A named mate is taken as named, though it does not face: that is warned of.
	p, c := plan.Mate(&Cut{Kind: &Mortise, In: Left, Mates: Mate{Piece: "front rail", Cut: "left"}})
	assert.Equal(t, "front rail / left", p.Name+" / "+c.Name)
	p, c = plan.Mate(&Cut{Kind: &Dado, In: Left, Mates: Mate{Piece: "end rail"}})
	assert.Equal(t, "end rail", p.Name)
	assert.Nil(t, c)
}
