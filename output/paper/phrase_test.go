package paper

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
)

func TestPhraseFillsLines(t *testing.T) {
	l := Letters{Height: 3.5}
	half := Number{Letters: l, Reading: measure.InchScale.Read(measure.Inch / 2)}
	p := Phrase{}.Say(l, "lower the work onto").Count(half).Tie(l, ",").Say(l, "then feed")
	assert.Equal(t, "lower the work onto|1/2|, then feed", Said(p.Set(200)))

	narrow := p.Set(l.Width("lower the work"))
	assert.Equal(t, "lower the work|onto|1/2|, then|feed", Said(narrow), "a comma stays with its number")
	assert.LessOrEqual(t, float64(narrow.W), float64(l.Width("lower the work"))+0.01)

	long := Phrase{}.Say(l, strings.Repeat("w", 40)).Set(30)
	assert.Equal(t, strings.Repeat("w", 40), strings.ReplaceAll(Said(long), "|", ""), "a long word is cut, and nothing lost")
	assert.LessOrEqual(t, float64(long.W), 30.0)
	assert.Equal(t, Block{}, Phrase(nil).Set(10))
}

// TestNumberPaintsInsideItsBox holds the built numbers of the cards to the
// room they say they take, the figures' ink against the font's own bounds.
func TestNumberPaintsInsideItsBox(t *testing.T) {
	for _, text := range []string{"1/2", "16 47/64", "1.17", "0", "3"} {
		length, err := measure.ParseLength(text, measure.Inches)
		require.NoError(t, err)
		for _, sign := range []measure.Length{1, -1} {
			n := Number{Letters: Letters{Face: Bold, Height: 10}, Reading: measure.InchScale.Read(sign * length)}
			r := &Recorder{}
			n.paint(r, Point{0, 100})
			assert.Contains(t, r.String(), `said "`+n.Reading.String()+`"`)
			b := &bounds{}
			n.paint(b, Point{0, 100})
			assert.GreaterOrEqual(t, float64(b.top), 100-float64(n.Rise()), text)
			assert.LessOrEqual(t, float64(b.bottom), 100+float64(n.Drop())+0.2, text) // figures hang a hair below the line
			assert.LessOrEqual(t, float64(b.right), float64(n.width())+1e-6, text)
		}
	}
}

// bounds is a canvas that finds how far the ink goes. Figures are 1517 units
// high in the Go fonts.
type bounds struct {
	Recorder
	top, bottom, right Paper
}

func (b *bounds) Text(at Point, l Letters, text string) {
	b.see(at.Add(0, -1517.0/2048*Em(l.Height)))
	b.see(at.Add(l.Width(text), 0))
}

func (b *bounds) Stroke(_ Pen, path ...Point) {
	for _, p := range path {
		b.see(p)
	}
}

func (b *bounds) see(p Point) {
	if b.bottom == 0 {
		b.top, b.bottom = p.Y, p.Y
	}
	b.top, b.bottom, b.right = min(b.top, p.Y), max(b.bottom, p.Y), max(b.right, p.X)
}

// A line never ends between a whole number and its fraction.
func TestFractionsStayWhole(t *testing.T) {
	l := Letters{Height: 3}
	p := Phrase{}.Say(l, "or line 6 17/32, lead (-5 31/32) left; 3 of 4/4 a and/or b")
	for w := l.Width("(-5 31/32)"); w < 200; w++ {
		for _, line := range p.Lines(w) {
			b := line.Block()
			last := b.Parts[len(b.Parts)-1].Says
			assert.False(t, strings.HasSuffix(last, " 6") || last == "6" || strings.HasSuffix(last, "(-5"), "%v: %q", w, last)
		}
	}
}

// A phrase is parted after its sentences; what stands in brackets behind one and what
// is tied to its last word stay with it.
func TestSentences(t *testing.T) {
	l := Letters{Height: 2}
	p := Phrase{}.Say(l, "WARNING Hold it. Only 3/4 in wide. (1.2: 7/8) Lift it").Tie(l, ".").Say(l, "• Never.").Keep(l, "done")
	var says []string
	for _, s := range p.Sentences() {
		says = append(says, Said(s.Set(1000)))
	}
	assert.Equal(t, []string{"WARNING Hold it.", "Only 3/4 in wide. (1.2: 7/8)", "Lift it.", "• Never. done"}, says)
}
