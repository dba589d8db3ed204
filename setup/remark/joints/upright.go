package joints

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// betweenTooLong warns of pieces that stand between two others and are longer than these
// lie apart, where that follows from a third piece that holds both: the divider between
// two shelves, whose sides say where the shelves lie. Who is told of already is left out.
func betweenTooLong(found []deck.Joint, told []deck.Warning, scale measure.Scale) []deck.Warning {
	known := map[string]bool{}
	for _, w := range told {
		if w.Code == "too-long" || w.Code == "frames-differ" {
			known[w.Piece] = true
		}
	}
	var warnings []deck.Warning
	for _, along := range joinery.Dimensions {
		frames := framesOf(found, along)
		for _, b := range standing(found, along) {
			low, high := b.ends[0], b.ends[1]
			f := frames[low]
			if f != frames[high] || f.doubtful || known[b.piece.Name] {
				continue
			}
			room := f.at[high] - f.at[low] - low.Size[along]
			if over := b.apart - room; scale.Round(over-f.play) > 0 {
				known[b.piece.Name] = true
				warnings = append(warnings, b.warnBetween(room, over, scale))
			}
		}
	}
	return warnings
}

// standing lists the pieces that go into the same two others by their opposite ends, as
// often as they are there: by shoulders, or whole boards in housings.
func standing(found []deck.Joint, along joinery.Dimension) []strut {
	var all []strut
	several := map[*joinery.Piece]bool{} // that stand between others as well
	at := map[*joinery.Piece]int{}
	for i := range found {
		low := &found[i]
		if !holds(low.Part) || low.Part.End != along.Low() {
			continue
		}
		for k := range found {
			high := &found[k]
			if high.Part.Piece != low.Part.Piece || !holds(high.Part) || high.Part.End != along.High() {
				continue
			}
			b := strut{between: betweenOf(low, high), ends: [2]*joinery.Piece{low.Into.Piece, high.Into.Piece}}
			switch n, seen := at[b.piece]; {
			case !b.tenoned && !b.housed, b.ends[0] == b.ends[1]:
			case !seen:
				at[b.piece] = len(all)
				all = append(all, b)
			case all[n].ends != b.ends || all[n].apart != b.apart:
				several[b.piece] = true // nobody knows which of them goes with which
			}
		}
	}
	var sure []strut
	for _, b := range all {
		if !several[b.piece] {
			sure = append(sure, b)
		}
	}
	return sure
}

func (b *strut) warnBetween(room, over measure.Length, scale measure.Scale) deck.Warning {
	long := b.piece.Size.Between(b.low.End)
	return deck.Warning{Code: "too-long", Piece: b.piece.Name, Place: b.piece.Places.At(b.piece.Place, "size"),
		Text: fmt.Sprintf("%q is %s long and goes %s into %q and %s into %q, so that %s are left between them, but as these lie in their own joints they are %s apart: make it %s, or place them %s further apart",
			b.piece.Name, scale.Say(long), scale.Say(b.low.Enters), b.ends[0].Name, scale.Say(b.high.Enters), b.ends[1].Name,
			scale.Say(b.apart), scale.Say(room), scale.Say(long-over), scale.Say(over))}
}
