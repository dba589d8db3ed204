package measure

import (
	"math"
	"strconv"
	"strings"
)

// Length is a distance in wood or on the machine, exact, in steps of
// 1/6,400,000 mm. That step makes 1/1024 in, 0.0001 in and 0.0001 mm whole
// numbers, and the half of each too, which the centre of a bit needs. Lengths
// on paper are another type and live in the package output.
type Length int64

// Units of length. One inch is 25.4 mm exactly (NIST SP 811, appendix B).
const (
	Millimetre Length = 6_400_000
	Centimetre        = 10 * Millimetre
	Inch       Length = 162_560_000
	Foot              = 12 * Inch
)

// MaxLength is the longest length a plan may hold, 100 m. It keeps every sum
// and product of lengths far from overflow.
const MaxLength = 100_000 * Millimetre

// Unit is the unit of a bare number in a plan or shop file.
type Unit uint8

// The two units a plan may be written in.
const (
	Inches Unit = iota
	Millimetres
)

// String gives the word a plan uses: "in" or "mm".
func (u Unit) String() string {
	if u == Millimetres {
		return "mm"
	}
	return "in"
}

// Of returns one whole unit as a length.
func (u Unit) Of() Length {
	if u == Millimetres {
		return Millimetre
	}
	return Inch
}

// MM gives the length in millimetres as an exact decimal, "9.525" for 3/8 in.
func (l Length) MM() string { return decimal(int64(l), int64(Millimetre)) }

// Millimetres gives the length as a float, for paper and physics only.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// Inches gives the length as a float, for paper and physics only.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// FromMillimetres rounds a computed (never a typed) value to the nearest step.
func FromMillimetres(mm float64) Length {
	return Length(math.Round(mm * float64(Millimetre)))
}

// Abs returns the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// String gives the length in millimetres with its unit, for tests and
// messages to programmers; makers read a [Scale].
func (l Length) String() string { return l.MM() + " mm" }

// decimal writes n/per, whose quotient must end: per has no prime factors but
// 2 and 5 beyond those of n.
func decimal(n, per int64) string {
	var b strings.Builder
	if n < 0 {
		b.WriteByte('-')
		n = -n
	}
	b.WriteString(strconv.FormatInt(n/per, 10))
	rest := n % per
	if rest != 0 {
		b.WriteByte('.')
	}
	for digits := 0; rest != 0 && digits < 18; digits++ {
		rest *= 10
		b.WriteByte(byte('0' + rest/per))
		rest %= per
	}
	return b.String()
}
