package piecelist

import (
	"slices"

	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

// lookedAt is among how many rows the heads are.
const lookedAt = 30

const headsRemedy = "write a row of heads above the pieces, such as name,count,length,width,thickness,wood,note"

// findHeads finds the separator and the row of heads together: the words of the
// heads decide both.
func (r *reader) findHeads(name, text string) error {
	r.text = plantext.NewText(name, text)
	sep, most := ',', 1
	for _, s := range spreadsheet.Separators {
		for cells := range spreadsheet.Sample(text, s, lookedAt) {
			if n := r.known(cells); n > most {
				sep, most = s, n
			}
		}
	}
	if s, ok := spreadsheet.Hint(text); ok && slices.Contains(spreadsheet.Separators, s) {
		sep = s
	}
	rows, err := spreadsheet.Rows(r.text, sep)
	if err != nil {
		return err
	}
	r.rows, r.head = make([]row, len(rows)), -1
	for i := range rows {
		r.rows[i].Row = rows[i]
	}
	most = 1
	for i := range rows[:min(len(rows), lookedAt)] {
		if n := r.known(rows[i].Cells); n > most {
			r.head, most = i, n
		}
	}
	if r.head < 0 {
		return plantext.Faults{{Place: r.text.Place(1, 1), Problem: "no row of this list names its columns", Remedy: headsRemedy}}
	}
	return nil
}

// known counts the different fields that the cells of a row are heads of.
func (r *reader) known(cells []string) int {
	var found [Skip + 1]bool
	n := 0
	for i, cell := range cells[:min(len(cells), spreadsheet.MostColumns)] {
		c := r.columnOf(i, cell, nil)
		if c.field != NoField && !found[c.field] {
			found[c.field] = true
			n++
		}
	}
	return n
}
