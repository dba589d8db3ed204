package spreadsheet

import (
	"testing"

	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What spreadsheets make of a fraction: each was seen to come of the text behind
// it, from LibreOffice 7.4 and Gnumeric 1.12 or, where marked, is recalled of
// other programs.
func TestDates(t *testing.T) {
	for _, c := range []struct{ cell, inches, millimetres string }{
		{"03/04/26", "3/4", "3.4"},
		{"2026/03/04", "3/4", "4.3"},
		{"2026/04/03", "3/4", "3.4"},
		{"07/08/26", "7/8", "7.8"},
		{"46085", "3/4", "4.3"},
		{"46150", "5/8", "8.5"},
		{"2026-03-04 00:00:00", "3/4", "4.3"},
		{"3-Apr", "3/4", "3.4"}, // memory, as are those below
		{"4-Mar", "3/4", "4.3"},
		{"03. Apr", "3/4", "3.4"},
		{"3. Mrz", "", "3.3"},
		{"16. Mrz", "3/16", "16.3"},
		{"03.04.2026", "3/4", "3.4"},
		{"03.04.", "3/4", "3.4"},
		{"12. Mai", "", "12.5"},
		{"16-May", "5/16", "16.5"},
		{"Mar-32", "3/32", "1.3"},
		{"Mrz 64", "3/64", "1.3"},
		{"1932-01-01", "1/32", "1.1"},
		{"4-Apr", "4/4", "4.4"},
		{"5-Apr", "5/4", "5.4"},
		{"4-Jun", "6/4", "4.6"},
		{"8-Apr", "8/4", "8.4"},
		{"18. Okt", "", ""},
	} {
		d, is := DateIn(c.cell)
		assert.True(t, is, c.cell)
		assert.Equal(t, c.inches, d.Typed(measure.Inches), c.cell)
		assert.Equal(t, c.millimetres, d.Typed(measure.Millimetres), c.cell)
	}
	for _, text := range []string{"", "3/4", "1-1/2", "1 1/2", "17 1/4\"", "1200", "9999", "60000", "12.5", "2'-6\"", "3 x 4", "maple", "3/4/5/6"} {
		_, is := DateIn(text)
		assert.False(t, is, text)
	}
}

// Every fraction of a rule, typed where it is taken for a day and month, comes
// back from either order of the two and from the day's number.
func TestEveryFractionComesBack(t *testing.T) {
	for d := 2; d <= 64; d *= 2 {
		for n := 1; n < d; n += 2 {
			want := ruleFraction(n, d)
			assert.Equal(t, want, ruleFraction(d, n))
			parsed, err := measure.ParseLength(want, measure.Inches)
			require.NoError(t, err)
			assert.Equal(t, measure.Inch*measure.Length(n)/measure.Length(d), parsed)
		}
	}
}

func TestPlainNumbers(t *testing.T) {
	const in, mm = measure.Inches, measure.Millimetres
	for _, c := range []struct {
		text  string
		style NumberStyle
		unit  measure.Unit
		want  string
		doubt int
	}{
		{"18,5", noStyle, mm, "18.5", 0},
		{"18,5 mm", noStyle, mm, "18.5 mm", 0},
		{",5", noStyle, in, ".5", 0},
		{"0,875", noStyle, in, "0.875", 0},
		{"1.200", commaStyle, mm, "1200", 0},
		{"1.200", pointStyle, mm, "1.2", 0},
		{"1.200", noStyle, mm, "1200", 2},
		{"1,200", noStyle, mm, "1200", 2},
		{"1,200", pointStyle, mm, "1200", 0},
		{"1,200", commaStyle, mm, "1.2", 0},
		{"1.125", noStyle, in, "1.125", 0},
		{"1,125", noStyle, in, "1.125", 2},
		{"1.050,5", noStyle, mm, "1050.5", 0},
		{"1,050.5", noStyle, mm, "1050.5", 0},
		{"1'200", noStyle, mm, "1200", 0},
		{"1'200", noStyle, in, "1'200", 1},
		{"2' 6\"", noStyle, in, "2' 6\"", 0},
		{"1 1/2", noStyle, in, "1 1/2", 0},
		{"1,5''", noStyle, in, "1.5 ''", 0},
		{"3/4", noStyle, in, "3/4", 0},
	} {
		got, doubt := c.style.Plain(c.text, c.unit)
		assert.Equal(t, c.want, got, c.text)
		assert.Len(t, doubt, c.doubt, c.text)
	}
}
