package output

import (
	"math"
	"strconv"

	"fencecard/joinery"
)

// number is a length set as a built number: the fraction's figures over and
// under a bar, and a sign behind where the true length is a hair more or less.
type number struct {
	letters  Letters
	fraction Paper // height of the fraction's figures; 0: the next size down
	reading  joinery.Reading
}

// least is the smallest letter height on the cards, in millimetres.
const least Paper = 2.5

// figures returns the letters of the fraction's figures: where nothing else is
// said the next size down in the series of ISO 3098-1, never under the least.
func (n number) figures() Letters {
	l := n.letters
	if n.fraction > 0 {
		l.Height = n.fraction
		return l
	}
	l.Height = max(least, stepDown(l.Height))
	return l
}

// stepDown is the next smaller letter height of ISO 3098-1.
func stepDown(height Paper) Paper { return Paper(math.Round(float64(height)*10/math.Sqrt2) / 10) }

// Measures of a built fraction, in shares of its figures' height.
const (
	barGap   = 0.22 // figure to middle of bar
	barWidth = 0.08
	barOver  = 0.1 // how far the bar stands out beside the figures

	overCapital = 1.05 // figures stand a little over capitals
)

// ahead is the text before the fraction: the sign and the whole number.
func (n number) ahead() string {
	r, text := n.reading, ""
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
func (n number) behind() string { return [...]string{"−", "", "+"}[n.reading.Remainder+1] }

func (n number) over() string  { return strconv.FormatInt(n.reading.Num, 10) }
func (n number) under() string { return strconv.FormatInt(n.reading.Den, 10) }

// bar returns the length of the fraction's bar, 0 when there is no fraction.
func (n number) bar() Paper {
	if n.reading.Num == 0 {
		return 0
	}
	f := n.figures()
	return max(f.width(n.over()), f.width(n.under())) + 2*barOver*f.Height
}

// gap is the space between the whole number and the fraction.
func (n number) gap() Paper {
	if n.reading.Num == 0 || n.ahead() == "" {
		return 0
	}
	return 0.15 * n.letters.Height
}

func (n number) width() Paper {
	return n.letters.width(n.ahead()) + n.gap() + n.bar() + n.figures().width(n.behind())
}

// rise is how far the number reaches over its baseline; the bar lies at half
// the height of a capital.
func (n number) rise() Paper {
	if n.reading.Num == 0 {
		return overCapital * n.letters.Height
	}
	return n.letters.Height/2 + (overCapital+barGap)*n.figures().Height
}

func (n number) drop() Paper {
	if n.reading.Num == 0 {
		return 0
	}
	return (overCapital+barGap)*n.figures().Height - n.letters.Height/2
}

// paint draws the number with the left end of its baseline at a place.
func (n number) paint(c Canvas, at Point) {
	c.Said(n.reading.String(), func() {
		if text := n.ahead(); text != "" {
			c.Text(at, n.letters, text)
			at.X += n.letters.width(text) + n.gap()
		}
		f := n.figures()
		if bar := n.bar(); bar > 0 {
			middle := at.Add(bar/2, -n.letters.Height/2)
			c.Text(middle.Add(-f.width(n.over())/2, -barGap*f.Height), f, n.over())
			c.Stroke(Pen{Width: barWidth * f.Height}, middle.Add(-bar/2, 0), middle.Add(bar/2, 0))
			c.Text(middle.Add(-f.width(n.under())/2, (1.01+barGap)*f.Height), f, n.under())
			at.X += bar
		}
		if text := n.behind(); text != "" {
			c.Text(at.Add(0, (f.Height-n.letters.Height)/2), f, text)
		}
	})
}
