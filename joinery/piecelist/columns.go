package piecelist

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

// column is one column that holds something.
type column struct {
	index int
	head  string
	key   string // the head without its unit
	unit  string // behind the head, as a length has it: "mm"; or ""
	field Field
	order []Field // of the lengths in its cells, where the head says it
	wish  bool    // the maker said what it holds
}

// title is the column's name in messages.
func (c *column) title() string {
	if c.head == "" {
		return "column " + spreadsheet.Letters(c.index)
	}
	return fmt.Sprintf("column %s, %s", spreadsheet.Letters(c.index), quoted(c.head))
}

// wishName is how the column is named on the command line.
func (c *column) wishName() string {
	switch {
	case c.head == "":
		return spreadsheet.Letters(c.index)
	case strings.ContainsAny(c.head, " \"'()$&;*?#!"):
		return `"` + strings.ReplaceAll(c.head, `"`, "") + `"`
	}
	return c.head
}

// columnOf says what a head stands for. Heads of one letter need to know the
// language; without it they may be of either.
func (r *reader) columnOf(index int, head string, german *bool) column {
	c := column{index: index, head: spreadsheet.Tidy(head)}
	if len(c.head) > 80 {
		return c
	}
	c.key, c.unit = splitHead(c.head)
	for _, w := range r.o.Columns {
		if w.Head == c.head || headKey(w.Head) == headKey(c.head) && c.key != "" {
			c.field, c.wish = w.Field, true
		}
	}
	if c.wish || c.key == "" {
		return c
	}
	for _, w := range headWords()[c.key] {
		if german == nil || w.german == *german || len(c.key) > 1 {
			c.field = w.field
		}
	}
	if order := orderOf(c.key); c.field == NoField && order != nil {
		c.field, c.order = Size, order
	}
	return c
}

// isGerman reports whether more heads are German words than English ones.
func isGerman(cells []string) bool {
	german := 0
	for _, cell := range cells {
		key, _ := splitHead(cell)
		words := headWords()[key]
		if len(words) != 1 || len(key) < 2 {
			continue
		}
		if words[0].german {
			german++
		} else {
			german--
		}
	}
	return german > 0
}

// readColumns decides what every column holds.
func (r *reader) readColumns() {
	heads := &r.rows[r.head]
	r.list.german = isGerman(heads.Cells)
	for i := range r.width() {
		head := ""
		if i < len(heads.Cells) {
			head = heads.Cells[i]
		}
		c := r.columnOf(i, head, &r.list.german)
		if c.head == "" {
			c.wish = r.wishedByLetter(&c)
		}
		if c.head != "" || c.wish || r.used(i) {
			r.columns = append(r.columns, c)
		}
	}
	r.checkWishes()
	for i := range r.columns {
		if c := &r.columns[i]; c.field == NoField {
			r.askColumn(c)
		}
	}
	if !r.settled() {
		return
	}
	for f := Name; f < Skip; f++ {
		if f != Note {
			r.askTwice(f)
		}
	}
	if r.settled() {
		r.checkMissing()
	}
}

// width is the number of cells of the widest row.
func (r *reader) width() int {
	widest := 0
	for i := range r.rows[r.head:] {
		widest = max(widest, len(r.rows[r.head+i].Cells))
	}
	return widest
}

// used reports whether a column has anything below its head.
func (r *reader) used(index int) bool {
	for i := r.head + 1; i < len(r.rows); i++ {
		if r.rows[i].Cell(index) != "" {
			return true
		}
	}
	return false
}

// wishedByLetter takes the maker's word for a column that is named by its
// letter.
func (r *reader) wishedByLetter(c *column) bool {
	for _, w := range r.o.Columns {
		if strings.EqualFold(w.Head, spreadsheet.Letters(c.index)) {
			c.field = w.Field
			return true
		}
	}
	return false
}

// checkWishes lets a letter name a column where no head is that letter, and
// faults a wish for a head that is not there.
func (r *reader) checkWishes() {
	for _, w := range r.o.Columns {
		named := func(c column) bool { return w.Head == c.head || headKey(w.Head) == headKey(c.head) }
		lettered := func(c column) bool { return strings.EqualFold(w.Head, spreadsheet.Letters(c.index)) }
		if slices.ContainsFunc(r.columns, named) {
			continue
		}
		i := slices.IndexFunc(r.columns, lettered)
		if i < 0 {
			r.fault(r.place(&r.rows[r.head], 0), fmt.Sprintf("no column has the head %s that --column names", quoted(w.Head)),
				"the heads are "+plantext.Brief(plantext.List(r.headList(), "and"), 200))
			continue
		}
		r.columns[i].field, r.columns[i].wish = w.Field, true
	}
}

func (r *reader) headList() []string {
	var heads []string
	for _, c := range r.columns {
		if c.head != "" {
			heads = append(heads, c.head)
		}
	}
	return heads
}

// column returns the column that holds a field, or nil.
func (r *reader) column(f Field) *column {
	for i := range r.columns {
		if r.columns[i].field == f {
			return &r.columns[i]
		}
	}
	return nil
}

// checkMissing faults columns without which nothing can be made of the list.
func (r *reader) checkMissing() {
	var missing []string
	for _, f := range []Field{Name, Length, Width} {
		if r.column(f) == nil && (f == Name || r.column(Size) == nil) {
			missing = append(missing, f.String())
		}
	}
	if missing == nil {
		return
	}
	var skipped *column
	for i := range r.columns {
		if r.columns[i].field == Skip {
			skipped = &r.columns[i]
		}
	}
	remedy := "add a column with the head " + plantext.List(missing, "and one with the head")
	if skipped != nil {
		remedy += fmt.Sprintf(", or say which column holds it: --column %s=%s", missing[0], skipped.wishName())
	}
	r.fault(r.place(&r.rows[r.head], 0), "no column says the "+plantext.List(missing, "and the"), remedy)
}
