package paper

import (
	"fmt"
	"strings"
)

// Recorder is a canvas that writes down what is drawn, one line a call.
type Recorder struct{ strings.Builder }

// Page, Stroke, Fill, Circle, Text and Said write a line for each call.
func (r *Recorder) Page(w, h Paper) { fmt.Fprintf(r, "page %s x %s\n", svgLength(w), svgLength(h)) }

func (r *Recorder) Stroke(pen Pen, path ...Point) {
	if pen.Width == hatching {
		if !strings.HasSuffix(r.String(), "hatching\n") {
			r.WriteString("hatching\n")
		}
		return
	}
	fmt.Fprintf(r, "line %s %v:%s\n", svgLength(pen.Width), pen.Line, points(path))
}

func (r *Recorder) Fill(shade Shade, path ...Point) {
	fmt.Fprintf(r, "fill %v:%s\n", shade, points(path))
}

func (r *Recorder) Circle(centre Point, radius Paper, shade Shade, pen Pen) {
	fmt.Fprintf(r, "circle %v %s:%s r %s\n", shade, svgLength(pen.Width), points([]Point{centre}), svgLength(radius))
}

func (r *Recorder) Text(at Point, l Letters, text string) {
	fmt.Fprintf(r, "text %s%s:%s %q\n", svgLength(l.Height), [...]string{"", " bold"}[l.Face], points([]Point{at}), text)
}

func (r *Recorder) Said(text string, paint func()) {
	fmt.Fprintf(r, "said %q\n", text)
	paint()
	r.WriteString("end\n")
}

func points(path []Point) string {
	var b strings.Builder
	for _, p := range path {
		b.WriteString(" " + svgLength(p.X) + "," + svgLength(p.Y))
	}
	return b.String()
}

// Said joins what a block says, line by line.
func Said(b Block) string {
	var all []string
	for _, p := range b.Parts {
		if p.Name == "text" || p.Name == "number" || p.Name == "boxes" {
			all = append(all, p.Says)
		}
	}
	return strings.Join(all, "|")
}
