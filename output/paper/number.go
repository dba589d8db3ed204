package paper

import (
	"math"
	"strconv"

	"fencecard/joinery/measure"
)

// Number is a length set as a built number: the fraction's figures over and
// under a bar, and a sign behind where the true length is a hair more or less.
type Number struct {
	Letters  Letters
	Fraction Paper // height of the fraction's figures; 0: the next size down
	Reading  measure.Reading
}

// Least is the smallest letter height on paper, in millimetres: that of the Go
// fonts whose small letters are 2 mm high.
const Least Paper = 2.75

// figures returns the letters of the fraction's figures: where nothing else is
// said the next size down in the series of ISO 3098-1, never under the least.
func (n Number) figures() Letters {
	l := n.Letters
	if n.Fraction > 0 {
		l.Height = n.Fraction
		return l
	}
	l.Height = max(Least, stepDown(l.Height))
	return l
}

// stepDown is the next smaller letter height of ISO 3098-1.
func stepDown(height Paper) Paper { return Paper(math.Round(float64(height)*10/math.Sqrt2) / 10) }

// Measures of a built fraction, in shares of its figures' height.
const (
	barGap   = 0.3 // figure to middle of bar
	barWidth = 0.08
	barOver  = 0.1 // how far the bar stands out beside the figures

	overCapital = 1.05 // figures stand a little over capitals
)

// ahead is the text before the fraction: the sign and the whole number.
func (n Number) ahead() string {
	r, text := n.Reading, ""
	if r.Negative {
		text = "−"
	}
	if r.Whole != 0 || r.Num == 0 {
		text += strconv.FormatInt(r.Whole, 10)
	}
	if r.Decimal != "" {
		text += "." + r.Decimal
	}
	return text
}

// behind is the sign of the remainder.
func (n Number) behind() string { return [...]string{"−", "", "+"}[n.Reading.Remainder+1] }

func (n Number) over() string  { return strconv.FormatInt(n.Reading.Num, 10) }
func (n Number) under() string { return strconv.FormatInt(n.Reading.Den, 10) }

// bar returns the length of the fraction's bar, 0 when there is no fraction.
func (n Number) bar() Paper {
	if n.Reading.Num == 0 {
		return 0
	}
	f := n.figures()
	return max(f.Width(n.over()), f.Width(n.under())) + 2*barOver*f.Height
}

// gap is the space between the whole number and the fraction.
func (n Number) gap() Paper {
	if n.Reading.Num == 0 || n.ahead() == "" {
		return 0
	}
	return 0.15 * n.Letters.Height
}

func (n Number) width() Paper {
	return n.Letters.Width(n.ahead()) + n.gap() + n.bar() + n.figures().Width(n.behind())
}

// Rise is how far the number reaches over its baseline; the bar lies at half
// the height of a capital.
func (n Number) Rise() Paper {
	if n.Reading.Num == 0 {
		return overCapital * n.Letters.Height
	}
	return n.Letters.Height/2 + (overCapital+barGap)*n.figures().Height
}

// Drop is how far the number reaches below its baseline.
func (n Number) Drop() Paper {
	if n.Reading.Num == 0 {
		return 0
	}
	return (overCapital+barGap)*n.figures().Height - n.Letters.Height/2
}

// paint draws the number with the left end of its baseline at a place.
func (n Number) paint(c Canvas, at Point) {
	c.Said(n.Reading.String(), func() {
		if text := n.ahead(); text != "" {
			c.Text(at, n.Letters, text)
			at.X += n.Letters.Width(text) + n.gap()
		}
		f := n.figures()
		if bar := n.bar(); bar > 0 {
			middle := at.Add(bar/2, -n.Letters.Height/2)
			c.Text(middle.Add(-f.Width(n.over())/2, -barGap*f.Height), f, n.over())
			c.Stroke(Pen{Width: barWidth * f.Height}, middle.Add(-bar/2, 0), middle.Add(bar/2, 0))
			c.Text(middle.Add(-f.Width(n.under())/2, (1.01+barGap)*f.Height), f, n.under())
			at.X += bar
		}
		if text := n.behind(); text != "" {
			c.Text(at.Add(0, (f.Height-n.Letters.Height)/2), f, text)
		}
	})
}
