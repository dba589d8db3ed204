package spreadsheet

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
)

// months are how spreadsheets shorten a month, in both languages, by its number.
var months = map[string]int{
	"jan": 1, "feb": 2, "mar": 3, "mär": 3, "mrz": 3, "apr": 4, "may": 5, "mai": 5, "jun": 6, "jul": 7,
	"aug": 8, "sep": 9, "oct": 10, "okt": 10, "nov": 11, "dec": 12, "dez": 12,
}

const (
	monthWord = `(jan|feb|m[aä]r|mrz|apr|ma[yi]|jun|jul|aug|sep|o[ck]t|nov|de[cz])\p{L}*\.?`
	clock     = `(?: \d{1,2}:\d\d(?::\d\d)?)?$`
)

var (
	dayMonth  = pattern.New(`^(\d{1,2})\.?[- /]*` + monthWord + `(?:[- /]*(\d{4}|\d\d))?` + clock)
	monthYear = pattern.New(`^` + monthWord + `[- /]*(\d{4}|\d{1,2})` + clock)
	yearFirst = pattern.New(`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})` + clock)
	yearLast  = pattern.New(`^(?:(\d{1,2})/(\d{1,2})/|(\d{1,2})\.(\d{1,2})\.|(\d{1,2})-(\d{1,2})-)(\d{4}|\d\d)?` + clock)
	dayNumber = pattern.New(`^[1-5]\d{4}$`)
	errorCell = pattern.New(`^#+$|^#[A-ZÄÖÜ/0]+[!?]?$|^Err:\d+$`)
)

// Day numbers of spreadsheets count from 30 December 1899; those from 1930 to
// 2049 are no lengths of wood, whatever the unit.
var dayZero = time.Date(1899, time.December, 30, 0, 0, 0, 0, time.UTC)

const firstDay, lastDay = 10_959, 54_788

// Date is a day that a spreadsheet has made of a length, or the first of a month
// that it has made of one.
type Date struct{ day, month, year int }

// DateIn reports whether a cell is such a date.
func DateIn(text string) (d Date, is bool) {
	if len(text) < 4 {
		return Date{}, false // 3.4. is the shortest
	}
	text = strings.ToLower(text)
	if m := dayMonth.FindStringSubmatch(text); m != nil {
		return Date{number(m[1]), months[m[2]], number(m[3])}, true
	}
	if m := monthYear.FindStringSubmatch(text); m != nil {
		return Date{1, months[m[1]], number(m[2])}, true
	}
	if m := yearFirst.FindStringSubmatch(text); m != nil {
		return Date{number(m[3]), number(m[2]), number(m[1])}, true
	}
	if m := yearLast.FindStringSubmatch(text); m != nil && (m[7] != "" || m[3] != "") {
		return Date{number(m[1] + m[3] + m[5]), number(m[2] + m[4] + m[6]), number(m[7])}, true
	}
	if n := number(text); dayNumber.MatchString(text) && n >= firstDay && n <= lastDay {
		day := dayZero.AddDate(0, 0, n)
		return Date{day.Day(), int(day.Month()), day.Year()}, true
	}
	return Date{}, false
}

// Typed gives the length that became the date, as it was typed: a fraction of an
// inch, or millimetres with a point, which countries that write a comma take for
// a day and a month. It is "" where there is none it can have been.
func (d Date) Typed(unit measure.Unit) string {
	if unit == measure.Inches {
		return d.Fraction()
	}
	if d.month > 9 {
		return ""
	}
	return fmt.Sprintf("%d.%d", d.day, d.month)
}

// Fraction puts day and month, or month and year where the day is the first,
// together as a fraction that stands on a rule.
func (d Date) Fraction() string {
	if f := ruleFraction(d.day, d.month); f != "" {
		return f
	}
	if d.day == 1 {
		return ruleFraction(d.month, d.year%100)
	}
	return ""
}

// number reads digits; none are 0.
func number(digits string) int {
	n, _ := strconv.Atoi(digits)
	return n
}

// ruleFraction puts two numbers into the order that makes a fraction on a rule,
// or else the name of a rough thickness, such as 5/4.
func ruleFraction(a, b int) string {
	for _, fits := range []func(n, d int) bool{
		func(n, d int) bool { return halves(d) && n < d && n%2 == 1 },
		func(n, d int) bool { return d == 4 && n >= d },
		func(n, d int) bool { return halves(d) && n > 0 && n < d },
	} {
		if fits(a, b) {
			return fmt.Sprintf("%d/%d", a, b)
		}
		if fits(b, a) {
			return fmt.Sprintf("%d/%d", b, a)
		}
	}
	return ""
}

// halves reports whether n parts of an inch stand on a rule.
func halves(n int) bool { return n >= 2 && n <= 64 && n&(n-1) == 0 }

// IsError reports whether a spreadsheet shows a cell as one that it could not work
// out.
func IsError(cell string) bool { return errorCell.MatchString(cell) }
