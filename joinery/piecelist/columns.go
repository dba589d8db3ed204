package piecelist

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
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
		return "column " + letters(c.index)
	}
	return fmt.Sprintf("column %s, %s", letters(c.index), quoted(c.head))
}

// wish is how the column is named on the command line.
func (c *column) wishName() string {
	switch {
	case c.head == "":
		return letters(c.index)
	case strings.ContainsAny(c.head, " \"'()$&;*?#!"):
		return `"` + strings.ReplaceAll(c.head, `"`, "") + `"`
	}
	return c.head
}

// lookedAt is how many rows may stand above the heads.
const lookedAt = 30

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
	if s, _, ok := hint(text); ok && slices.Contains(separators, s) {
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
	lines := strings.SplitAfterN(text, "\n", lookedAt+1)
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

// columnOf says what a head stands for. Heads of one letter need to know the
// language; without it they may be of either.
func (r *reader) columnOf(index int, head string, german *bool) column {
	c := column{index: index, head: tidy(head)}
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
	r.list.german = isGerman(heads.cells)
	for i := range r.width() {
		head := ""
		if i < len(heads.cells) {
			head = heads.cells[i]
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
		widest = max(widest, len(r.rows[r.head+i].cells))
	}
	return widest
}

// used reports whether a column has anything below its head.
func (r *reader) used(index int) bool {
	for i := r.head + 1; i < len(r.rows); i++ {
		if r.rows[i].cell(index) != "" {
			return true
		}
	}
	return false
}

// wishedByLetter takes the maker's word for a column that is named by its
// letter.
func (r *reader) wishedByLetter(c *column) bool {
	for _, w := range r.o.Columns {
		if strings.EqualFold(w.Head, letters(c.index)) {
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
		lettered := func(c column) bool { return strings.EqualFold(w.Head, letters(c.index)) }
		if slices.ContainsFunc(r.columns, named) {
			continue
		}
		i := slices.IndexFunc(r.columns, lettered)
		if i < 0 {
			r.fault(r.place(&r.rows[r.head], 0), fmt.Sprintf("no column has the head %s that --column names", quoted(w.Head)),
				"the heads are %s", joinery.Brief(joinery.List(r.headList(), "and"), 200))
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

// askColumn asks what an unknown column holds. Where all that a piece needs is
// there without it, it may be left out.
func (r *reader) askColumn(c *column) {
	q := Question{
		Key:     "column " + letters(c.index),
		Place:   r.place(&r.rows[r.head], c.index),
		About:   c.title() + " holds",
		Asks:    c.title() + ": what does it hold?",
		Choices: FieldNames(),
		Problem: c.title() + " is not known here",
		Remedy:  fmt.Sprintf("say what it holds: --column length=%s, or --column skip=%[1]s to leave it out", c.wishName()),
	}
	if near, ok := ParseField(nearestHead(c.key)); ok {
		q.Default, q.Why = near.String(), "the head is nearly that"
	} else if r.complete() {
		q.Default, q.Why = Skip.String(), "the other columns say all that a piece needs"
	}
	if f, ok := ask(r, q, fieldAnswer); ok {
		c.field = f
	}
}

func fieldAnswer(answer string) (Field, string) {
	if f, ok := ParseField(answer); ok {
		return f, ""
	}
	return NoField, quoted(answer) + " is nothing a column can hold; write " + joinery.List(FieldNames(), "or")
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
		titles, names = append(titles, c.title()), append(names, letters(c.index))
	}
	q := Question{
		Key:     "two " + f.String(),
		Place:   r.place(&r.rows[r.head], same[1].index),
		About:   "the " + f.String() + " is in column",
		Asks:    fmt.Sprintf("%s: which one holds the %s?", joinery.List(titles, "and"), f),
		Choices: names,
		Problem: fmt.Sprintf("%s both seem to hold the %s", joinery.List(titles, "and"), f),
		Remedy:  fmt.Sprintf("say which one does: --column %s=%s", f, same[1].distinct(same[0])),
	}
	if numbers, other := r.numbered(same); numbers != nil && other != nil {
		q.Default, q.Why = letters(other.index), fmt.Sprintf("column %s only numbers the rows", letters(numbers.index))
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
		return letters(c.index)
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
			switch r.rows[j].cell(c.index) {
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
	remedy := "add a column with the head " + joinery.List(missing, "and one with the head")
	if skipped != nil {
		remedy += fmt.Sprintf(", or say which column holds it: --column %s=%s", missing[0], skipped.wishName())
	}
	r.fault(r.place(&r.rows[r.head], 0), "no column says the "+joinery.List(missing, "and the"), "%s", remedy)
}
