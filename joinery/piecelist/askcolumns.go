package piecelist

import (
	"fmt"
	"slices"

	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

// askColumn asks what an unknown column holds. Where all that a piece needs is
// there without it, it may be left out.
func (r *reader) askColumn(c *column) {
	q := Question{
		Key:     "column " + spreadsheet.Letters(c.index),
		Place:   r.place(&r.rows[r.head], c.index),
		About:   c.title() + " holds",
		Asks:    c.title() + ": what does it hold?",
		Choices: FieldNames(),
		Problem: c.title() + " is not known here",
	}
	may := r.firstMissing()
	if near, ok := ParseField(nearestHead(c.key)); ok {
		q.Default, q.Why, may = near.String(), "the head is nearly that", near
	} else if r.complete() {
		q.Default, q.Why = Skip.String(), "the other columns say all that a piece needs"
	}
	q.Remedy = fmt.Sprintf("say what it holds: --column %s=%s, or --column skip=%[2]s to leave it out", may, c.wishName())
	if f, ok := ask(r, q, fieldAnswer); ok {
		c.field = f
	}
}

func fieldAnswer(answer string) (Field, string) {
	if f, ok := ParseField(answer); ok {
		return f, ""
	}
	return NoField, quoted(answer) + " is nothing a column can hold; write " + plantext.List(FieldNames(), "or")
}

// firstMissing is a field that no known column holds, to show how one is named.
func (r *reader) firstMissing() Field {
	for _, f := range []Field{Name, Length, Width, Thickness} {
		if r.column(f) == nil {
			return f
		}
	}
	return Note
}

// complete reports whether the known columns hold all that a piece needs.
func (r *reader) complete() bool {
	has := func(f Field) bool { return r.column(f) != nil }
	return has(Name) && (has(Size) || has(Length) && has(Width) && has(Thickness))
}

// askTwice asks which column holds a field that several say they hold.
func (r *reader) askTwice(f Field) {
	var same []*column
	for i := range r.columns {
		if r.columns[i].field == f {
			same = append(same, &r.columns[i])
		}
	}
	if wished := slices.IndexFunc(same, func(c *column) bool { return c.wish }); wished >= 0 {
		keepOne(same, same[wished])
		return
	}
	if len(same) < 2 {
		return
	}
	var titles, names []string
	for _, c := range same {
		titles, names = append(titles, c.title()), append(names, spreadsheet.Letters(c.index))
	}
	q := Question{
		Key:     "two " + f.String(),
		Place:   r.place(&r.rows[r.head], same[1].index),
		About:   "the " + f.String() + " is in column",
		Asks:    fmt.Sprintf("%s: which one holds the %s?", plantext.List(titles, "and"), f),
		Choices: names,
		Problem: fmt.Sprintf("%s both seem to hold the %s", plantext.List(titles, "and"), f),
		Remedy:  fmt.Sprintf("say which one does: --column %s=%s", f, same[1].distinct(same[0])),
	}
	if numbers, other := r.numbered(same); numbers != nil && other != nil {
		q.Default, q.Why = spreadsheet.Letters(other.index), fmt.Sprintf("column %s only numbers the rows", spreadsheet.Letters(numbers.index))
		q.Remedy = fmt.Sprintf("say which one does: --column %s=%s", f, other.distinct(numbers))
	}
	chosen, ok := ask(r, q, oneOf(names...))
	if ok {
		keepOne(same, same[slices.Index(names, chosen)])
	}
}

// distinct names a column on the command line so that another is not meant.
func (c *column) distinct(other *column) string {
	if c.key == other.key {
		return spreadsheet.Letters(c.index)
	}
	return c.wishName()
}

func keepOne(same []*column, chosen *column) {
	for _, c := range same {
		if c != chosen {
			c.field = Skip
		}
	}
}

// numbered finds, of two columns, the one that counts 1, 2, 3 down the rows, and
// the other.
func (r *reader) numbered(two []*column) (numbers, other *column) {
	if len(two) != 2 {
		return nil, nil
	}
	for i, c := range two {
		next := 1
		for j := r.head + 1; j < len(r.rows) && next > 0; j++ {
			switch r.rows[j].Cell(c.index) {
			case "":
			case fmt.Sprint(next):
				next++
			default:
				next = 0
			}
		}
		if next > 2 {
			return c, two[1-i]
		}
	}
	return nil, nil
}
