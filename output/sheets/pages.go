package sheets

import (
	"io"
	"iter"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/strips"
	"fencecard/setup/deck"
)

// Pages says how a deck is put on paper. The zero value is US letter paper, in
// the plan's unit, read off the shop's scale.
type Pages struct {
	Paper  PaperSize
	Units  Units
	Scale  measure.Scale // printed lengths are rounded to it; zero: the shop's own
	Strips bool          // put the full-scale strips in the deck
	Only   Only          // leave out everything else
	Joints bool          // put a drawing of every joint in the deck
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
	Name          string
	width, height paper.Paper
}{
	Letter: {"letter", 8.5 * paper.Inch, 11 * paper.Inch},
	A4:     {"a4", 210, 297},
	Legal:  {"legal", 8.5 * paper.Inch, 14 * paper.Inch},
	A5:     {"a5", 148, 210},
	Index:  {"index", 4 * paper.Inch, 6 * paper.Inch},
}

// ParsePaper returns the paper of that name.
func ParsePaper(name string) (PaperSize, bool) {
	for i, p := range paperSizes {
		if p.Name == name {
			return PaperSize(i), true
		}
	}
	return 0, false
}

// String gives the paper's name, such as "letter".
func (p PaperSize) String() string { return paperSizes[p].Name }

// Size gives the paper's width and height, upright.
func (p PaperSize) Size() (width, height paper.Paper) {
	return paperSizes[p].width, paperSizes[p].height
}

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

// margin is left white round every page; most printers need 6 mm.
func (p PaperSize) margin() paper.Paper {
	if p == Index {
		return 6
	}
	return 10
}

// Only is the one part of a deck that is wanted.
type Only uint8

// The parts: everything, the run sheet and the setup sheets, the piece cards, the
// strips, or the setup sheets without a run sheet, as for a setup out of a book.
const (
	Everything Only = iota
	OnlySheets
	OnlyCards
	OnlyStrips
	OnlySetups
)

// ParseOnly returns the part of that name: "sheets", "cards" or "strips".
func ParseOnly(name string) (Only, bool) {
	o, ok := map[string]Only{"sheets": OnlySheets, "cards": OnlyCards, "strips": OnlyStrips}[name]
	return o, ok
}

// PDF writes the deck as a PDF document: the run sheet, the sheets of every
// setup, the piece cards, and the strips where they are wanted. Nothing is
// written when there is an error in making it.
func PDF(w io.Writer, d *deck.Deck, o Pages) error {
	pages, err := lay(d, o)
	if err != nil {
		return err
	}
	return printPages(w, d.Plan.Title, pages)
}

func printPages(w io.Writer, title string, pages iter.Seq[page]) error {
	pdf := paper.NewPDF(title)
	g := &paper.Gate{To: pdf}
	for p := range pages {
		g.Page(p.width, p.height)
		paper.Paint(g, p.Parts)
	}
	if g.Err != nil {
		return g.Err
	}
	return pdf.Write(w)
}

// lay lays out the whole deck in its order, each page when it is asked for: a
// large deck laid out at once takes a good part of a gigabyte.
func lay(d *deck.Deck, o Pages) (iter.Seq[page], error) {
	s := newSetter(d, o)
	var taped []page
	if o.Strips || o.Only == OnlyStrips {
		all, err := strips.Sheets(s.Setter, d, o.Only == OnlyStrips)
		if err != nil {
			return nil, err
		}
		for _, sheet := range all {
			taped = append(taped, page{width: sheet.W, height: sheet.H, Parts: sheet.Parts, strip: true})
		}
	}
	var parts []iter.Seq[page]
	if o.Only == Everything || o.Only == OnlySheets {
		parts = append(parts, s.sheets(d))
	}
	if o.Only == OnlySetups {
		parts = append(parts, s.setupSheets(d, paper.Block{}))
	}
	if o.Only == Everything || o.Only == OnlyCards {
		parts = append(parts, s.pieceCards(d))
	}
	if o.Joints {
		parts = append(parts, s.jointPages(d))
	}
	parts = append(parts, slices.Values(taped))
	return s.footed(parts), nil
}
