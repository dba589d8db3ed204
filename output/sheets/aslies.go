package sheets

import (
	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// Measures of a piece as it lies on the table, beside a run.
const (
	liesWide   paper.Paper = 31
	liesHigh   paper.Paper = 9.2
	liesUp     paper.Paper = 4.6 // height of the side up
	liesLean   paper.Paper = 5   // how far its back edge stands to the right
	liesArrow  paper.Paper = 6
	liesShadow paper.Paper = 0.5
)

// asLies draws a run's piece as it lies on the table before the operator, fed
// to the left, with the two sides that show: the one up and the one toward you.
func (s Setter) asLies(r *deck.Run) paper.Block {
	d := &paper.Drawing{W: liesWide, H: liesHigh}
	left, right := liesArrow, liesWide-liesLean
	front := paper.Box{X: left, Y: liesUp, W: right - left, H: liesHigh - liesUp}
	pen := paper.Pen{Width: 0.35}
	d.Stroke(pen, front.Path()...)
	d.Stroke(pen, paper.At(left, liesUp), paper.At(left+liesLean, 0), paper.At(liesWide, 0), paper.At(right, liesUp))
	d.Stroke(pen, paper.At(liesWide, 0), paper.At(liesWide, liesHigh-liesUp), paper.At(right, liesHigh))
	feed := liesUp + (liesHigh-liesUp)/2
	d.Stroke(paper.Pen{Width: 0.7}, paper.At(left-0.8, feed), paper.At(2.4, feed))
	d.Fill(paper.Black, paper.At(0, feed), paper.At(2.6, feed-1.5), paper.At(2.6, feed+1.5), paper.At(0, feed))
	l := s.Bold(paper.Least)
	name := func(side joinery.Side) paper.Block {
		text := paper.Shortened(l, paper.Printable(shout(r, side)), right-left-1)
		return paper.Phrase{}.Keep(l, text).Set(liesWide)
	}
	up, toward := name(r.Up()), name(r.TowardYou())
	d.Text(up, left+liesLean/2+(right-left-up.W)/2, (liesUp-up.H)/2+0.1)
	d.Text(toward, left+(right-left-toward.W)/2, liesUp+(liesHigh-liesUp-toward.H)/2+0.1)
	return d.Block()
}
