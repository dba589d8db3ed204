package sheets

import (
	"io"
	"iter"
	"slices"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
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
// header and its cards, the piece index, the strips where they are wanted, and
// the cautions. Nothing is written when there is an error in making it.
func PDF(w io.Writer, d *deck.Deck, o Pages) error {
	pages, err := lay(d, o)
	if err != nil {
		return err
	}
	pdf := paper.NewPDF(d.Plan.Title)
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
	s, err := newSetter(d, o)
	if err != nil {
		return nil, err
	}
	var strips []page
	if o.Strips || o.Only == OnlyStrips {
		if strips, err = s.stripSheets(d, o.Only == OnlyStrips); err != nil {
			return nil, err
		}
	}
	if o.Only == OnlyStrips {
		return slices.Values(strips), nil
	}
	lists := s.forLists()
	return func(yield func(page) bool) {
		for _, pages := range []iter.Seq[page]{
			slices.Values(lists.runSheet(d)),
			s.deal(s.cards(d)),
			slices.Values(lists.pieceIndex(d)),
			slices.Values(strips),
			slices.Values(lists.cautions(d)),
		} {
			for p := range pages {
				if !yield(p) {
					return
				}
			}
		}
	}, nil
}

// cards lays out the header of every setup and its cards.
func (s Setter) cards(d *deck.Deck) iter.Seq[paper.Block] {
	return func(yield func(paper.Block) bool) {
		all := func(blocks []paper.Block) bool {
			for _, b := range blocks {
				if !yield(b) {
					return false
				}
			}
			return true
		}
		for i := range d.Setups {
			u := &d.Setups[i]
			if !all(s.header(d, i)) {
				return
			}
			for k := range u.Runs {
				if !all(s.card(u, &u.Runs[k])) {
					return
				}
			}
		}
	}
}
