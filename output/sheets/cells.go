package sheets

import (
	"fmt"
	"iter"

	"fencecard/output/paper"
)

// page is one page with everything on it in its place.
type page struct {
	width, height paper.Paper
	Parts         []paper.Part
}

// margin is left white round every page; most printers need 6 mm.
func (p PaperSize) margin() paper.Paper {
	if p == Index {
		return 6
	}
	return 10
}

// grade is the letter heights of a card, all of the series of ISO 3098-1.
type grade struct {
	number   paper.Paper // the card's number
	order    paper.Paper // the three orders
	value    paper.Paper // fence distance and marks
	aside    paper.Paper // distances to centre and far edge, beside it
	Fraction paper.Paper // the figures of their fractions
	title    paper.Paper // the piece's name
	height   paper.Paper // the heights of the bit, read with the router running
	body     paper.Paper
	caution  paper.Paper // of cautions in full; 0: as the body
	bit      paper.Paper // how large the bit should be in the drawings
	compact  bool        // there is no width to spare
	brief    bool        // cautions in their few words
	roomy    []roomy     // the largest first
}

// roomy is how large numbers are where a small card has room for that.
type roomy struct{ value, aside paper.Paper }

// The grades, largest first, and the narrowest card each is for.
var grades = []struct {
	width paper.Paper
	grade
}{
	{170, grade{number: 14, order: 10, value: 10, Fraction: 7, title: 7, height: 5, body: 3.5, bit: 3}},
	{115, grade{number: 10, order: 7, value: 7, aside: 3.5, Fraction: 7, title: 5, height: 5, body: 3.5, bit: 2, compact: true, roomy: []roomy{{10, 7}, {10, 5}, {7, 5}}}},
	{75, grade{number: 7, order: 5, value: 7, aside: 2.5, Fraction: 5, title: 3.5, height: 3.5, body: 2.5, bit: 2, compact: true, roomy: []roomy{{7, 5}, {7, 3.5}}}},
}

// Cards on one sheet stand apart, so that they can be cut.
const (
	betweenCards  paper.Paper = 8
	shortestCard  paper.Paper = 120
	smallestCards             = "2 on a5 and 1 on index are the most"
)

// Check tells whether so many cards of that paper can be read. The error says
// what could.
func (o Pages) Check() error {
	w, h := o.Paper.Size()
	return (&Setter{paper: paper.Box{X: 0, Y: 0, W: w, H: h}}).divide(o)
}

// divide finds the places of the cards on a sheet and the size of their
// letters. Two cards stand side by side on a sheet laid across, so that a card
// is always upright.
func (s *Setter) divide(o Pages) error {
	n := max(1, o.PerPage)
	across, down := 1, 1
	s.sheet = s.paper
	switch n {
	case 1:
	case 2:
		across = 2
		s.sheet.W, s.sheet.H = s.paper.H, s.paper.W
	case 4:
		across, down = 2, 2
	default:
		return fmt.Errorf("%d cards a page cannot be laid out; 1, 2 or 4 would be right", n)
	}
	frame := s.sheet.Inset(o.Paper.margin())
	w := (frame.W - paper.Paper(across-1)*betweenCards) / paper.Paper(across)
	h := (frame.H - paper.Paper(down-1)*betweenCards) / paper.Paper(down)
	for i := range n {
		s.cells = append(s.cells, paper.Box{
			X: frame.X + paper.Paper(i%across)*(w+betweenCards), Y: frame.Y + paper.Paper(i/across)*(h+betweenCards), W: w, H: h,
		})
	}
	if grade, ok := gradeFor(w); ok && h >= shortestCard {
		s.grade = grade
		return nil
	}
	return fmt.Errorf("%d cards on %s paper would be too small to read; %s", n, o.Paper, smallestCards)
}

// gradeFor returns the letters for what is so wide.
func gradeFor(w paper.Paper) (grade, bool) {
	for _, g := range grades {
		if w >= g.width {
			return g.grade, true
		}
	}
	return grade{}, false
}

// forLists returns the setter for pages that are not cards: the whole upright
// sheet, its letters fit for that width.
func (s Setter) forLists() Setter {
	s.grade, _ = gradeFor(s.frame.W)
	return s
}

// deal puts cards on sheets, in their order.
func (s Setter) deal(cards iter.Seq[paper.Block]) iter.Seq[page] {
	return func(yield func(page) bool) {
		var sheet page
		dealt := 0
		for card := range cards {
			if dealt == len(s.cells) {
				if !yield(sheet) {
					return
				}
				dealt = 0
			}
			if dealt == 0 {
				sheet = page{s.sheet.W, s.sheet.H, s.cuttingLines().At(0, 0)}
			}
			cell := s.cells[dealt]
			sheet.Parts = append(sheet.Parts, card.At(cell.X, cell.Y)...)
			dealt++
		}
		if dealt > 0 {
			yield(sheet)
		}
	}
}

// cuttingLines are where the cards of a sheet are cut apart.
func (s Setter) cuttingLines() paper.Block {
	if len(s.cells) == 1 {
		return paper.Block{}
	}
	return paper.Figure("cutting lines", s.sheet.W, s.sheet.H, func(c paper.Canvas, at paper.Point) {
		pen := paper.Pen{Width: 0.18, Line: paper.Dashed}
		middle := s.cells[0].Right() + betweenCards/2
		c.Stroke(pen, paper.At(middle, 0), paper.At(middle, s.sheet.H))
		if len(s.cells) == 4 {
			middle := s.cells[0].Bottom() + betweenCards/2
			c.Stroke(pen, paper.At(0, middle), paper.At(s.sheet.W, middle))
		}
	})
}

// pour puts rows on as many upright pages as they need, under a heading that
// is repeated.
func (s Setter) pour(heading func(sheet int) paper.Block, rows []paper.Block, gap paper.Paper) []page {
	var pages []page
	for _, b := range fill(rows, gap, s.frame.H, heading) {
		pages = append(pages, page{s.paper.W, s.paper.H, b.At(s.frame.X, s.frame.Y)})
	}
	return pages
}

// fill stacks rows in blocks no higher than a height, each under its heading.
func fill(rows []paper.Block, gap, h paper.Paper, heading func(i int) paper.Block) []paper.Block {
	var all []paper.Block
	var now paper.Block
	fresh := true
	for _, row := range rows {
		if !fresh && now.H+gap+row.H > h {
			all = append(all, now)
			fresh = true
		}
		if fresh {
			now = heading(len(all))
			fresh = false
		}
		now.Below(row, gap)
	}
	if !fresh {
		all = append(all, now)
	}
	return all
}
