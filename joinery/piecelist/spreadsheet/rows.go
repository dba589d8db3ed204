package spreadsheet

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery/plantext"
)

// Limits on a list. A row that makes pieces is a few lines of the plan, whose
// reader has limits of its own.
const (
	mostRows       = 15_000
	mostSeparators = 300_000
	MostColumns    = 100
	longestCell    = 2_000 // in bytes
)

// position is where a cell begins: its line from 1 and its column in bytes
// from 1.
type position struct{ line, column int32 }

// Row is one row of the list.
type Row struct {
	Number int      // as a spreadsheet counts, from 1
	Cells  []string // tidy
	at     []position
}

// Cell is the text of a column, counted from 0; "" past the last.
func (w *Row) Cell(column int) string {
	if column < 0 || column >= len(w.Cells) {
		return ""
	}
	return w.Cells[column]
}

// Filled lists the columns that are not empty.
func (w *Row) Filled() []int {
	var some []int
	for i := range w.Cells {
		if w.Cell(i) != "" {
			some = append(some, i)
		}
	}
	return some
}

// Text is the whole row in one line, for a remark.
func (w *Row) Text() string {
	var cells []string
	for _, i := range w.Filled() {
		cells = append(cells, w.Cell(i))
	}
	return plantext.Brief(strings.Join(cells, " | "), 200)
}

// Tidy takes out of a cell what only kept a spreadsheet from changing it, and
// brings it into one line.
func Tidy(cell string) string {
	cell = strings.Join(strings.Fields(strings.Map(shown, cell)), " ")
	if inner, ok := strings.CutPrefix(cell, `="`); ok && strings.HasSuffix(inner, `"`) {
		return strings.TrimSpace(strings.TrimSuffix(inner, `"`))
	}
	if len(cell) > 1 && cell[0] == '\'' && cell[1] >= '0' && cell[1] <= '9' {
		return cell[1:]
	}
	return cell
}

// shown drops characters that nobody sees and no plan takes.
func shown(c rune) rune {
	if c == '\u00ad' || c >= '\u200b' && c <= '\u200d' || c == '\ufeff' || c == '\ufffe' || c == '\uffff' || unicode.Is(unicode.Bidi_Control, c) {
		return -1
	}
	return c
}

// Separators are what may stand between cells.
var Separators = []rune{',', ';', '\t'}

// Hint reads the first line by which some spreadsheets are told the separator.
func Hint(text string) (sep rune, ok bool) {
	line, _, _ := strings.Cut(text, "\n")
	mark, found := strings.CutPrefix(strings.ToLower(strings.TrimSpace(line)), "sep=")
	if !found || utf8.RuneCountInString(mark) > 1 {
		return 0, false
	}
	if mark == "" { // a tab, trimmed away
		return '\t', true
	}
	sep, _ = utf8.DecodeRuneInString(mark)
	return sep, true
}

// Rows reads the text into rows. Rows that are quite empty are left out, but
// counted.
func Rows(t *plantext.Text, sep rune) ([]Row, error) {
	text := t.String()
	if strings.Count(text, string(sep)) > mostSeparators {
		return nil, plantext.Faults{{Place: t.Place(1, 1), Problem: fmt.Sprintf("the list has more than %d cells", mostSeparators),
			Remedy: "take out the columns and rows that are no pieces"}}
	}
	c := csv.NewReader(strings.NewReader(text))
	c.Comma, c.LazyQuotes, c.FieldsPerRecord = sep, true, -1
	var rows []Row
	inner := 0 // line ends inside cells so far
	for {
		cells, err := c.Read()
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			return nil, plantext.Faults{{Place: t.Place(1, 1), Problem: "this is no list that can be split into cells", Remedy: saveAs}}
		}
		w := Row{Cells: cells, at: make([]position, len(cells))}
		for i, cell := range cells {
			line, column := c.FieldPos(i)
			w.at[i] = position{int32(line), int32(column)}
			if i == 0 {
				w.Number = line - inner
			}
			inner += strings.Count(cell, "\n")
			cells[i] = Tidy(cell)
		}
		if at, open := openQuote(t, &w, int(c.InputOffset())); open {
			return nil, plantext.Faults{{Place: at, Problem: "a quotation mark begins here and the one that ends it is not where it belongs",
				Remedy: "write a mark inside a cell twice, or write in for inches: 3/4 in"}}
		}
		rows = append(rows, w)
		if f := w.tooMuch(t, len(rows)); f.Problem != "" {
			return nil, plantext.Faults{f}
		}
	}
}

// tooMuch faults a row that no list of pieces has; the fault is empty for others.
func (w *Row) tooMuch(t *plantext.Text, rows int) (f plantext.Fault) {
	f.Place = t.Place(int(w.at[0].line), 1)
	switch {
	case len(w.Cells) > MostColumns:
		f.Problem, f.Remedy = fmt.Sprintf("this row has more than %d cells", MostColumns), "take out the columns that say nothing of the pieces"
	case rows > mostRows:
		f.Problem, f.Remedy = fmt.Sprintf("the list has more than %d rows", mostRows), "make several lists and plans of it"
	}
	for i, cell := range w.Cells {
		if len(cell) > longestCell {
			f.Problem, f.Remedy = fmt.Sprintf("cell %s%d has more than %d characters", Letters(i), w.Number, longestCell), "shorten it; a note may be kept elsewhere"
		}
	}
	return f
}

// openQuote finds a cell that begins with a quotation mark and does not end
// with its fellow: the reader lets such a cell swallow what follows it.
func openQuote(t *plantext.Text, w *Row, end int) (plantext.Place, bool) {
	text := t.String()
	for i, p := range w.at {
		from := t.Start(int(p.line)) + int(p.column) - 1
		if from >= len(text) || text[from] != '"' {
			continue
		}
		to := end
		if i+1 < len(w.at) {
			to = t.Start(int(w.at[i+1].line)) + int(w.at[i+1].column) - 2
		}
		raw := strings.TrimRight(text[from:to], "\n")
		inside := strings.TrimSuffix(raw[1:], `"`)
		if len(raw) < 2 || raw[len(raw)-1] != '"' || strings.Contains(strings.ReplaceAll(inside, `""`, ""), `"`) {
			return t.Place(t.Position(from)), true
		}
	}
	return plantext.Place{}, false
}

// Letters names a column as a spreadsheet does: A, B, ... Z, AA.
func Letters(column int) string {
	name := ""
	for column++; column > 0; column = (column - 1) / 26 {
		name = string(rune('A'+(column-1)%26)) + name
	}
	return name
}

// Place is where a cell of a row stands in the text; past its last cell, the row's
// end.
func (w *Row) Place(t *plantext.Text, column int) plantext.Place {
	if column >= 0 && column < len(w.at) {
		p := w.at[column]
		line := t.Line(int(p.line))
		return t.Place(int(p.line), utf8.RuneCountInString(line[:min(int(p.column)-1, len(line))])+1)
	}
	line := 1
	if len(w.at) > 0 {
		line = int(w.at[0].line)
	}
	if column < 0 {
		return t.Place(line, 1)
	}
	return t.Place(line, utf8.RuneCountInString(t.Line(line))+1)
}

// sampled is in how many bytes the first rows are looked for.
const sampled = 32 << 10

// Sample gives some of the first rows as they would be with a separator, whatever
// quotation marks do to the last.
func Sample(text string, sep rune, rows int) func(yield func([]string) bool) {
	lines := strings.SplitAfterN(text[:min(len(text), sampled)], "\n", rows+1)
	c := csv.NewReader(strings.NewReader(strings.Join(lines[:min(len(lines), rows)], "")))
	c.Comma, c.LazyQuotes, c.FieldsPerRecord = sep, true, -1
	return func(yield func([]string) bool) {
		for {
			cells, err := c.Read()
			if err != nil || len(cells) > MostColumns || !yield(cells) {
				return
			}
		}
	}
}
