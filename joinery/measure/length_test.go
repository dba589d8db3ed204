package measure

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 1 in = 25.4 mm exactly: NIST Special Publication 811 (2008), appendix B.8,
// and with it 1 ft = 304.8 mm exactly.
func TestInchIsExact(t *testing.T) {
	assert.Equal(t, 254*Millimetre, 10*Inch)
	assert.Equal(t, "25.4", Inch.MM())
	assert.Equal(t, "304.8", Foot.MM())
	assert.Equal(t, "9.525", (3 * Inch / 8).MM())
	assert.Equal(t, "0.396875", (Inch / 64).MM())
}

// What a shop can measure is a whole number of steps, and so is its half,
// which the centre of a bit needs.
func TestStepsAreFineEnough(t *testing.T) {
	for _, finest := range []int64{128, 512, 10_000} {
		assert.Zero(t, int64(Inch)%(2*finest), "1/%d in", finest)
	}
	assert.Zero(t, int64(Inch)%1024)
	assert.Zero(t, int64(Millimetre)%(2*10_000))
}

func TestParseLength(t *testing.T) {
	const in, mm = Inches, Millimetres
	for _, c := range []struct {
		text string
		unit Unit
		want string // in millimetres
	}{
		{"3", in, "76.2"},
		{"3", mm, "3"},
		{"3/8", in, "9.525"},
		{"3/8", mm, "0.375"},
		{"1 3/8", in, "34.925"},
		{"1-3/8", in, "34.925"},
		{"1 - 3/8", in, "34.925"},
		{"1⅜", in, "34.925"},
		{"1 ⅜", in, "34.925"},
		{"⅜", in, "9.525"},
		{"1 3⁄8", in, "34.925"}, // the fraction stroke U+2044
		{"0.375", in, "9.525"},
		{".375", in, "9.525"},
		{"3.", in, "76.2"},
		{"0.496", in, "12.5984"},
		{"3 / 8", in, "9.525"},
		{`3/8"`, mm, "9.525"},
		{`3/8 "`, mm, "9.525"},
		{"3/8”", mm, "9.525"},
		{"3/8″", mm, "9.525"},
		{"3/8''", mm, "9.525"},
		{"3/8 in", mm, "9.525"},
		{"3/8in.", mm, "9.525"},
		{"1 3/8 inches", mm, "34.925"},
		{"1 inch", mm, "25.4"},
		{"9.5 mm", in, "9.5"},
		{"9.5MM", in, "9.5"},
		{"1.2 cm", in, "12"},
		{"1/2 cm", in, "5"},
		{`1' 6 1/2"`, in, "469.9"},
		{`1' 6 1/2"`, mm, "469.9"},
		{"1' 6 1/2", mm, "469.9"},
		{"1'6", mm, "457.2"},
		{"1 ft 6 in", mm, "457.2"},
		{"2 feet", mm, "609.6"},
		{"1 foot", mm, "304.8"},
		{"1 1/2'", mm, "457.2"},
		{"1′ 6″", mm, "457.2"},
		{"1’ 6”", mm, "457.2"},
		{"  3/8  ", in, "9.525"},
		{"1\u00a03/8", in, "34.925"}, // a space that does not break
		{"0", in, "0"},
		{"1/64", in, "0.396875"},
		{"1/1024", in, "0.0248046875"},
		{"0.0001", in, "0.00254"},
		{"16/8", in, "50.8"},
		{"100000", mm, "100000"},
	} {
		l, err := ParseLength(c.text, c.unit)
		require.NoError(t, err, "%q %s", c.text, c.unit)
		assert.Equal(t, c.want, l.MM(), "%q %s", c.text, c.unit)
	}
}

func TestParseLengthSaysWhatToType(t *testing.T) {
	for text, want := range map[string]string{
		"":            `"" is empty; write a length, such as 1 3/8`,
		"-1":          `"-1" is negative; take the minus away`,
		"0,375":       `"0,375" has a comma where a point belongs; write 0.375`,
		"1,000.5":     `"1,000.5" has a comma in it; write the number without commas`,
		"1/0":         `"1/0" divides by zero; check the number under the stroke`,
		"1 8/8":       `"1 8/8" has a fraction of one or more; write a whole number and a fraction below 1, such as 2 1/4`,
		"5/8 3":       `"5/8 3" has its fraction first; write the whole number first, such as 1 3/8`,
		"3/":          `"3/" has nothing under the stroke; write the whole fraction, such as 3/8`,
		"1.5/8":       `"1.5/8" has both a point and a stroke; write a fraction, such as 3/16, or a decimal, such as 0.1875`,
		`3\8`:         `"3\\8" has a backslash where a stroke belongs; write 3/8`,
		"l/8":         `"l/8" has a letter where a digit belongs; write 0 for the letter o, 1 for the letter l`,
		"1/2 to 3":    `"1/2 to 3" gives two lengths where one belongs; write one of them, such as 1/2`,
		"3 x 4":       `"3 x 4" gives more than one length; write each after a key of its own`,
		"22 mm in":    `"22 mm in" has two units; write one unit behind it, such as 22 mm`,
		"0.5 m":       `"0.5 m" is in metres; write it in mm or cm, such as 500 mm`,
		"3 yards":     `"3 yards" ends in a unit that is not known: yards; write 3 in, 3 mm or 3 cm`,
		"1' 200 mm":   `"1' 200 mm" mixes feet with a metric length; write feet and inches, or millimetres alone`,
		"100001 mm":   `"100001 mm" is longer than 100 m; check the number and its unit; a bare number is in the unit of the plan`,
		"1/3":         `"1/3" falls between the marks of any rule; write 21/64 in or 11/32 in`,
		"0.33333":     `"0.33333" falls between the marks of any rule; write 0.333 in or 0.334 in`,
		"1/3 mm":      `"1/3 mm" falls between the marks of any rule; write 0.33 mm or 0.34 mm`,
		"1,5 mm":      `"1,5 mm" has a comma where a point belongs; write 1.5 mm`,
		"1' 2,5\"":    `"1' 2,5\"" has a comma where a point belongs; write 1' 2.5"`,
		`3\8 cm`:      `"3\\8 cm" has a backslash where a stroke belongs; write 3/8 cm`,
		"1 to 20 mm":  `"1 to 20 mm" gives two lengths where one belongs; write one of them, such as 1 mm`,
		"5/ mm":       `"5/ mm" has nothing under the stroke; write the whole fraction, such as 5/8 mm`,
		"three":       `"three" is not a length; write a length as 3, 3/8, 1 3/8 or 0.375, with in or mm if it is not the plan's unit`,
		"1e3":         `"1e3" is not a length; write a length as 3, 3/8, 1 3/8 or 0.375, with in or mm if it is not the plan's unit`,
		"0x10":        `"0x10" gives more than one length; write each after a key of its own`,
		"a long text": `"a long text" is not a length; write a length as 3, 3/8, 1 3/8 or 0.375, with in or mm if it is not the plan's unit`,
	} {
		_, err := ParseLength(text, Inches)
		assert.EqualError(t, err, want)
	}
}

// Every spelling of a length is read as the same length.
func TestEverySpellingIsTheSameLength(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 8))
	for range 5_000 {
		den := int64(1) << random.IntN(11)
		whole, num := random.Int64N(200), random.Int64N(den)
		want := Length(whole)*Inch + Length(num)*Inch/Length(den)
		fraction := fmt.Sprintf("%d/%d", num, den)
		for _, text := range []string{
			fmt.Sprintf("%d %s", whole, fraction),
			fmt.Sprintf("%d-%s in", whole, fraction),
			fmt.Sprintf(`%d %s"`, whole, fraction),
			fmt.Sprintf("%d/%d", whole*den+num, den),
			fmt.Sprintf(`%d' %d %s"`, whole/12, whole%12, fraction),
			want.MM() + " mm",
			decimal(int64(want), int64(Centimetre)) + "cm",
		} {
			got, err := ParseLength(text, Inches)
			require.NoError(t, err, text)
			require.Equal(t, want, got, text)
		}
	}
}

// Millimetres are printed exactly: as many digits as it takes, and no more.
func TestMMIsExact(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 4))
	for range 20_000 {
		l := Length(random.Int64N(int64(MaxLength)))
		back, err := ParseLength(l.MM(), Millimetres)
		require.NoError(t, err)
		require.Equal(t, l, back)
	}
	assert.Equal(t, "-0.5", (-Millimetre / 2).MM())
	assert.Equal(t, "12.7 mm", (Inch / 2).String())
}
