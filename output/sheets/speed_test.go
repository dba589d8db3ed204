package sheets

import (
	"bytes"
	"io"
	"slices"
	"testing"

	"github.com/jung-kurt/gofpdf"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// thousandCards is the legs' deck, its setups repeated until they hold 1,000
// cards.
func thousandCards(t testing.TB) *deck.Deck {
	d := legDeck(t)
	once := d.Setups
	for d.Runs() < 1000 {
		d.Setups = append(d.Setups, slices.Clone(once)...)
	}
	return d
}

// plain draws with gofpdf and nothing else: one call of gofpdf for each call
// on the canvas, the same texts in the same fonts, one line for each path.
type plain struct {
	*gofpdf.Fpdf
	Letters      paper.Letters
	texts, lines int
}

func (p *plain) Page(w, h paper.Paper) {
	p.AddPage()
	p.Letters = paper.Letters{}
}

func (p *plain) Stroke(_ paper.Pen, path ...paper.Point) {
	a, b := path[0], path[1]
	p.Line(float64(a.X), float64(a.Y), float64(b.X), float64(b.Y))
	p.lines++
}

func (p *plain) Fill(_ paper.Shade, path ...paper.Point) { p.Stroke(paper.Pen{}, path...) }
func (p *plain) Circle(at paper.Point, r paper.Paper, _ paper.Shade, _ paper.Pen) {
	p.Stroke(paper.Pen{}, at, at.Add(r, r))
}
func (p *plain) Said(_ string, paint func()) { paint() }
func (p *plain) Text(at paper.Point, l paper.Letters, text string) {
	if l != p.Letters {
		p.SetFont("go", paper.FaceStyles[l.Face], float64(l.Height))
		p.Letters = l
	}
	p.Fpdf.Text(float64(at.X), float64(at.Y), text)
	p.texts++
}

// BenchmarkThousandCards makes the PDF of a deck of 1,000 cards.
func BenchmarkThousandCards(b *testing.B) {
	d := thousandCards(b)
	for b.Loop() {
		require.NoError(b, PDF(io.Discard, d, Pages{}))
	}
}

// BenchmarkPlainGofpdf makes the same texts and as many lines with gofpdf and
// nothing else: the time the cards are held against, which is to be under
// twice this.
func BenchmarkPlainGofpdf(b *testing.B) {
	laid, err := lay(thousandCards(b), Pages{})
	require.NoError(b, err)
	pages := slices.Collect(laid)
	var p plain
	for b.Loop() {
		p = plain{Fpdf: gofpdf.New("P", "mm", "Letter", "")}
		p.SetAutoPageBreak(false, 0)
		for face, file := range paper.FaceFiles {
			p.AddUTF8FontFromBytes("go", paper.FaceStyles[face], bytes.Clone(file))
		}
		for _, page := range pages {
			p.Page(page.width, page.height)
			paper.Paint(&p, page.Parts)
		}
		require.NoError(b, p.Output(io.Discard))
	}
	b.ReportMetric(float64(p.texts), "texts")
	b.ReportMetric(float64(p.lines), "lines")
}
