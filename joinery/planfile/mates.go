package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// readMates reads what goes into a cut: "PIECE / CUT" or "PIECE". The names
// are looked up once every piece is read.
func (r *planReader) readMates(f *yamlfile.Fields) joinery.Mate {
	text := f.Text("mates", 2*yamlfile.LongestName)
	if text == "" {
		return joinery.Mate{}
	}
	mate := joinery.Mate{Piece: text}
	if at := strings.LastIndex(text, " / "); at >= 0 {
		mate.Piece, mate.Cut = text[:at], text[at+len(" / "):]
	}
	r.mates = append(r.mates, mateRef{mate, yamlfile.PositionOf(f.Value("mates"))})
	return mate
}

// mateRef is a mate to be looked up.
type mateRef struct {
	joinery.Mate
	yamlfile.Position
}

// checkMates faults mates that name no piece or cut.
func (r *planReader) checkMates() {
	for _, m := range r.mates {
		if r.Full {
			return
		}
		b, ok := r.named[m.Piece]
		if !ok && r.nameless {
			continue
		}
		if piece, cut, both := strings.Cut(m.Piece, "/"); !ok && both && m.Cut == "" {
			r.Add(plantext.Fault{
				Place:   r.Where(m.Position),
				Problem: "a piece and its cut are named with blanks around the stroke",
				Remedy:  "write mates: " + strings.TrimSpace(piece) + " / " + strings.TrimSpace(cut),
			})
			continue
		}
		if !ok {
			r.Add(plantext.Fault{
				Place:   yamlfile.Inside(r.Where(m.Position), m.Piece),
				Problem: "there is no piece named " + yamlfile.Quoted(m.Piece),
				Remedy:  r.nearPiece(m.Piece, nil),
			})
			continue
		}
		if _, ok := b.cuts.place(m.Cut); m.Cut != "" && !ok && !r.mayJoin(m.Cut) {
			r.Add(plantext.Fault{
				Place:   yamlfile.Inside(r.Where(m.Position), m.Cut),
				Problem: yamlfile.Quoted(m.Piece) + " has no cut named " + yamlfile.Quoted(m.Cut),
				Remedy:  yamlfile.NearName("cut", m.Cut, b.cuts.all("")),
			})
		}
	}
}
