package timber

import (
	"fmt"
	"strconv"
	"strings"

	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
)

// Temperature is an air temperature in the degrees it was written in. The
// zero value is 0 Celsius.
type Temperature struct {
	Degrees    float64
	Fahrenheit bool
}

// Celsius gives the temperature in degrees Celsius.
func (t Temperature) Celsius() float64 {
	if t.Fahrenheit {
		return (t.Degrees - 32) / 1.8
	}
	return t.Degrees
}

// String gives "70 F" or "21 C".
func (t Temperature) String() string {
	unit := " C"
	if t.Fahrenheit {
		unit = " F"
	}
	return strconv.FormatFloat(t.Degrees, 'f', -1, 64) + unit
}

var temperatureText = pattern.New(`(?i)^([-−+]?\d{1,4}(?:\.\d{1,6})?)\s*(?:°|degrees?)?\s*(f|c|fahrenheit|celsius)?$`)

// ParseTemperature reads a temperature as people write it: 70F, 70 F, 21 °C.
// The error is a [plantext.Fault] without a place.
func ParseTemperature(text string) (Temperature, error) {
	m := temperatureText.FindStringSubmatch(strings.TrimSpace(text))
	switch {
	case m == nil:
		return Temperature{}, plantext.Fault{
			Problem: fmt.Sprintf("%q is not a temperature", plantext.Brief(text, 24)),
			Remedy:  "write 70F or 21C",
		}
	case m[2] == "":
		return Temperature{}, plantext.Fault{
			Problem: fmt.Sprintf("%q does not say Fahrenheit or Celsius", plantext.Brief(text, 24)),
			Remedy:  fmt.Sprintf("write %sF or %sC", m[1], m[1]),
		}
	}
	degrees, _ := strconv.ParseFloat(strings.Replace(m[1], "−", "-", 1), 64) // digits, by the pattern
	return Temperature{Degrees: degrees, Fahrenheit: strings.ToLower(m[2][:1]) == "f"}, nil
}
