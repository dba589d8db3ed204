package deck

import "fencecard/joinery"

// Trial is a trial of fit: the two settings of a bit that the walls of a channel come
// from, and that are tried in scrap before it is cut. However many channels have
// them in common, they are tried once.
type Trial struct {
	Bit       *joinery.Bit
	Near, Far joinery.Length // fence face to the near edge of the bit, for the near wall and the far one; equal where the piece is turned
}

// Walled reports whether a channel in a piece of a size has two walls.
func Walled(ch joinery.Channel, size joinery.Size) bool {
	return !ch.OpenBeside(ch.Near, size) && !ch.OpenBeside(ch.Near.Opposite(), size)
}

// TrialOf returns the trial that the steps of a channel, nearest to the fence first,
// ask for in a piece of a size. One with the bit's own width asks for none, nor
// does one without two walls.
func TrialOf(steps []Step, ch joinery.Channel, size joinery.Size) (Trial, bool) {
	if len(steps) < 2 || !Walled(ch, size) {
		return Trial{}, false
	}
	return Trial{steps[0].Bit, steps[0].NearEdge, steps[len(steps)-1].NearEdge}, true
}
