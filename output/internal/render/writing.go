package render

import (
	"math"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/stretchr/testify/require"
)

// Box is a rectangle on a page.
type Box struct{ Left, Top, Right, Bottom float64 }

// Overlaps reports whether two boxes share more than a width of slack.
func (b Box) Overlaps(c Box, slack float64) bool {
	return b.Left+slack < c.Right && c.Left+slack < b.Right &&
		b.Top+slack < c.Bottom && c.Top+slack < b.Bottom
}

// Within reports whether a box lies inside another.
func (b Box) Within(c Box) bool {
	return b.Left >= c.Left && b.Right <= c.Right && b.Top >= c.Top && b.Bottom <= c.Bottom
}

// Piece is text set in one go: a line, a word or a number.
type Piece struct {
	Text   string
	Box    Box     // of its ink
	Size   float64 // of the font's em
	Upward bool    // turned a quarter to the left
}

// Pieces gives all the text of a page, from 0, in the order it was set. Where
// a document says that pieces read as one text, as those of a built fraction
// do, the first of them has that text and the others have none.
func (d *Document) Pieces(page int) []Piece {
	d.t.Helper()
	_, height := d.Size(page)
	text, err := d.pdf.FPDFText_LoadPage(&requests.FPDFText_LoadPage{Page: d.page(page)})
	require.NoError(d.t, err)
	defer d.pdf.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: text.TextPage})
	count, err := d.pdf.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: d.page(page)})
	require.NoError(d.t, err)
	var pieces []Piece
	for i := range count.Count {
		object, err := d.pdf.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: d.page(page), Index: i})
		require.NoError(d.t, err)
		kind, err := d.pdf.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: object.PageObject})
		require.NoError(d.t, err)
		if kind.Type != enums.FPDF_PAGEOBJ_TEXT {
			continue
		}
		said, err := d.pdf.FPDFTextObj_GetText(&requests.FPDFTextObj_GetText{PageObject: object.PageObject, TextPage: text.TextPage})
		require.NoError(d.t, err)
		edges, err := d.pdf.FPDFPageObj_GetBounds(&requests.FPDFPageObj_GetBounds{PageObject: object.PageObject})
		require.NoError(d.t, err)
		size, err := d.pdf.FPDFTextObj_GetFontSize(&requests.FPDFTextObj_GetFontSize{PageObject: object.PageObject})
		require.NoError(d.t, err)
		matrix, err := d.pdf.FPDFPageObj_GetMatrix(&requests.FPDFPageObj_GetMatrix{PageObject: object.PageObject})
		require.NoError(d.t, err)
		scale := math.Hypot(float64(matrix.Matrix.C), float64(matrix.Matrix.D))
		pieces = append(pieces, Piece{
			Text: said.Text,
			Box: Box{
				Left: float64(edges.Left) * mmPerPoint, Top: height - float64(edges.Top)*mmPerPoint,
				Right: float64(edges.Right) * mmPerPoint, Bottom: height - float64(edges.Bottom)*mmPerPoint,
			},
			Size:   float64(size.FontSize) * scale * mmPerPoint,
			Upward: matrix.Matrix.B > 0.5,
		})
	}
	return pieces
}
