package measure

import (
	"math/bits"
	"strconv"
	"strings"

	"fencecard/joinery/plantext"
)

// Scale is the rule a shop reads: its unit and the smallest division that is
// set by eye. Heights and fence distances are rounded to it; printed lengths
// are read off it.
type Scale struct {
	Unit     Unit
	Division Length // greater than 0
}

// The scales used where a shop names none.
var (
	InchScale   = Scale{Inches, Inch / 64}
	MetricScale = Scale{Millimetres, Millimetre / 10}
)

// DefaultScale is the scale of a shop that names none, for a unit.
func DefaultScale(u Unit) Scale {
	if u == Millimetres {
		return MetricScale
	}
	return InchScale
}

// Floor returns the greatest division not above l.
func (s Scale) Floor(l Length) Length {
	q := l / s.Division
	if l%s.Division < 0 {
		q--
	}
	return q * s.Division
}

// Ceil returns the least division not below l.
func (s Scale) Ceil(l Length) Length { return -s.Floor(-l) }

// Round returns the nearest division; halves go away from zero.
func (s Scale) Round(l Length) Length {
	if l < 0 {
		return -s.Round(-l)
	}
	return s.Floor(l + s.Division/2)
}

// On reports whether l falls on a division.
func (s Scale) On(l Length) bool { return l%s.Division == 0 }

// Reading is a length as read off a rule: the nearest division and whether the
// true length is a hair over or under it.
type Reading struct {
	Negative  bool
	Whole     int64
	Num, Den  int64  // the fraction beside Whole, in lowest terms; 0, 1 when none
	Decimal   string // the digits after the point on a decimal scale, "" when none
	Remainder int    // +1: the true length is more than the reading, -1: less, 0: exact
	Exact     string // the true length as a decimal in the scale's unit or, on a coarser rule, in 64ths; without unit
}

// Read returns l as read off the scale.
func (s Scale) Read(l Length) Reading {
	near := s.Round(l)
	r := Reading{Negative: near < 0, Den: 1, Exact: s.exact(l)}
	switch {
	case l > near:
		r.Remainder = 1
	case l < near:
		r.Remainder = -1
	}
	size, unit := near.Abs(), s.Unit.Of()
	r.Whole = int64(size / unit)
	rest := int64(size % unit)
	if !s.fractional() {
		r.Decimal = strings.TrimPrefix(decimal(rest, int64(unit)), "0")
		r.Decimal = strings.TrimPrefix(r.Decimal, ".")
		return r
	}
	if rest != 0 {
		parts := int64(unit / s.Division)
		n := rest / int64(s.Division)
		twos := min(bits.TrailingZeros64(uint64(n)), bits.TrailingZeros64(uint64(parts)))
		r.Num, r.Den = n>>twos, parts>>twos
	}
	return r
}

// Format returns l as printed text: "1 5/8", "-1/4", "52.5", and "47/64+"
// where the true length is a hair more than the nearest division.
func (s Scale) Format(l Length) string { return s.Read(l).String() }

// String joins the reading as one line of text.
func (r Reading) String() string {
	var b strings.Builder
	if r.Negative {
		b.WriteByte('-')
	}
	if r.Whole != 0 || r.Num == 0 {
		b.WriteString(strconv.FormatInt(r.Whole, 10))
		if r.Num != 0 {
			b.WriteByte(' ')
		}
	}
	if r.Num != 0 {
		b.WriteString(strconv.FormatInt(r.Num, 10) + "/" + strconv.FormatInt(r.Den, 10))
	}
	if r.Decimal != "" {
		b.WriteString("." + r.Decimal)
	}
	switch r.Remainder {
	case 1:
		b.WriteByte('+')
	case -1:
		b.WriteByte('-')
	}
	return b.String()
}

// fractional reports whether the scale is read in fractions of an inch: halves,
// quarters, eighths and so on.
func (s Scale) fractional() bool {
	if s.Unit != Inches || Inch%s.Division != 0 {
		return false
	}
	parts := Inch / s.Division
	return parts&(parts-1) == 0
}

// sixtyFourths are the divisions in which a maker thinks who reads a coarser rule.
var sixtyFourths = Scale{Inches, Inch / 64}

// exact writes l in the scale's unit, 64ths of an inch as such on a coarser rule. An inch of 162,560,000 steps has the
// prime factor 127, so a metric length in inches is rounded to seven places.
func (s Scale) exact(l Length) string {
	if s.Unit == Millimetres {
		return l.MM()
	}
	if s.fractional() && s.Division > sixtyFourths.Division && sixtyFourths.On(l) {
		return sixtyFourths.Format(l)
	}
	const places = 10_000_000
	n, sign := int64(l.Abs()), ""
	if l < 0 {
		sign = "-"
	}
	whole, rest := n/int64(Inch), n%int64(Inch)
	tenths := (rest*places + int64(Inch)/2) / int64(Inch)
	return sign + decimal(whole*places+tenths, places)
}

// mostDivision is the coarsest division a shop may set by eye.
const mostDivision = Centimetre

// ParseScale reads the smallest division a shop sets by eye, such as 1/64 or
// 0.1 mm. A suffix gives the scale its unit; a bare number is in the unit
// given. The error is a [*LengthError].
func ParseScale(text string, unit Unit) (Scale, error) {
	division, err := ParseLength(text, unit)
	if err != nil || division == 0 || division > mostDivision {
		return Scale{}, &LengthError{plantext.Brief(text, 24), "is no division of a rule", "write the smallest division you set by eye, such as 1/64 or 0.1 mm"}
	}
	return Scale{UnitOf(text, unit), division}, nil
}

// UnitOf returns the unit that stands behind a length, or the one given for a
// bare number.
func UnitOf(text string, bare Unit) Unit {
	clean := strings.TrimSpace(typographic.Replace(strings.ToLower(text)))
	m := suffix.FindStringSubmatch(clean)
	switch {
	case m != nil && strings.HasSuffix(m[1], "m"):
		return Millimetres
	case m != nil || feetAndInches.MatchString(clean):
		return Inches
	}
	return bare
}
