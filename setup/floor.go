package setup

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/solid"
)

// fromFloors lets the jobs of one piece, jobs[first:], that lie inside a channel
// which must be cut before them go on from its floor: above it is no wood left.
// Where no order is fixed both are cut from the table up, since the search may put
// either first.
func fromFloors(jobs []Job, first int) {
	for i := first; i < len(jobs); i++ {
		ch := &jobs[i].Channel
		if ch.Section.Shaped() {
			continue
		}
		for _, j := range jobs[i].After {
			if over, ok := recessIn(jobs[j].Channel, *ch, jobs[i].Piece.Size); ok && over.Depth > ch.Recess.Depth {
				ch.Recess = over
			}
		}
	}
}

// recessIn is the recess that a channel cut before leaves over another one, as wide
// and as long as it lies evenly round it; false where some of the other lies beside
// it. What the round of a bit may leave at a stopped end does not count as gone.
func recessIn(before, ch joinery.Channel, size joinery.Size) (joinery.Recess, bool) {
	across, run := ch.Near.Dimension(), ch.Run()
	if before.Section.Shaped() || before.Down != ch.Down || before.Depth >= ch.Depth {
		return joinery.Recess{}, false
	}
	room, wood := solid.Of(before, size, 0).Box(size), solid.Of(ch, size, 0).Box(size)
	along, round := before.Run(), before.Width/2
	lowOpen, highOpen := before.OpenAt(along.Low(), size), before.OpenAt(along.High(), size)
	if before.OpenBeside(before.Near, size) || before.OpenBeside(before.Near.Opposite(), size) {
		round = size[along] // a bit of any width may have cut it
	}
	if !lowOpen {
		room[along].Lo += round
	}
	if !highOpen {
		room[along].Hi -= round
	}
	whole := solid.Whole(size)
	if room[across] == whole[across] && room[run] == whole[run] {
		return joinery.Recess{}, false // the work lies on that floor, and heights count from it
	}
	if !wood[across].Within(room[across]) || !wood[run].Within(room[run]) {
		return joinery.Recess{}, false
	}
	beside := func(d joinery.Dimension) measure.Length { return min(wood[d].Lo-room[d].Lo, room[d].Hi-wood[d].Hi) }
	return joinery.Recess{Depth: before.Depth, Width: ch.Width + 2*beside(across), Beyond: beside(run)}, true
}
