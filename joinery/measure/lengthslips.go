package measure

import (
	"strings"

	"fencecard/joinery/pattern"
)

// lengthSlips are the ways a length goes wrong at the keyboard. In a remedy $1
// and $2 are parts of what was typed, and {unit} is the unit behind it: left
// out, 3\8 mm would be mended to 3/8 in of an inch plan.
var lengthSlips = []struct {
	text            pattern.Pattern
	problem, remedy string
}{
	{pattern.New(`^(\d[\d\s]*)\\\s*(\d+)$`), "has a backslash where a stroke belongs", "write $1/$2{unit}"},
	{pattern.New(`^(\d+)\s*÷\s*(\d+)$`), "has a division sign where a stroke belongs", "write $1/$2{unit}"},
	{pattern.New(`^[\d.,/\s]*[ol][\d.,/\sol]*$`), "has a letter where a digit belongs", "write 0 for the letter o, 1 for the letter l"},
	{pattern.New(`^(.*\S)\s+(?:to|-|–)\s+\S.*$`), "gives two lengths where one belongs", "write one of them, such as $1{unit}"},
	{pattern.New(`\d\s*[x×*]\s*\d`), "gives more than one length", "write each after a key of its own"},
	{pattern.New(`^\d*\.\d+\s*/|/\s*\d*\.\d`), "has both a point and a stroke", "write a fraction, such as 3/16, or a decimal, such as 0.1875"},
	{pattern.New(`^\d+\s*/\s*\d+\s+\d+$`), "has its fraction first", "write the whole number first, such as 1 3/8"},
	{pattern.New(`^(\d+)\s*/$`), "has nothing under the stroke", "write the whole fraction, such as $1/8{unit}"},
	{pattern.New(`\d\s*(?:mm|cm|in\.?|inch|inches|")$`), "has two units", "write one unit behind it, such as 22 mm"},
	{pattern.New(`^([\d.]+)\s*(?:m|metres?|meters?)$`), "is in metres", "write it in mm or cm, such as 500 mm"},
	{pattern.New(`^([\d./\s]*\d)\s*([a-zµ]+)$`), "ends in a unit that is not known: $2", "write $1 in, $1 mm or $1 cm"},
	{pattern.New(`^[\d,]*,\d{3}[\d,.]*$`), "has a comma in it", "write the number without commas"},
}

// slip says what is wrong with a text that is no number.
func (p lengthParser) slip(text string) error {
	for _, s := range lengthSlips {
		if m := s.text.FindStringSubmatchIndex(text); m != nil {
			expand := func(template string) string { return s.text.Expand(template, text, m) }
			return p.fail(expand(s.problem), strings.ReplaceAll(expand(s.remedy), "{unit}", p.unit))
		}
	}
	return p.fail("is not a length", "write a length as 3, 3/8, 1 3/8 or 0.375, with in or mm if it is not the plan's unit")
}
