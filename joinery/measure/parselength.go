package measure

import (
	"fmt"
	"math/big"
	"strings"

	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
)

// LengthError says why a text is not a length and what to write instead.
type LengthError struct {
	Text    string
	Problem string // "has a comma where a point belongs"
	Remedy  string // "write 0.375", may be empty
}

// Error gives the problem and the remedy in one line.
func (e *LengthError) Error() string {
	text := fmt.Sprintf("%q %s", e.Text, e.Problem)
	if e.Remedy != "" {
		text += "; " + e.Remedy
	}
	return text
}

// longestLengthText bounds the work done for one length.
const longestLengthText = 48

var (
	vulgar = map[rune]string{
		'¼': "1/4", '½': "1/2", '¾': "3/4", '⅛': "1/8", '⅜': "3/8",
		'⅝': "5/8", '⅞': "7/8", '⅓': "1/3", '⅔': "2/3", '⅕': "1/5",
		'⅖': "2/5", '⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6",
	}
	feetAndInches = pattern.New(`^(.*?)\s*(?:'|ft|feet|foot)\s*(.*)$`)
	suffix        = pattern.New(`\s*(mm|cm|in\.?|inch|inches|"|'')$`)
	decimalNumber = pattern.New(`^(?:\d+(?:\.\d*)?|\.\d+)$`)
	fraction      = pattern.New(`^(\d+)\s*/\s*(\d+)$`)
	mixed         = pattern.New(`^(\d+)(?:\s+|\s*-\s*)(\d+)\s*/\s*(\d+)$`)
	decimalComma  = pattern.New(`^\d*,\d+$`)
	typographic   = strings.NewReplacer("′", "'", "’", "'", "″", `"`, "”", `"`, "⁄", "/", "∕", "/", "\u00a0", " ", "\u2009", " ")
)

// ParseLength reads a length as makers write it: 3, 3/8, 1 3/8, 1-3/8, 1⅜,
// 0.375, each also with ", in, mm or cm, and with feet (1' 6 1/2"). A bare
// number is in the given unit. The error is a [*LengthError].
func ParseLength(text string, unit Unit) (Length, error) {
	if plantext.Brief(text, longestLengthText) != text {
		return 0, &LengthError{plantext.Brief(text, 12), "is not a length", "write one length, such as 1 3/8"}
	}
	text = strings.Join(strings.Fields(text), " ") // messages are of one line
	p := lengthParser{text: text}
	clean := strings.TrimSpace(typographic.Replace(strings.ToLower(text)))
	switch {
	case clean == "":
		return 0, p.fail("is empty", "write a length, such as 1 3/8")
	case strings.HasPrefix(clean, "-") || strings.HasPrefix(clean, "−"):
		return 0, p.fail("is negative", "take the minus away")
	}
	if m := feetAndInches.FindStringSubmatch(clean); m != nil && !strings.HasPrefix(m[2], "'") {
		return p.feet(m[1], m[2])
	}
	return p.simple(clean, unit.Of())
}

type lengthParser struct {
	text string
	unit string // behind the number at hand, as typed; a remedy repeats it
}

func (p lengthParser) fail(problem, remedy string) error {
	return &LengthError{p.text, problem, remedy}
}

// feet joins whole or broken feet with the inches behind them.
func (p lengthParser) feet(feet, inches string) (Length, error) {
	long, err := p.simple(feet, Foot)
	if err != nil || inches == "" {
		return long, err
	}
	if suffix.MatchString(inches) && strings.HasSuffix(inches, "m") {
		return 0, p.fail("mixes feet with a metric length", "write feet and inches, or millimetres alone")
	}
	short, err := p.simple(inches, Inch)
	if err != nil {
		return 0, err
	}
	return p.bounded(long + short)
}

// simple reads one number and its suffix; a bare number counts in unit.
func (p lengthParser) simple(text string, unit Length) (Length, error) {
	if m := suffix.FindStringSubmatchIndex(text); m != nil {
		switch text[m[2]:m[3]] {
		case "mm":
			unit = Millimetre
		case "cm":
			unit = Centimetre
		default:
			unit = Inch
		}
		text, p.unit = strings.TrimSpace(text[:m[0]]), text[m[0]:]
	}
	number, err := p.number(text)
	if err != nil {
		return 0, err
	}
	steps := new(big.Rat).Mul(number, new(big.Rat).SetInt64(int64(unit)))
	if !steps.IsInt() {
		return 0, p.notWhole(number, unit)
	}
	if !steps.Num().IsInt64() {
		return 0, p.tooLong()
	}
	return p.bounded(Length(steps.Num().Int64()))
}

func (p lengthParser) bounded(l Length) (Length, error) {
	if l > MaxLength {
		return 0, p.tooLong()
	}
	return l, nil
}

func (p lengthParser) tooLong() error {
	return p.fail("is longer than 100 m", "check the number and its unit; a bare number is in the unit of the plan")
}

// number reads digits, a fraction, or both.
func (p lengthParser) number(text string) (*big.Rat, error) {
	for r, ascii := range vulgar {
		if before, ok := strings.CutSuffix(text, string(r)); ok {
			text = strings.TrimSpace(strings.TrimSpace(before) + " " + ascii)
		}
	}
	if decimalNumber.MatchString(text) {
		number, _ := new(big.Rat).SetString(text)
		return number, nil
	}
	if m := fraction.FindStringSubmatch(text); m != nil {
		return p.ratio(m[1], m[2])
	}
	if m := mixed.FindStringSubmatch(text); m != nil {
		part, err := p.ratio(m[2], m[3])
		if err != nil {
			return nil, err
		}
		if part.Cmp(big.NewRat(1, 1)) >= 0 {
			return nil, p.fail("has a fraction of one or more", "write a whole number and a fraction below 1, such as 2 1/4")
		}
		whole, _ := new(big.Rat).SetString(m[1])
		return part.Add(part, whole), nil
	}
	if decimalComma.MatchString(text) {
		return nil, p.fail("has a comma where a point belongs", "write "+strings.Replace(p.text, ",", ".", 1))
	}
	return nil, p.slip(text)
}

func (p lengthParser) ratio(num, den string) (*big.Rat, error) {
	if strings.Trim(den, "0") == "" {
		return nil, p.fail("divides by zero", "check the number under the stroke")
	}
	// In base 10: big.Rat would take 010 for octal.
	above, _ := new(big.Int).SetString(num, 10)
	below, _ := new(big.Int).SetString(den, 10)
	return new(big.Rat).SetFrac(above, below), nil
}

// notWhole names the two neighbours on a scale a maker could use.
func (p lengthParser) notWhole(number *big.Rat, unit Length) error {
	scale := Scale{Inches, Inch / 64}
	switch {
	case unit == Millimetre || unit == Centimetre:
		scale = Scale{Millimetres, Millimetre / 100}
	case strings.Contains(p.text, "."):
		scale = Scale{Inches, Inch / 1000}
	}
	steps := new(big.Rat).Mul(number, new(big.Rat).SetInt64(int64(unit)))
	whole := new(big.Int).Quo(steps.Num(), steps.Denom())
	if !whole.IsInt64() || whole.Int64() >= int64(MaxLength) {
		return p.tooLong()
	}
	below := scale.Floor(Length(whole.Int64()))
	suffix := " " + scale.Unit.String()
	return p.fail("falls between the marks of any rule",
		"write "+scale.Format(below)+suffix+" or "+scale.Format(below+scale.Division)+suffix)
}
