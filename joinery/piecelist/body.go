package piecelist

import (
	"fmt"
	"iter"
	"strings"
	"unicode"

	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
)

// rowKind is what a row below the heads is.
type rowKind uint8

const (
	notJudged rowKind = iota
	pieceRow
	emptyRow   // nothing, or a rule of dashes
	headingRow // one cell: the name of what follows
	unitRow    // units of the columns
	leftRow    // no piece; the maker is told
)

var (
	ruleOnly  = pattern.New(`^[-=_*.·–—\s]*$`)
	totalWord = pattern.New(`(?i)^(?:(?:sub[- ]?|grand )?totals?|sums?|summe|gesamt|gesamtsumme|zwischensumme|insgesamt)\b`)
	unitOnly  = pattern.New(`(?i)^[(\[]?` + unitWord + `[)\]]?$`)
)

// kindOf says what a row is, and why where it is left out. The columns must be
// known.
func (r *reader) kindOf(w *row) (kind rowKind, why string) {
	if w.kind == notJudged {
		w.kind, w.why = r.judge(w)
	}
	return w.kind, w.why
}

func (r *reader) judge(w *row) (kind rowKind, why string) {
	filled := w.Filled()
	blank, units := true, len(filled) > 0
	for _, i := range filled {
		blank = blank && ruleOnly.MatchString(w.Cell(i))
		units = units && (unitOnly.MatchString(w.Cell(i)) || ruleOnly.MatchString(w.Cell(i)))
	}
	switch {
	case blank:
		return emptyRow, ""
	case units:
		return unitRow, ""
	case totalWord.MatchString(w.Cell(filled[0])):
		return leftRow, "a total"
	case len(filled) > 2 && r.repeats(w, filled):
		return leftRow, "the heads again"
	case r.sizeless(w) && len(filled) == 1 && strings.ContainsFunc(w.Cell(filled[0]), unicode.IsLetter):
		return headingRow, "nothing but a name"
	case r.sizeless(w) && w.Cell(r.column(Name).index) == "":
		return leftRow, "no name and no size"
	}
	return pieceRow, ""
}

// repeats reports whether a row is the heads once more, as on a second page.
func (r *reader) repeats(w *row, filled []int) bool {
	for _, i := range filled {
		if !strings.EqualFold(w.Cell(i), r.rows[r.head].Cell(i)) {
			return false
		}
	}
	return true
}

// sizeless reports whether a row has nothing in any column of lengths.
func (r *reader) sizeless(w *row) bool {
	for _, f := range []Field{Length, Width, Thickness, Size} {
		if c := r.column(f); c != nil && w.Cell(c.index) != "" {
			return false
		}
	}
	return true
}

// body gives the rows below the heads that are pieces.
func (r *reader) body() iter.Seq[*row] {
	return func(yield func(*row) bool) {
		for i := r.head + 1; i < len(r.rows); i++ {
			if kind, _ := r.kindOf(&r.rows[i]); kind == pieceRow && !yield(&r.rows[i]) {
				return
			}
		}
	}
}

// lengthCells gives the texts of every cell of lengths, several in one cell one
// by one, with the column.
func (r *reader) lengthCells() iter.Seq2[*column, string] {
	return func(yield func(*column, string) bool) {
		for w := range r.body() {
			for i := range r.columns {
				c := &r.columns[i]
				if c.field < Length || c.field > Size {
					continue
				}
				for _, part := range timesSign.Split(w.Cell(c.index), -1) {
					if part != "" && !yield(c, part) {
						return
					}
				}
			}
		}
	}
}

// readTitle takes the first text above the heads for the title.
func (r *reader) readTitle() {
	for i := range r.rows[:r.head] {
		for _, at := range r.rows[i].Filled() {
			text := r.rows[i].Cell(at)
			if strings.HasPrefix(strings.ToLower(text), "sep=") || ruleOnly.MatchString(text) {
				continue
			}
			r.list.Title = plantext.Brief(text, 90)
			return
		}
	}
}

// leave keeps a row that is no piece, to be told.
func (r *reader) leave(w *row, why string) {
	r.list.Left = append(r.list.Left, fmt.Sprintf("row %d, %s: %s", w.Number, quoted(w.Text()), why))
}
