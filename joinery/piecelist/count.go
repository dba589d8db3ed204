package piecelist

import (
	"fmt"
	"strconv"

	"fencecard/joinery/pattern"
	"fencecard/joinery/piecelist/spreadsheet"
)

// mostCount is the most of one piece that a plan takes.
const mostCount = 10_000

var countOf = pattern.New(`(?i)^[x×]?\s*(\d{1,9})(?:[.,]0+)?\s*(?:[x×]|pcs?\.?|pieces?|off|ea\.?|each|no\.?|st(?:[üu]|ue)?c?k?\.?|mal)?$`)

// readCount reads how many of a piece are made.
func (r *reader) readCount(w *row, p *Piece) {
	c := r.column(Count)
	if c == nil {
		p.Count = r.count
		return
	}
	text := w.Cell(c.index)
	q := Question{
		Key:    fmt.Sprintf("count %d", w.Number),
		Place:  r.place(w, c.index),
		About:  "count",
		Asks:   fmt.Sprintf("%s%d: how many of %s?", spreadsheet.Letters(c.index), w.Number, quoted(p.Name)),
		Remedy: "write a whole number, such as 4",
	}
	switch n, wrong := wholeCount(text); {
	case text == "":
		q.Default, q.Why = "1", "the cell is empty"
		q.Problem = "the list does not say how many of " + quoted(p.Name) + " are made"
	case wrong != "":
		q.says(wrong)
	default:
		p.Count = n
		return
	}
	p.Count, _ = ask(r, q, wholeCount)
}

func wholeCount(text string) (int, string) {
	m := countOf.FindStringSubmatch(text)
	if m == nil {
		return 0, quoted(text) + " is not a whole number"
	}
	n, err := strconv.Atoi(m[1])
	switch {
	case err != nil || n > mostCount:
		return 0, m[1] + " is too many for one plan"
	case n == 0:
		return 0, "a count of 0 makes nothing; take the row out"
	}
	return n, ""
}

// readWholeCount asks once how many are made where no column says it.
func (r *reader) readWholeCount() {
	if r.column(Count) != nil {
		return
	}
	heads := &r.rows[r.head]
	r.count, _ = ask(r, Question{
		Key:     "count",
		Place:   r.place(heads, len(heads.Cells)),
		About:   "count",
		Asks:    "no column says how many; how many of each?",
		Default: "1",
		Why:     "no column says how many",
		Problem: "no column says how many of each are made",
		Remedy:  "add a column with the head qty",
	}, wholeCount)
}
