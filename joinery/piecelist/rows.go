package piecelist

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/piecelist/spreadsheet"
)

// above is what the row before had, for cells that say ditto.
type above struct{ wood, lies, as string }

// readRows reads every row below the heads.
func (r *reader) readRows() {
	r.woods, r.sides = map[string]string{}, map[string]bool{}
	name := r.column(Name).index
	for w := range r.body() {
		r.sides[nameKey(w.Cell(name))] = true
	}
	var heading string
	var last above
	for i := r.head + 1; i < len(r.rows); i++ {
		w := &r.rows[i]
		switch kind, why := r.kindOf(w); kind {
		case headingRow:
			heading = strings.TrimRight(w.Cell(w.Filled()[0]), " :")
			r.leave(w, why+", taken for a heading")
		case leftRow:
			r.leave(w, why)
		case pieceRow:
			r.list.Pieces = append(r.list.Pieces, r.readRow(w, heading, &last))
		}
		if len(r.questions)+len(r.faults) > mostAsked {
			return
		}
	}
}

// mostAsked ends the reading of a list that leaves almost everything open: more
// faults than are told, and more questions than are answered in one go.
const mostAsked = 1_000

// readRow reads one piece.
func (r *reader) readRow(w *row, heading string, last *above) Piece {
	at := r.column(Name).index
	p := Piece{Name: w.Cell(at), Row: w.Number, Text: w.Text(), Heading: heading, place: r.place(w, at)}
	if p.Name == "" {
		p.Name, _ = ask(r, Question{
			Key:     fmt.Sprintf("piece %d", w.Number),
			Place:   p.place,
			About:   "named",
			Asks:    fmt.Sprintf("row %d, %s: what is this piece called?", w.Number, quoted(w.Text())),
			Problem: "this row has no name",
			Remedy:  "write the piece's name, or take the row out",
		}, func(answer string) (string, string) { return spreadsheet.Tidy(answer), tooLong(answer) })
		if p.Name == "" {
			p.Name = fmt.Sprintf("row %d", w.Number) // for what else there is to say of it
		}
	}
	if wrong := tooLong(p.Name); wrong != "" {
		r.fault(p.place, wrong, "the note is the place for more")
		return p
	}
	p.kind = kindNamed(p.Name, heading, r.list.german)
	r.readCount(w, &p)
	r.readSize(w, &p)
	if most := p.kind.thickest; most > 0 && p.Thickness.Length > most {
		p.kind = kind{}
	}
	last.wood = r.readWood(w, &p, last.wood)
	if !r.sizesOnly {
		last.lies = r.readOrientation(w, &p, last.lies)
		if p.Count > 0 {
			last.as = r.readAs(w, &p, last.as)
		}
	}
	p.Remarks = r.taken()
	return p
}

// Size is the piece's size by dimension, as it lies.
func (p *Piece) Size() joinery.Size {
	var size joinery.Size
	size[p.Lies.Length], size[p.Lies.Thickness], size[p.Lies.Width()] = p.Length.Length, p.Thickness.Length, p.Width.Length
	return size
}
