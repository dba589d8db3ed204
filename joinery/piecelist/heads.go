package piecelist

import (
	"encoding/csv"
	"slices"
	"strings"

	"fencecard/joinery"
)

// The heads are among so many rows and bytes.
const (
	lookedAt = 30
	sampled  = 32 << 10
)

const headsRemedy = "write a row of heads above the pieces, such as name,count,length,width,thickness,wood,note"

// findHeads finds the separator and the row of heads together: the words of the
// heads decide both.
func (r *reader) findHeads(name, text string) error {
	r.text = joinery.NewText(name, text)
	sep, most := ',', 1
	for _, s := range separators {
		for cells := range sample(text, s) {
			if n := r.known(cells); n > most {
				sep, most = s, n
			}
		}
	}
	if s, ok := hint(text); ok && slices.Contains(separators, s) {
		sep = s
	}
	rows, err := split(r.text, sep)
	if err != nil {
		return err
	}
	r.rows, r.head = rows, -1
	most = 1
	for i := range rows[:min(len(rows), lookedAt)] {
		if n := r.known(rows[i].cells); n > most {
			r.head, most = i, n
		}
	}
	if r.head < 0 {
		return joinery.Faults{{Place: r.text.Place(1, 1), Problem: "no row of this list names its columns", Remedy: headsRemedy}}
	}
	return nil
}

// sample gives the first rows as they would be with a separator, whatever
// quotation marks do to the last.
func sample(text string, sep rune) func(yield func([]string) bool) {
	lines := strings.SplitAfterN(text[:min(len(text), sampled)], "\n", lookedAt+1)
	c := csv.NewReader(strings.NewReader(strings.Join(lines[:min(len(lines), lookedAt)], "")))
	c.Comma, c.LazyQuotes, c.FieldsPerRecord = sep, true, -1
	return func(yield func([]string) bool) {
		for {
			cells, err := c.Read()
			if err != nil || len(cells) > mostColumns || !yield(cells) {
				return
			}
		}
	}
}

// known counts the different fields that the cells of a row are heads of.
func (r *reader) known(cells []string) int {
	var found [Skip + 1]bool
	n := 0
	for i, cell := range cells[:min(len(cells), mostColumns)] {
		c := r.columnOf(i, cell, nil)
		if c.field != NoField && !found[c.field] {
			found[c.field] = true
			n++
		}
	}
	return n
}
