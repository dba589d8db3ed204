package paper

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

// TestPrintable makes names fit to print without losing what tells them apart.
func TestPrintable(t *testing.T) {
	for in, want := range map[string]string{
		"Längsholm, Łódź, Ω, ő": "Längsholm, Łódź, Ω, ő",
		"A\u0308":               "Ä", // put together
		"ṣ":                     "s",
		"世界":                    "[U+4E16][U+754C]",
		"\U0001FA9A saw":        "[U+1FA9A] saw",
		"a\tb\nc":               "a b c",
		"bad \xff utf":          "bad [U+FFFD] utf",
		"bell\a":                "bell[U+0007]",
		"":                      "",
	} {
		assert.Equal(t, want, Printable(in), "%q", in)
		assert.Equal(t, want, Printable(Printable(in)), "%q twice", in)
	}
}

// FuzzPrintable holds that whatever comes out can be printed.
func FuzzPrintable(f *testing.F) {
	f.Add("Längs\x00\xff世\U0010FFFF")
	f.Fuzz(func(t *testing.T, in string) {
		for _, r := range Printable(in) {
			if _, ok := faces()[Regular].of(r); !ok {
				t.Fatalf("%q gives %U", in, r)
			}
		}
	})
}

// TestWidthsAreTheFonts holds our sums of widths against the font's own
// figures for letters whose widths the Go fonts' design fixes.
func TestWidthsAreTheFonts(t *testing.T) {
	font, err := sfnt.Parse(goregular.TTF)
	assert.NoError(t, err)
	assert.EqualValues(t, 2048, font.UnitsPerEm())
	// The font's own advances are H 1479, x 1024 and 1 1139.
	l := Letters{Height: Capital} // an em of 1
	assert.InDelta(t, (1479+1024+1139)/2048.0, float64(l.Width("Hx1")), 1e-9)
}

// TestGateRefusesWhatIsNoNumber keeps places that are not numbers off the page.
func TestGateRefusesWhatIsNoNumber(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		r := &Recorder{}
		g := &Gate{To: r}
		g.Text(Point{Paper(bad), 0}, Letters{Height: 3}, "text")
		g.Stroke(Thin, Point{0, 0}, Point{0, Paper(bad)})
		g.Circle(Point{}, Paper(bad), Black, NoPen)
		assert.Empty(t, r.String())
		assert.Error(t, g.Err)
	}
}
