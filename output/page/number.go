package page

import (
	"strconv"

	"fencecard/joinery/measure"
	"fencecard/output/setting"
	"fencecard/output/wording"
)

// number is a length as the paper sets it: a built fraction, a sign where the true
// length is a hair more or less and that length beside it, and the second unit
// where both are wanted.
type number struct {
	Text        string // in one line, as the deck's JSON has it
	Ahead       string // of the fraction
	Over, Under string // of the fraction; "" for none
	Behind      string
	Beside      string
	Unit, Other string
}

func numberOf(s setting.Setter, l measure.Length) number {
	r := s.Scale.Read(l)
	n := number{Text: r.String(), Beside: wording.Beside(r)}
	if r.Negative {
		n.Ahead = "-"
	}
	if r.Whole != 0 || r.Num == 0 {
		n.Ahead += strconv.FormatInt(r.Whole, 10)
	}
	if r.Num != 0 {
		n.Over, n.Under = strconv.FormatInt(r.Num, 10), strconv.FormatInt(r.Den, 10)
	}
	if r.Decimal != "" {
		n.Ahead += "." + r.Decimal
	}
	n.Behind = [...]string{"-", "", "+"}[r.Remainder+1]
	if s.Other != nil {
		n.Unit = s.Scale.Unit.String()
		n.Other = s.Other.Format(l) + " " + s.Other.Unit.String()
	}
	return n
}

// Gap reports whether the fraction stands behind a whole number.
func (n number) Gap() bool { return n.Over != "" && n.Ahead != "" && n.Ahead != "-" }
