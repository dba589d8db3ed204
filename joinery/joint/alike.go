package joint

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// turns are the ways to turn a piece about: by half a turn about one of its
// three axes, which mirrors it in the two others.
var turns = []joinery.Flips{{}, {false, true, true}, {true, false, true}, {true, true, false}}

// Serves reports whether a piece can stand in for its own mirror image across
// some dimensions, as it is or turned about. Its cuts must be laid out.
func Serves(p *joinery.Piece, across joinery.Flips) bool {
	for _, turn := range turns {
		if sameMirrored(p, differ(across, turn)) {
			return true
		}
	}
	return false
}

// room is what a channel takes, from the low sides.
type room struct {
	down joinery.Side
	box  [3]stretch
}

func roomOf(c joinery.Channel, size joinery.Size) room {
	r := room{down: c.Down}
	put := func(from joinery.Side, near, far measure.Length) {
		d := from.Dimension()
		if from.High() {
			near, far = size[d]-far, size[d]-near
		}
		r.box[d] = stretch{near, far}
	}
	put(c.Down, 0, c.Depth)
	put(c.Near, c.Setback, c.Setback+c.Width)
	put(c.Run().Low(), c.Lo, c.Hi)
	return r
}

func (r room) mirrored(across joinery.Flips, size joinery.Size) room {
	r.down = flip(r.down, across)
	for d := range r.box {
		if across[d] {
			r.box[d] = stretch{size[d] - r.box[d].hi, size[d] - r.box[d].lo}
		}
	}
	return r
}

// sameMirrored reports whether the piece looks the same in the mirror.
func sameMirrored(p *joinery.Piece, across joinery.Flips) bool {
	left := map[room]int{}
	for i := range p.Cuts {
		for _, c := range p.Cuts[i].Channels {
			left[roomOf(c, p.Size)]++
			left[roomOf(c, p.Size).mirrored(across, p.Size)]--
		}
	}
	for _, n := range left {
		if n != 0 {
			return false
		}
	}
	return true
}
