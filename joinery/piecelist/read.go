package piecelist

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

// Options are what is known of a list besides the list itself. The zero value
// knows nothing.
type Options struct {
	Columns  []Column          // what columns hold whose heads do not say it
	Unit     Unit              // of numbers without one
	Answers  map[string]string // to questions, by their key; "" is no answer
	Defaults bool              // take the default of every question that has one
}

// Column says what the column with a head holds. The head may also be the
// column's letter.
type Column struct {
	Field Field
	Head  string
}

// Unit is the unit of a list's bare numbers.
type Unit uint8

// The units of a list.
const (
	UnknownUnit Unit = iota // the list says it, or it is asked
	Inches
	Millimetres
)

// of is the unit as package measure knows it; it must be known.
func (u Unit) of() measure.Unit {
	if u == Millimetres {
		return measure.Millimetres
	}
	return measure.Inches
}

// List is a list of pieces, read.
type List struct {
	File    string
	Title   string // the text above the heads, or ""
	Unit    measure.Unit
	Pieces  []Piece
	Left    []string // the rows that are no pieces, and why
	Remarks []string // what was answered of the list as a whole

	german   bool              // the heads are German
	mirrored map[string][]Copy // the mirror images of a piece, once they are looked up
}

// Piece is one row of the list.
type Piece struct {
	Name      string
	Row       int    // as the spreadsheet counts
	Text      string // the cells of the row
	Heading   string // a row above it that was a heading, or ""
	Count     int    // 1 or more
	Length    Measure
	Width     Measure
	Thickness Measure
	Wood      string // as the table of woods has it, or ""
	Lies      Orientation
	As        As
	Copies    []Copy   // the pieces of the plan that it comes to
	Remarks   []string // what was answered of it

	kind  kind
	told  bool // the list itself says what As is
	place plantext.Place
}

// Measure is a length of a piece, and how a plan writes it.
type Measure struct {
	measure.Length
	Text string
}

// reader reads one list.
type reader struct {
	o         Options
	text      *plantext.Text
	rows      []row
	head      int // the index of the row of heads
	columns   []column
	list      *List
	faults    plantext.Faults
	questions []Question
	remarks   []string // answers since they were last taken
	style     spreadsheet.NumberStyle
	orders    orders
	thickness Measure // of every piece, where no column has it
	count     int     // likewise
	woods     map[string]string
	sides     map[string]bool // the names of all rows
	sizesOnly bool            // which way pieces lie is not wanted
	planUnit  Unit            // for a list that does not say its own
}

// Read reads a list. Where something must be asked, it returns the questions
// and no list; answered in Options, they are not asked again. What follows from
// an answer may be asked in a second round: columns first, then the unit, then
// what is missing in the rows. The error is [plantext.Faults]: all that is wrong
// and no answer mends.
func Read(name string, data []byte, o Options) (*List, []Question, error) {
	r, err := open(name, data, o)
	if err != nil {
		return nil, nil, err
	}
	r.readPieces()
	if r.settled() {
		r.nameAll()
	}
	if r.settled() {
		r.mirrorRows()
	}
	return r.result()
}

// open reads a list up to its heads.
func open(name string, data []byte, o Options) (*reader, error) {
	text, err := spreadsheet.Decode(name, data)
	if err != nil {
		return nil, err
	}
	r := &reader{o: o, list: &List{File: name}}
	return r, r.findHeads(name, text)
}

// settled reports whether there is nothing wrong and nothing to ask so far.
func (r *reader) settled() bool { return len(r.faults) == 0 && len(r.questions) == 0 }

func (r *reader) result() (*List, []Question, error) {
	if err := r.faults.Err(); err != nil {
		return nil, r.questions, err
	}
	if len(r.questions) > 0 {
		return nil, r.questions, nil
	}
	return r.list, nil, nil
}

// readPieces reads the columns, the unit and then every row.
func (r *reader) readPieces() {
	r.readTitle()
	if r.readColumns(); !r.settled() {
		return
	}
	if r.empty() {
		r.fault(r.place(&r.rows[r.head], 0), "there is no piece below these heads", "write a row for each piece")
		return
	}
	r.style = spreadsheet.StyleOf(r.lengthCells())
	if r.readUnit(); !r.settled() {
		return
	}
	r.readOrders()
	r.readWhole()
	if !r.settled() {
		return
	}
	r.readWholeCount()
	r.list.Remarks = r.taken()
	r.readRows()
}

// empty reports whether no row is a piece.
func (r *reader) empty() bool {
	for range r.body() {
		return false
	}
	return true
}

// taken returns the remarks since it was last called.
func (r *reader) taken() []string {
	some := r.remarks
	r.remarks = nil
	return some
}

func (r *reader) fault(at plantext.Place, problem, remedy string) {
	if len(r.faults) < mostFaults {
		r.faults.Add(plantext.Fault{Place: at, Problem: problem, Remedy: remedy})
	}
}

// row is one row of the list, and what it is.
type row struct {
	spreadsheet.Row
	kind rowKind // once it is judged
	why  string
}

// place is where a cell of a row stands.
func (r *reader) place(w *row, column int) plantext.Place { return w.Row.Place(r.text, column) }
