package planfile

import (
	"strings"

	"fencecard/joinery"
)

// readMates reads what goes into a cut: "PIECE / CUT" or "PIECE". The names
// are looked up once every piece is read.
func (r *planReader) readMates(f *fields) joinery.Mate {
	text := f.text("mates", 2*longestName)
	if text == "" {
		return joinery.Mate{}
	}
	mate := joinery.Mate{Piece: text}
	if at := strings.LastIndex(text, " / "); at >= 0 {
		mate.Piece, mate.Cut = text[:at], text[at+len(" / "):]
	}
	r.mates = append(r.mates, mateRef{mate, positionOf(f.value("mates"))})
	return mate
}

// mateRef is a mate to be looked up.
type mateRef struct {
	joinery.Mate
	position
}

// checkMates faults mates that name no piece or cut.
func (r *planReader) checkMates() {
	for _, m := range r.mates {
		if r.full {
			return
		}
		b, ok := r.named[m.Piece]
		if !ok && r.nameless {
			continue
		}
		if piece, cut, both := strings.Cut(m.Piece, "/"); !ok && both && m.Cut == "" {
			r.add(joinery.Fault{
				Place:   r.where(m.position),
				Problem: "a piece and its cut are named with blanks around the stroke",
				Remedy:  "write mates: " + strings.TrimSpace(piece) + " / " + strings.TrimSpace(cut),
			})
			continue
		}
		if !ok {
			r.add(joinery.Fault{
				Place:   inside(r.where(m.position), m.Piece),
				Problem: "there is no piece named " + quoted(m.Piece),
				Remedy:  r.nearPiece(m.Piece, nil),
			})
			continue
		}
		if _, ok := b.cuts.place(m.Cut); m.Cut != "" && !ok && !r.mayJoin(m.Cut) {
			r.add(joinery.Fault{
				Place:   inside(r.where(m.position), m.Cut),
				Problem: quoted(m.Piece) + " has no cut named " + quoted(m.Cut),
				Remedy:  nearName("cut", m.Cut, b.cuts.all("")),
			})
		}
	}
}
