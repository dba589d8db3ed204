package piecelist

import (
	"errors"
	"fmt"
	"math/big"
	"strings"
	"unicode/utf8"

	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

var (
	roughThickness = pattern.New(`^([4-9]|1[0-6])\s*/\s*4(?:\D.*)?$`)
	roughSection   = pattern.New(`^(?:[1246]|5/4)\s*[xX×]\s*(?:[23468]|1[02])(?:\s*[xX×].*)?$`)
	marksAtEnd     = pattern.New(`["”″]{2,}$`)
	dashFeet       = pattern.New(`(\d\s*['’′])\s*-\s*(\d)`)
)

// measured is one length as the list has it, and where.
type measured struct {
	row   *row
	at    *column // nil where no column says it
	field Field
	name  string // the piece's
	text  string
}

// suffix is the unit that the column's head gives its bare numbers, or "".
func (m measured) suffix() string {
	if m.at == nil {
		return ""
	}
	return m.at.unit
}

// key tells the question about a length from all others.
func (m measured) key() string { return fmt.Sprintf("%s %d", m.field, m.row.Number) }

// what is the length in messages, with its cell.
func (m measured) what() string {
	cell := ""
	if m.at != nil {
		cell = fmt.Sprintf("%s%d: ", spreadsheet.Letters(m.at.index), m.row.Number)
	}
	return fmt.Sprintf("%sthe %s of %s", cell, m.field, quoted(m.name))
}

// marks brings the marks for feet and inches together that package measure does
// not read, as they come from word processors and other keyboards.
var marks = strings.NewReplacer("´´", `"`, "``", `"`, "′′", `"`, "’’", `"`, "“", `"`, "„", `"`, "´", "'", "`", "'", "‘", "'")

// read reads a length; where it is missing, spoiled or in doubt, it is asked.
func (r *reader) read(m measured) Measure {
	text := dashFeet.ReplaceAllString(marksAtEnd.ReplaceAllString(marks.Replace(m.text), `"`), "$1 $2")
	q := Question{Key: m.key(), Place: r.at(m), About: m.field.String(), Asks: m.what() + ":", Remedy: "write the finished " + m.field.String() + " in this cell"}
	d, isDate := spreadsheet.DateIn(text)
	unit := r.unitIn(m.at)
	switch {
	case text == "":
		q.Problem, q.Asks = m.what()+" is missing", m.what()+" is missing, what is it?"
	case spreadsheet.IsError(text):
		q.Problem, q.Asks = m.what()+" is "+quoted(text)+", an error of the spreadsheet", m.what()+" is an error of the spreadsheet, what is it?"
	case rough(text, unit):
		r.askFinished(&q, m, quoted(text))
	case isDate && rough(d.Typed(unit), unit):
		r.askFinished(&q, m, d.Typed(unit)+", which a spreadsheet made "+quoted(text)+",")
	case isDate:
		q.Problem = fmt.Sprintf("%s is %s, a date that a spreadsheet made of it", m.what(), quoted(text))
		q.Asks = fmt.Sprintf("%s was made %s by a spreadsheet: what was it?", m.what(), quoted(text))
		q.Remedy = "give the column the format Text and write the length again"
		if q.Default = d.Typed(unit); q.Default != "" {
			q.Why = quoted(text) + " is what becomes of " + q.Default
			q.Remedy += ", such as " + q.Default
		}
	default:
		clean, doubt := r.style.Plain(text, unit)
		if found, ok := r.parsed(clean, m, &q); ok && doubt == nil {
			return found
		}
		if doubt != nil {
			r.doubtful(&q, m, text, doubt)
		}
	}
	found, _ := ask(r, q, r.lengthAnswer(m))
	return found
}

// lengthAnswer reads the answer to a question about a length; a bare number is in
// the unit of its column.
func (r *reader) lengthAnswer(m measured) func(answer string) (Measure, string) {
	return func(answer string) (Measure, string) {
		if rough(answer, r.unitIn(m.at)) {
			return Measure{}, quoted(answer) + " is the name of rough stock; write what it measures ready for its joints"
		}
		l, err := r.length(marks.Replace(answer), m.suffix())
		if err != nil {
			return Measure{}, err.Error()
		}
		return l, ""
	}
}

// unitIn is the unit of a column's bare numbers.
func (r *reader) unitIn(c *column) measure.Unit {
	switch {
	case c == nil || c.unit == "":
		return r.list.Unit
	case metricSuffix(c.unit):
		return measure.Millimetres
	}
	return measure.Inches
}

// rough reports whether a text is the name of rough stock and no size.
func rough(text string, unit measure.Unit) bool {
	return roughThickness.MatchString(text) || unit == measure.Inches && roughSection.MatchString(text)
}

// askFinished asks for what rough stock measures when it is ready for joints.
// Lengths that share a cell share the fault.
func (r *reader) askFinished(q *Question, m measured, name string) {
	where := m.row.Number
	q.Problem = fmt.Sprintf("%s%d: %s of %s is the name of rough stock, and no size", spreadsheet.Letters(m.at.index), where, name, quoted(m.name))
	q.Asks = fmt.Sprintf("%s; what is its finished %s?", q.Problem, m.field)
	q.Remedy = "write what it measures ready for its joints, each length in a cell of its own"
}

// doubtful asks about a number with a mark that may part thousands.
func (r *reader) doubtful(q *Question, m measured, text string, doubt []string) {
	q.Problem = fmt.Sprintf("%s is %s: is that %s?", m.what(), quoted(text), strings.Join(doubt, " or "))
	q.Asks = q.Problem
	q.Remedy = "write " + strings.Join(doubt, " or ")
	if len(doubt) > 1 {
		q.Default, q.Why = doubt[0], "the other would be no length of a piece in this unit"
	}
}

// parsed reads a clean length. Where it is none, or a fraction that a
// spreadsheet has rounded, the question says so.
func (r *reader) parsed(clean string, m measured, q *Question) (Measure, bool) {
	found, err := r.length(clean, m.suffix())
	var bad *measure.LengthError
	if errors.As(err, &bad) {
		q.Problem = fmt.Sprintf("%s: %s %s", m.what(), quoted(bad.Text), bad.Problem)
		q.Asks = q.Problem + "; what is it?"
		if q.Remedy = bad.Remedy; q.Remedy == "" {
			q.Remedy = "write a length above 0"
		}
		return Measure{}, false
	}
	if near := rounded(clean, found.Length, r.unitIn(m.at)); near != "" {
		q.Problem = fmt.Sprintf("%s is %s: is that %s, rounded by a spreadsheet?", m.what(), quoted(clean), near)
		q.Asks, q.Default, q.Why = q.Problem, near, clean+" is "+near+" with so many places"
		q.Remedy = fmt.Sprintf("write %s, or %s\" if it is meant so", near, clean)
		return Measure{}, false
	}
	if has, _ := hasUnit(clean); !has && unlikely(found.Length, r.unitIn(m.at)) {
		q.Problem = fmt.Sprintf("%s is %s: that would be %s", m.what(), quoted(m.text), found.Text+unitBehind(found.Text, r.list.Unit))
		q.Asks = q.Problem + "; what is it?"
		q.Remedy = "write its true length, with its unit behind it if it is meant so"
		return Measure{}, false
	}
	return found, true
}

// unlikely reports whether no piece is that long or that thin: a mark for
// decimals was lost, or the unit is not that of the others.
func unlikely(l measure.Length, unit measure.Unit) bool {
	return l > longestInches*measure.Inch || unit == measure.Millimetres && l < measure.Millimetre
}

// unitBehind is the unit that a plan leaves out behind a length of its own unit.
func unitBehind(text string, unit measure.Unit) string {
	if has, _ := hasUnit(text); has {
		return ""
	}
	return " " + unit.String()
}

// length reads a length in the unit of its column and says how the plan writes
// it.
func (r *reader) length(text, unit string) (Measure, error) {
	if has, _ := hasUnit(text); !has && unit != "" {
		text += " " + unit
	}
	l, err := measure.ParseLength(text, r.list.Unit)
	if err != nil {
		return Measure{}, err
	}
	if l == 0 {
		return Measure{}, &measure.LengthError{Text: text, Problem: "is no length of a piece", Remedy: "write a length above 0"}
	}
	own := measure.UnitOf(text, r.list.Unit)
	spelt := measure.DefaultScale(own).Spell(l)
	return Measure{l, strings.TrimSuffix(spelt, " "+r.list.Unit.String())}, nil
}

// rounded finds the fraction that a spreadsheet shows as this decimal: 5/8 is
// 0.63 with two places, 3/16 is 0.188 with three. It is "" where the decimal
// stands on a rule itself, or there is none.
func rounded(text string, l measure.Length, unit measure.Unit) string {
	if has, _ := hasUnit(text); has || unit != measure.Inches || measure.InchScale.On(l) {
		return ""
	}
	_, places, ok := strings.Cut(text, ".")
	if !ok || len(places) < 2 || len(places) > 4 {
		return ""
	}
	scale := measure.InchScale
	if len(places) == 2 {
		scale.Division = measure.Inch / 16 // finer fractions are too close together to tell
	}
	near := scale.Round(l)
	// Half a step of the last place, exact: a spreadsheet rounds 5/16 to 0.31.
	step := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(len(places))), nil)
	off := new(big.Int).Mul(big.NewInt(2*int64((near-l).Abs())), step)
	if near == 0 || off.Cmp(big.NewInt(int64(measure.Inch))) > 0 {
		return ""
	}
	return scale.Format(near)
}

// at is where the length stands, or should.
func (r *reader) at(m measured) plantext.Place {
	if m.at == nil {
		return r.place(m.row, -1)
	}
	p := r.place(m.row, m.at.index)
	source := []rune(p.Source)
	cell := string(source[min(p.Column-1, len(source)):])
	if before, _, ok := strings.Cut(cell, m.text); ok && len(before) < 40 {
		p.Column += utf8.RuneCountInString(before)
	}
	return p
}
