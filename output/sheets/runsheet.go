package sheets

import (
	"fmt"
	"strconv"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// runSheet is the front of the deck: the setups in order, what to lay out, how
// long it takes, what to mind, and what was measured or assumed.
func (s Setter) runSheet(d *deck.Deck) []page {
	w := s.frame.W
	heading := func(sheet int) paper.Block {
		title := paper.Phrase{}.Say(s.bold(s.grade.title), d.Plan.Title).Say(s.Letters(s.grade.title), "run sheet")
		if sheet > 0 {
			title = title.Tie(s.Letters(s.grade.title), ", page "+strconv.Itoa(sheet+1))
			return title.Set(w)
		}
		return paper.Stack(1, title.Set(w), paper.Phrase{}.Say(s.Letters(s.grade.body), sums(d)).Set(w))
	}
	var rows []paper.Block
	for i := range d.Setups {
		rows = append(rows, s.setupRows(d, i)...)
	}
	rows = append(rows, s.section("Bits to lay out, and their diameters", s.bitRows(d))...)
	rows = append(rows, s.section("Warnings", s.warningRows(d))...)
	rows = append(rows, s.section("Assumed", s.assumptions(d))...)
	return s.pour(heading, rows, 1.5)
}

// sums counts what is done for the whole deck, and says how sure it is that
// nothing takes less.
func sums(d *deck.Deck) string {
	c := d.Changes
	of := "changes"
	if d.Plan.Shop.Minutes.Run > 0 {
		of = "changes and passes"
	}
	text := fmt.Sprintf("%s, %s. Changes: %s%s. About %g minutes of %s",
		wording.Plural(len(d.Setups), "setup"), wording.Plural(d.Runs(), "card"), wording.ChangesCounted(d), wording.CuttingCounted(d), c.Time.Minutes(), of)
	if v := wording.Verdict(c); v != "" {
		text += "; " + v
	}
	return text + "."
}

// setupRows are one setup: a rule, what is set, and its heights.
func (s Setter) setupRows(d *deck.Deck, i int) []paper.Block {
	u := &d.Setups[i]
	w := s.frame.W
	body, bold := s.Letters(s.grade.body), s.bold(s.grade.body)
	title := s.bold(s.grade.title)
	number := paper.Phrase{}.Say(title, strconv.Itoa(u.Number)).Set(w)
	side := s.grade.title*1.6 + title.Width(strconv.Itoa(len(d.Setups)))
	p := paper.Phrase{}
	if i > 0 && d.Setups[i-1].Bit == u.Bit {
		p = p.Say(body, "same bit,")
	} else {
		p = p.Say(bold, u.Bit.Name).Tie(body, ",")
	}
	p = s.Length(p.Say(body, "fence to near edge"), bold, u.Fence.NearEdge)
	p = p.Tie(body, ";").Say(body, fmt.Sprintf("%s, %s", wording.Plural(len(u.Runs), "card"), wording.Plural(pieces(u), "piece")))
	text := p.Set(w - side)
	lines := append(s.climbs(u, body, w-side), s.keptRows(u.Kept, w-side)...)
	text.Below(lines[0], 0.5)
	row := paper.Block{}
	row.Add(paper.Figure("rule", w, 0, func(c paper.Canvas, at paper.Point) { c.Stroke(paper.Thin, at, at.Add(w, 0)) }), 0, 0)
	row.Add(boxes(1, s.grade.title), 0, 1.5)
	row.Add(number, s.grade.title*1.3, 1.2)
	row.Add(text, side, 1.2)
	rows := []paper.Block{row}
	for _, line := range lines[1:] {
		more := paper.Block{}
		more.Add(line, side, 0)
		rows = append(rows, more)
	}
	return rows
}

// section puts a heading before rows, where there are any.
func (s Setter) section(heading string, rows []paper.Block) []paper.Block {
	if len(rows) == 0 {
		return nil
	}
	w := s.frame.W
	first := paper.Stack(1, paper.Phrase{}.Say(s.bold(s.grade.body), heading).Set(w), rows[0])
	gap := paper.Block{H: 1}
	gap.Below(first, 0)
	return append([]paper.Block{gap}, rows[1:]...)
}

// bitRows list the bits in the order they are first used, each with its
// diameter and where that comes from.
func (s Setter) bitRows(d *deck.Deck) []paper.Block {
	var rows []paper.Block
	seen := map[*joinery.Bit]bool{}
	body := s.Letters(s.grade.body)
	for i := range d.Setups {
		b := d.Setups[i].Bit
		if seen[b] {
			continue
		}
		seen[b] = true
		p := s.Length(paper.Phrase{}.Say(s.bold(s.grade.body), b.Name).Tie(body, ",").Say(body, b.Kind.String()+","), body, b.True())
		if b.Measured > 0 {
			p = p.Say(body, "measured")
		} else {
			p = p.Say(body, "as labelled, not measured")
		}
		rows = append(rows, ticked(p, 3.5, s.frame.W))
	}
	return rows
}

func (s Setter) warningRows(d *deck.Deck) []paper.Block {
	var rows []paper.Block
	for _, warning := range remark.Once(d) {
		rows = append(rows, paper.Phrase{}.Say(s.Letters(s.grade.body), warning.Text).Set(s.frame.W))
	}
	return rows
}

// assumptions say what the deck rests on.
func (s Setter) assumptions(d *deck.Deck) []paper.Block {
	body := s.Letters(s.grade.body)
	w := s.frame.W
	p := s.readOff(paper.Phrase{}.Say(body, "Lengths are in"), body, s.Scale)
	if s.other != nil {
		p = s.readOff(p.Tie(body, ";").Say(body, "in brackets in"), body, *s.other)
	}
	p = p.Tie(body, ".").Say(body, "A + or − behind a length: the true length is a hair more or less; it stands small beside.")
	rows := []paper.Block{p.Set(w)}
	bits := "Diameters of bits that are not measured are those of their labels; bits are seldom that size. Cut a trial slot, measure it, and let the marks follow."
	return append(rows, paper.Phrase{}.Say(body, bits).Set(w))
}

// readOff adds a unit and the division lengths are read off to.
func (s Setter) readOff(p paper.Phrase, l paper.Letters, scale joinery.Scale) paper.Phrase {
	p = p.Say(l, wording.UnitWord(scale.Unit)).Tie(l, ",").Say(l, "on a scale of")
	return p.Count(paper.Number{Letters: l, Reading: scale.Read(scale.Division)})
}
