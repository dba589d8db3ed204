package joints

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// frame is the pieces that hold each other where they are along one dimension, by how
// their joints lie: two legs and the rail between them, seen from the end.
type frame struct {
	at       map[*joinery.Piece]measure.Length // the low side of each, from that of the first
	play     measure.Length                    // of all its joints together
	doubtful bool                              // its joints do not agree
}

// strut is a piece whose shoulders hold two frames apart.
type strut struct {
	between
	ends     [2]*joinery.Piece // what it goes into, the low end first
	from, to *frame
	reach    measure.Length // from the first piece of the one to that of the other
}

// framesApart warns of pieces that hold the same two frames apart by different lengths:
// a stretcher between the side rails of a table, too short for its long rails.
func framesApart(found []deck.Joint, scale measure.Scale) []deck.Warning {
	var warnings []deck.Warning
	for _, along := range joinery.Dimensions {
		all := struts(found, framesOf(found, along), along)
		most := mostSay(all)
		for i := range all {
			b := &all[i]
			says := most[[2]*frame{b.from, b.to}]
			off := b.reach - says.reach
			if b.ends == says.ends || scale.Round(off.Abs()-b.from.play-b.to.play) <= 0 {
				continue // of two between the same two pieces, it is told which is too long
			}
			warnings = append(warnings, b.warnOff(says, off, scale))
		}
	}
	return warnings
}

// framesOf finds the frame of every piece along a dimension. One that is there more than
// once is a frame by itself: nobody knows which of them is meant.
func framesOf(found []deck.Joint, along joinery.Dimension) map[*joinery.Piece]*frame {
	frames := map[*joinery.Piece]*frame{}
	of := func(p *joinery.Piece) *frame {
		if frames[p] == nil {
			frames[p] = &frame{at: map[*joinery.Piece]measure.Length{p: 0}}
		}
		return frames[p]
	}
	for i := range found {
		j := &found[i]
		one, other := of(j.Into.Piece), of(j.Part.Piece)
		off, play, known := aside(j, along)
		if !known || j.Into.Piece.Count > 1 || j.Part.Piece.Count > 1 {
			continue
		}
		off += one.at[j.Into.Piece] - other.at[j.Part.Piece]
		if one == other {
			one.doubtful = one.doubtful || off.Abs() > one.play+play
			continue
		}
		if len(other.at) > len(one.at) {
			one, other, off = other, one, -off
		}
		for p, at := range other.at {
			one.at[p], frames[p] = at+off, one
		}
		one.play += other.play + play
		one.doubtful = one.doubtful || other.doubtful
	}
	return frames
}

// aside is how far the low side of a part lies from that of the piece it goes into,
// where the walls of the joint say so.
func aside(j *deck.Joint, along joinery.Dimension) (off, play measure.Length, known bool) {
	if j.Part.End == joinery.NoSide || j.Part.End.Dimension() == along || !j.Into.Cut.Kind.Receives {
		return 0, 0, false
	}
	channel, size := j.Into.Cut.Channels[0], j.Into.Piece.Size
	room := channel.Width
	if run := channel.Run(); run == along {
		if j.Part.Cut == nil || channel.OpenAt(run.Low(), size) || channel.OpenAt(run.High(), size) {
			return 0, 0, false
		}
		room = channel.Hi - channel.Lo
	}
	play = room - acrossOf(j.Part, along)
	off, known = RevealOf(j, along.Low())
	return off, play, known && play >= 0
}

// struts lists the pieces that hold two frames apart, each by one joint at either end.
func struts(found []deck.Joint, frames map[*joinery.Piece]*frame, along joinery.Dimension) []strut {
	ends := map[*joinery.Piece][2][]*deck.Joint{}
	var order []*joinery.Piece
	for i := range found {
		j := &found[i]
		p := j.Part
		if !holds(p) || p.Cut == nil || p.End.Dimension() != along || !j.Into.Cut.Kind.Receives {
			continue
		}
		if _, seen := ends[p.Piece]; !seen {
			order = append(order, p.Piece)
		}
		both := ends[p.Piece]
		at := 0
		if p.End.High() {
			at = 1
		}
		both[at] = append(both[at], j)
		ends[p.Piece] = both
	}
	var all []strut
	for _, p := range order {
		both := ends[p]
		if len(both[0]) != 1 || len(both[1]) != 1 {
			continue
		}
		low, high := both[0][0], both[1][0]
		b := strut{between: betweenOf(low, high), ends: [2]*joinery.Piece{low.Into.Piece, high.Into.Piece}}
		b.from, b.to = frames[b.ends[0]], frames[b.ends[1]]
		if b.from == b.to || b.from.doubtful || b.to.doubtful || b.ends[0].Count > 1 || b.ends[1].Count > 1 {
			continue
		}
		b.reach = b.from.at[b.ends[0]] + b.ends[0].Size[along] + b.apart - b.to.at[b.ends[1]]
		all = append(all, b)
	}
	return all
}

// mostSay is, for every two frames, the first of those between them whose reach most have.
func mostSay(all []strut) map[[2]*frame]*strut {
	type reach struct {
		from, to *frame
		length   measure.Length
	}
	of := func(b *strut) reach { return reach{b.from, b.to, b.reach} }
	have := map[reach]int{}
	for i := range all {
		have[of(&all[i])]++
	}
	says := map[[2]*frame]*strut{}
	for i := range all {
		b := &all[i]
		if at := [2]*frame{b.from, b.to}; says[at] == nil || have[of(b)] > have[of(says[at])] {
			says[at] = b
		}
	}
	return says
}

func (b *strut) warnOff(says *strut, off measure.Length, scale measure.Scale) deck.Warning {
	long, other := b.piece.Size.Between(b.low.End), says.piece.Size.Between(says.low.End)
	fix, way := long-off, "shorter"
	if off < 0 {
		way = "longer"
	}
	return deck.Warning{Code: "frames-differ", Piece: b.piece.Name, Place: b.piece.Places.At(b.piece.Place, "size"),
		Text: fmt.Sprintf("%q, %s long, holds %q and %q %s apart, but where %q, %s long, holds %q and %q they stand %s apart: make it %s long, %s %s, or the other so much %s",
			b.piece.Name, scale.Say(long), b.ends[0].Name, b.ends[1].Name, scale.Say(b.apart),
			says.piece.Name, scale.Say(other), says.ends[0].Name, says.ends[1].Name, scale.Say(b.apart-off),
			scale.Say(fix), scale.Say(off.Abs()), way, map[string]string{"shorter": "longer", "longer": "shorter"}[way])}
}
