package paper

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"time"
	"unicode/utf16"

	"github.com/jung-kurt/gofpdf"

	"fencecard/joinery/pattern"
)

// pdfCanvas draws on a PDF document. It is the only part of the program that
// knows gofpdf.
type pdfCanvas struct {
	pdf    *gofpdf.Fpdf
	height Paper  // of the page
	buf    []byte // of path
	// What the page was last told, so that it is not told again.
	pen     Pen
	shade   Shade
	Letters Letters
}

const pointsPerMM = 72 / 25.4

// faceStyles are the names that gofpdf has for the faces.
var faceStyles = [...]string{Regular: "", Bold: "B"}

// NewPDF begins a document. Nothing in it depends on the time or the machine,
// so that the same plan gives the same bytes.
func NewPDF(title string) *pdfCanvas {
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", SizeStr: "A4"})
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetCellMargin(0)
	f.SetCatalogSort(true)
	f.SetCreationDate(time.Unix(0, 0).UTC())
	f.SetModificationDate(time.Unix(0, 0).UTC())
	f.SetProducer("fencecard", true)
	f.SetTitle(Printable(title), true)
	for face, file := range faceFiles {
		// gofpdf changes the font's bytes, so every document has its own.
		f.AddUTF8FontFromBytes("go", faceStyles[face], bytes.Clone(file))
	}
	return &pdfCanvas{pdf: f}
}

// Write ends the document and writes it.
func (c *pdfCanvas) Write(w io.Writer) error {
	if err := c.pdf.Output(w); err != nil {
		return fmt.Errorf("writing the PDF: %w", err)
	}
	return nil
}

// PageCount reads how many pages a document made by [PDF] has from the root of
// its page tree (ISO 32000-1, 7.7.3.2); of any other file it is 0.
func PageCount(pdf []byte) int {
	m := pageTree.FindStringSubmatch(string(pdf))
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1]) // digits
	return n
}

var pageTree = pattern.New(`/Type /Pages\s+/Kids \[[^\]]*\]\s+/Count (\d+)`)

func (c *pdfCanvas) Page(width, height Paper) {
	c.pdf.AddPageFormat("P", gofpdf.SizeType{Wd: float64(width), Ht: float64(height)})
	c.height = height
	c.pdf.SetLineCapStyle("butt")
	c.pdf.SetLineJoinStyle("miter")
	c.pen, c.shade, c.Letters = Pen{Width: -1}, -1, Letters{}
}

func (c *pdfCanvas) Stroke(pen Pen, path ...Point) {
	c.use(pen)
	c.path(path, 'S')
}

func (c *pdfCanvas) Fill(shade Shade, path ...Point) {
	c.dip(shade)
	c.path(path, 'f')
}

func (c *pdfCanvas) Circle(centre Point, radius Paper, shade Shade, pen Pen) {
	c.dip(shade)
	style := "F"
	if pen.Width > 0 {
		c.use(pen)
		style = "FD"
	}
	c.pdf.Circle(float64(centre.X), float64(centre.Y), float64(radius), style)
}

func (c *pdfCanvas) Text(at Point, letters Letters, text string) {
	upward := letters.Upward
	letters.Upward = false
	if letters != c.Letters {
		c.Letters = letters
		c.pdf.SetFont("go", faceStyles[letters.Face], float64(Em(letters.Height))*pointsPerMM)
		if letters.White {
			c.pdf.SetTextColor(255, 255, 255)
		} else {
			c.pdf.SetTextColor(0, 0, 0)
		}
	}
	x, y := float64(at.X), float64(at.Y)
	if !upward {
		c.pdf.Text(x, y, text)
		return
	}
	c.pdf.TransformBegin()
	c.pdf.TransformRotate(90, x, y)
	c.pdf.Text(x, y, text)
	c.pdf.TransformEnd()
}

// Said wraps what is painted in a span with its actual text (ISO 32000-1,
// 14.9.4).
func (c *pdfCanvas) Said(text string, paint func()) {
	var hex bytes.Buffer
	for _, u := range utf16.Encode([]rune(text)) {
		fmt.Fprintf(&hex, "%04X", u)
	}
	c.pdf.RawWriteStr("/Span <</ActualText <FEFF" + hex.String() + ">>> BDC")
	paint()
	c.pdf.RawWriteStr("EMC")
}

// path writes a path and how it is painted. It writes the operators of ISO
// 32000-1, 8.5.2 itself: decks are mostly lines, and this takes a quarter of the
// time.
func (c *pdfCanvas) path(points []Point, paint byte) {
	const place = 3 // digits behind the point, of a point: under 0.001 mm
	buf := c.buf[:0]
	operator := byte('m')
	for _, p := range points {
		buf = strconv.AppendFloat(buf, float64(p.X)*pointsPerMM, 'f', place, 64)
		buf = append(buf, ' ')
		buf = strconv.AppendFloat(buf, float64(c.height-p.Y)*pointsPerMM, 'f', place, 64)
		buf = append(buf, ' ', operator, ' ')
		operator = 'l'
	}
	if points[0] == points[len(points)-1] {
		buf = append(buf, 'h', ' ')
	}
	c.buf = append(buf, paint)
	c.pdf.RawWriteStr(string(c.buf))
}

func (c *pdfCanvas) use(pen Pen) {
	if pen.Width != c.pen.Width {
		c.pdf.SetLineWidth(float64(pen.Width))
	}
	if pen.Line != c.pen.Line || c.pen.Width < 0 {
		var pattern []float64
		for _, d := range dashes[pen.Line] {
			pattern = append(pattern, float64(d))
		}
		c.pdf.SetDashPattern(pattern, 0)
	}
	c.pen = pen
}

func (c *pdfCanvas) dip(shade Shade) {
	if shade != c.shade {
		grey := int(255*(1-shade) + 0.5)
		c.pdf.SetFillColor(grey, grey, grey)
		c.shade = shade
	}
}
