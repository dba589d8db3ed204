package output

import (
	"fmt"
	"io"

	"fencecard/joinery"
	"fencecard/setup"
)

// Pages says how a deck is put on paper. The zero value is one card a page on
// US letter paper, in the plan's unit, read off the shop's scale.
type Pages struct {
	Paper   PaperSize
	PerPage int // cards a page: 1, 2 or 4; 0 means 1
	Units   Units
	Scale   joinery.Scale // printed lengths are rounded to it; zero: the shop's own
	Strips  bool          // put the full-scale strips in the deck
	Only    Only          // leave out everything else
}

// PaperSize is the paper a deck is printed on.
type PaperSize uint8

// The papers: US letter and legal, A4 and A5 (ISO 216), and index cards of
// 4 x 6 in.
const (
	Letter PaperSize = iota
	A4
	Legal
	A5
	Index
)

var paperSizes = [...]struct {
	name          string
	width, height Paper
}{
	Letter: {"letter", 8.5 * Inch, 11 * Inch},
	A4:     {"a4", 210, 297},
	Legal:  {"legal", 8.5 * Inch, 14 * Inch},
	A5:     {"a5", 148, 210},
	Index:  {"index", 4 * Inch, 6 * Inch},
}

// ParsePaper returns the paper of that name.
func ParsePaper(name string) (PaperSize, bool) {
	for i, p := range paperSizes {
		if p.name == name {
			return PaperSize(i), true
		}
	}
	return 0, false
}

// String gives the paper's name, such as "letter".
func (p PaperSize) String() string { return paperSizes[p].name }

// Size gives the paper's width and height, upright.
func (p PaperSize) Size() (width, height Paper) { return paperSizes[p].width, paperSizes[p].height }

// Units is which units lengths are printed in.
type Units uint8

// The units: those of the shop's scale, inches, millimetres, or both, the
// plan's own first.
const (
	PlanUnits Units = iota
	InInches
	InMillimetres
	InBoth
)

// ParseUnits returns the units of that name: "in", "mm" or "both".
func ParseUnits(name string) (Units, bool) {
	u, ok := map[string]Units{"in": InInches, "mm": InMillimetres, "both": InBoth}[name]
	return u, ok
}

// Only is the one part of a deck that is wanted.
type Only uint8

// The parts: everything, or the strips alone.
const (
	Everything Only = iota
	OnlyStrips
)

// ParseOnly returns the part of that name: "strips".
func ParseOnly(name string) (Only, bool) { return OnlyStrips, name == "strips" }

// PDF writes the deck as a PDF document: the run sheet, then for every setup a
// header and its cards, the piece index and the cautions. Nothing is written
// when there is an error in making it.
func PDF(w io.Writer, d *setup.Deck, o Pages) error {
	switch o.PerPage {
	case 0, 1, 2, 4:
	default:
		return fmt.Errorf("%d cards a page: 1, 2 or 4 would be right", o.PerPage)
	}
	pdf := newPDF(d.Plan.Title)
	g := &gate{to: pdf}
	for _, p := range lay(d, o) {
		g.Page(p.width, p.height)
		paint(g, p.parts)
	}
	if g.err != nil {
		return g.err
	}
	return pdf.write(w)
}

// page is one page with everything on it in its place.
type page struct {
	width, height Paper
	parts         []part
}

// margin is left white round every page; most printers need 6 mm.
const margin Paper = 10

// lay lays out the whole deck.
func lay(d *setup.Deck, o Pages) []page {
	s := newSetter(d, o)
	blocks := []block{s.runSheet(d)}
	for i := range d.Setups {
		for k := range d.Setups[i].Cards {
			blocks = append(blocks, s.card(&d.Setups[i], &d.Setups[i].Cards[k], s.frame.W, s.frame.H)...)
		}
	}
	var pages []page
	for _, b := range blocks {
		pages = append(pages, page{s.paper.W, s.paper.H, b.at(s.frame.X, s.frame.Y)})
	}
	return pages
}
