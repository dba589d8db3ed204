package piecelist

import (
	"fmt"
	"strconv"

	"fencecard/joinery/pattern"
)

// mostCount is the most of one piece that a plan takes.
const mostCount = 10_000

var countOf = pattern.New(`(?i)^[x×]?\s*(\d{1,9})(?:[.,]0+)?\s*(?:[x×]|pcs?\.?|pieces?|off|ea\.?|each|no\.?|st(?:[üu]|ue)?c?k?\.?|mal)?$`)

// readCount reads how many of a piece are made.
func (r *reader) readCount(w *row, p *Piece) {
	c := r.column(Count)
	if c == nil {
		p.Count = 1
		return
	}
	text := w.cell(c.index)
	q := Question{
		Key:    fmt.Sprintf("count %d", w.number),
		Place:  r.place(w, c.index),
		About:  "count",
		Asks:   fmt.Sprintf("%s%d: how many of %s?", letters(c.index), w.number, quoted(p.Name)),
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

// noCount is what is said of a list that has no column for it.
const noCount = "no column says how many, so it is one of each"
