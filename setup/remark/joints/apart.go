package joints

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// between is a piece that goes into two others by its opposite ends.
type between struct {
	piece     *joinery.Piece
	low, high deck.Half      // its ends
	apart     measure.Length // what it leaves between the two others
	tenoned   bool           // its shoulders hold the two apart
	housed    bool           // it is a board in housings; a panel in grooves has room
}

func betweenOf(low, high *deck.Joint) between {
	housed := func(j *deck.Joint) bool { k := j.Into.Cut.Kind; return k.Receives && k.Across }
	b := between{piece: low.Part.Piece, low: low.Part, high: high.Part,
		tenoned: low.Part.Cut != nil && high.Part.Cut != nil, housed: housed(low) && housed(high)}
	b.apart = b.piece.Size.Between(low.Part.End) - low.Part.Enters - high.Part.Enters
	return b
}

// tooLong warns of pieces that are longer than there is room for between the two that
// they go into, where another piece between the same two says how far these stand
// apart: by its shoulders or, of boards alone in housings, the shortest by its length.
func tooLong(found []deck.Joint, scale measure.Scale) []deck.Warning {
	type pair struct {
		low, high *joinery.Piece
		along     joinery.Dimension // a table's long and short rails may share two legs that stand askew
	}
	type goes struct {
		piece *joinery.Piece
		at    pair
	}
	ends := map[*joinery.Piece][]*deck.Joint{}
	for i := range found {
		if p := found[i].Part; holds(p) {
			ends[p.Piece] = append(ends[p.Piece], &found[i])
		}
	}
	var order []pair
	all, known := map[pair][]between{}, map[goes]bool{}
	for i := range found {
		low := &found[i]
		for _, high := range ends[low.Part.Piece] {
			b, at := betweenOf(low, high), pair{low.Into.Piece, high.Into.Piece, low.Part.End.Dimension()}
			if !holds(low.Part) || low.Part.End.High() || low.Part.End.Opposite() != high.Part.End || known[goes{b.piece, at}] {
				continue
			}
			known[goes{b.piece, at}] = true
			if all[at] == nil {
				order = append(order, at)
			}
			all[at] = append(all[at], b)
		}
	}
	var warnings []deck.Warning
	told := map[*joinery.Piece]bool{}
	for _, at := range order {
		says := shortest(all[at])
		if says == nil {
			continue
		}
		for _, b := range all[at] {
			if over := b.apart - says.apart; scale.Round(over) > 0 && !told[b.piece] {
				told[b.piece] = true
				warnings = append(warnings, b.warn(at.low, at.high, says, over, scale))
			}
		}
	}
	return warnings
}

// holds reports whether it is known how far a half goes in: up to a tenon's shoulder,
// or of a whole board to the bottom.
func holds(h deck.Half) bool {
	return h.End != joinery.NoSide && h.Enters > 0 && (h.Cut == nil || h.Cut.Kind.Has("cheeks"))
}

// shortest is the piece that says how far two others stand apart; nil where none does.
func shortest(all []between) *between {
	var says *between
	for i := range all {
		b := &all[i]
		switch {
		case !b.tenoned && !b.housed:
		case says == nil || b.tenoned && !says.tenoned:
			says = b
		case b.tenoned == says.tenoned && b.apart < says.apart:
			says = b
		}
	}
	return says
}

func (b between) warn(low, high *joinery.Piece, says *between, over measure.Length, scale measure.Scale) deck.Warning {
	long := b.piece.Size.Between(b.low.End)
	return deck.Warning{Code: "too-long", Piece: b.piece.Name, Place: b.piece.Places.At(b.piece.Place, "size"),
		Text: fmt.Sprintf("%q is %s long and goes %s into %q and %s into %q, so that %s are left between them, but %q leaves %s: make it %s, or the other %s longer",
			b.piece.Name, scale.Say(long), scale.Say(b.low.Enters), low.Name, scale.Say(b.high.Enters), high.Name,
			scale.Say(b.apart), says.piece.Name, scale.Say(says.apart), scale.Say(long-over), scale.Say(over))}
}
