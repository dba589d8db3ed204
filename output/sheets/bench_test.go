package sheets

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/paper"
)

// calls keeps what is asked of a canvas, to ask it again of another.
type calls struct{ all []func(paper.Canvas) }

func (c *calls) keep(call func(paper.Canvas)) { c.all = append(c.all, call) }

func (c *calls) Page(w, h paper.Paper) { c.keep(func(to paper.Canvas) { to.Page(w, h) }) }

func (c *calls) Stroke(pen paper.Pen, path ...paper.Point) {
	c.keep(func(to paper.Canvas) { to.Stroke(pen, path...) })
}

func (c *calls) Fill(shade paper.Shade, path ...paper.Point) {
	c.keep(func(to paper.Canvas) { to.Fill(shade, path...) })
}

func (c *calls) Circle(centre paper.Point, radius paper.Paper, shade paper.Shade, pen paper.Pen) {
	c.keep(func(to paper.Canvas) { to.Circle(centre, radius, shade, pen) })
}

func (c *calls) Text(at paper.Point, letters paper.Letters, text string) {
	c.keep(func(to paper.Canvas) { to.Text(at, letters, text) })
}

func (c *calls) Said(text string, paint func()) {
	inner := &calls{}
	outer := c.all
	c.all = nil
	paint()
	inner.all, c.all = c.all, outer
	c.keep(func(to paper.Canvas) {
		to.Said(text, func() {
			for _, call := range inner.all {
				call(to)
			}
		})
	})
}

// BenchmarkPDF writes the boot bench's deck, and asks the PDF library for the same
// lines and letters alone, laid out before: what is more is ours.
func BenchmarkPDF(b *testing.B) {
	d := planDeck(b, examples.BootBench)
	b.Run("deck", func(b *testing.B) {
		for b.Loop() {
			require.NoError(b, PDF(io.Discard, d, Pages{}))
		}
	})
	pages, err := lay(d, Pages{})
	require.NoError(b, err)
	c := &calls{}
	for p := range pages {
		c.Page(p.width, p.height)
		paper.Paint(c, p.Parts)
	}
	b.Run("calls", func(b *testing.B) {
		for b.Loop() {
			pdf := paper.NewPDF(d.Plan.Title)
			for _, call := range c.all {
				call(pdf)
			}
			require.NoError(b, pdf.Write(io.Discard))
		}
	})
}
