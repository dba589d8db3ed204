package paper

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
)

// SvgCanvas draws one page as SVG, in millimetres. The zero value makes a file of
// its own.
type SvgCanvas struct {
	// Inline makes a part of an HTML page instead, which has a ground, a size and
	// letters for it: its style sheet must give texts of the class "b" bold and of
	// the class "w" white letters.
	Inline bool

	buf bytes.Buffer
}

// Bytes ends the document and returns it.
func (c *SvgCanvas) Bytes() []byte {
	c.buf.WriteString("</svg>\n")
	return c.buf.Bytes()
}

// Page, Stroke, Fill, Circle, Text and Said write elements of SVG.
func (c *SvgCanvas) Page(width, height Paper) {
	w, h := svgLength(width), svgLength(height)
	if c.Inline {
		fmt.Fprintf(&c.buf, `<svg viewBox="0 0 %s %s">`+"\n", w, h)
		return
	}
	fmt.Fprintf(&c.buf, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n", w, h, w, h)
	fmt.Fprintf(&c.buf, `<rect width="%s" height="%s" fill="#fff"/>`+"\n", w, h)
}

func (c *SvgCanvas) Stroke(pen Pen, path ...Point) {
	fmt.Fprintf(&c.buf, `<path d="%s" fill="none"%s/>`+"\n", svgPath(path), svgPen(pen))
}

func (c *SvgCanvas) Fill(shade Shade, path ...Point) {
	fmt.Fprintf(&c.buf, `<path d="%s" fill="%s"/>`+"\n", svgPath(path), svgShade(shade))
}

func (c *SvgCanvas) Circle(centre Point, radius Paper, shade Shade, pen Pen) {
	line := ""
	if pen.Width > 0 {
		line = svgPen(pen)
	}
	fmt.Fprintf(&c.buf, `<circle cx="%s" cy="%s" r="%s" fill="%s"%s/>`+"\n",
		svgLength(centre.X), svgLength(centre.Y), svgLength(radius), svgShade(shade), line)
}

func (c *SvgCanvas) Text(at Point, l Letters, text string) {
	// The width is fixed as well, as the reader may lack the font.
	attrs := fmt.Sprintf(`font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs"`, svgLength(Em(l.Height)), svgLength(l.Width(text)))
	if c.Inline {
		attrs += svgClass(l)
	} else {
		attrs = `font-family="Go, sans-serif" ` + attrs
		if l.Face == Bold {
			attrs += ` font-weight="bold"`
		}
		if l.White {
			attrs += ` fill="#fff"`
		}
	}
	x, y := svgLength(at.X), svgLength(at.Y)
	if l.Upward {
		attrs += fmt.Sprintf(` transform="rotate(-90 %s %s)"`, x, y)
	}
	if !c.Inline {
		attrs += ` xml:space="preserve"`
	}
	fmt.Fprintf(&c.buf, `<text x="%s" y="%s" %s>%s</text>`+"\n", x, y, attrs, svgText(text))
}

func (c *SvgCanvas) Said(text string, paint func()) {
	fmt.Fprintf(&c.buf, `<g role="img" aria-label="%s">`+"\n", svgText(text))
	paint()
	c.buf.WriteString("</g>\n")
}

func svgClass(l Letters) string {
	switch {
	case l.Face == Bold && l.White:
		return ` class="b w"`
	case l.White:
		return ` class="w"`
	case l.Face == Bold:
		return ` class="b"`
	}
	return ""
}

// svgLength writes a length to a thousandth of a millimetre.
func svgLength(l Paper) string {
	s := strconv.FormatFloat(float64(l), 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

func svgPath(path []Point) string {
	var b strings.Builder
	for i, p := range path {
		op := "L"
		if i == 0 {
			op = "M"
		}
		b.WriteString(op + svgLength(p.X) + " " + svgLength(p.Y))
	}
	if path[0] == path[len(path)-1] {
		b.WriteByte('Z')
	}
	return b.String()
}

func svgPen(pen Pen) string {
	s := fmt.Sprintf(` stroke="#000" stroke-width="%s"`, svgLength(pen.Width))
	if pattern := dashes[pen.Line]; pattern != nil {
		parts := make([]string, len(pattern))
		for i, d := range pattern {
			parts[i] = svgLength(d)
		}
		s += ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	return s
}

func svgShade(s Shade) string {
	grey := int(255*(1-s) + 0.5)
	return fmt.Sprintf("#%02x%02x%02x", grey, grey, grey)
}

func svgText(text string) string {
	var b bytes.Buffer
	// A bytes.Buffer never fails.
	_ = xml.EscapeText(&b, []byte(text))
	return b.String()
}
