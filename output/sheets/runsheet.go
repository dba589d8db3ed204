package sheets

import (
	"fmt"
	"iter"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/sheets/tick"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// sheets are the run sheet and the sheets of the setups, the first of which may stand
// under what goes on of the run sheet, or under that of a part of a deck.
func (s Setter) sheets(d *deck.Deck) iter.Seq[page] {
	return func(yield func(page) bool) {
		front := s.runSheet(d)
		last := len(front) - 1
		alone := last == 0 && !d.Part
		for i, b := range front {
			if (i < last || alone) && !yield(s.upright(b)) {
				return
			}
		}
		under := front[last]
		if alone {
			under = paper.Block{}
		}
		for p := range s.setupSheets(d, under) {
			if !yield(p) {
				return
			}
		}
	}
}

// runSheet is the front of the deck: the setups in order, what to lay out, how
// long it takes, what to mind, and what was measured or assumed.
func (s Setter) runSheet(d *deck.Deck) []paper.Block {
	w := s.Frame.W
	heading := func(sheet int) paper.Block {
		title := paper.Phrase{}.Say(s.Bold(6), d.Plan.Title).Say(s.Letters(5), "run sheet")
		if sheet > 0 {
			return paper.Phrase{}.Say(s.Bold(4), d.Plan.Title).Say(s.Letters(4), "run sheet, page "+strconv.Itoa(sheet+1)).Set(w)
		}
		return paper.Stack(1.5, title.Set(w), s.Say(w, sums(d, w < besidePicture)),
			s.ticked("0: pencil the names of their sides on all pieces, and check every order against them.", w))
	}
	var rows []paper.Block
	for i := range d.Setups {
		rows = append(rows, s.setupRow(d, i))
	}
	rows = append(rows, s.underSetups(d)...)
	if all := fill(rows, 0.5, s.body().H, heading); len(all) > 0 {
		return all
	}
	return []paper.Block{heading(0)}
}

// underSetups are the rows of a run sheet under its setups.
func (s Setter) underSetups(d *deck.Deck) []paper.Block {
	w := s.Frame.W
	rows := s.section("Bits to lay out, and their diameters", lined(s.bitRows(d), w, 6))
	rows = append(rows, s.section(sizesHeading, s.sizeRows(d))...)
	if d.Runs() == 0 { // nothing is assumed of bits, and nothing minded at a run
		return append(rows, s.section("Warnings: mend the plan", s.warningRows(d))...)
	}
	mend := "Warnings: mend the plan and print anew, or mind them at the table"
	if w < besidePicture {
		mend = "Warnings: mend the plan, or mind them"
	}
	rows = append(rows, s.section(mend, s.warningRows(d))...)
	rows = append(rows, s.section("Assumed", s.assumptions(d))...)
	return append(rows, s.section("At every run", s.ruleRows(w))...)
}

// ruleRows are the rules of every run, in lines where the paper is small.
func (s Setter) ruleRows(w paper.Paper) []paper.Block {
	if b := s.rules(w); b.H < s.body().H/2 {
		return []paper.Block{b}
	}
	return s.inLines(s.rulesPhrase(), w)
}

// inLines sets a phrase as one block or, where that would take much of a page,
// in blocks of a few lines.
func (s Setter) inLines(p paper.Phrase, w paper.Paper) []paper.Block {
	if b := p.Set(w); b.H < s.body().H/3 {
		return []paper.Block{b}
	}
	var rows []paper.Block
	for lines := range slices.Chunk(p.Lines(w), linesTogether) {
		var b paper.Block
		for _, l := range lines {
			b.Below(l.Block(), 0)
		}
		rows = append(rows, b)
	}
	return rows
}

// linesTogether is how many lines of a long text are not parted.
const linesTogether = 3

// sums counts what the deck is made of and what is set, in fewer words where the
// paper is small.
func sums(d *deck.Deck, small bool) string {
	c := d.Changes
	if d.Runs() == 0 {
		return "N" + wording.NothingToCut[1:] + ". Lengths are in " + wording.UnitWord(d.Plan.Shop.Scale.Unit) + "."
	}
	if small {
		text := fmt.Sprintf("%s, %s. To set: %s%s. %g min", wording.Plural(len(d.Setups), "setup"), wording.Plural(d.Runs(), "run"),
			wording.ChangesCounted(d), wording.CuttingCounted(d), c.Time.Minutes())
		if c.Proved {
			text += ", the least, proved"
		}
		return text + "."
	}
	of := "changes"
	if d.Plan.Shop.Minutes.Pass > 0 {
		of = "changes and passes"
	}
	text := fmt.Sprintf("%s, %s, %s for %s. To set: %s.", wording.Plural(len(d.Setups), "setup"), wording.Plural(d.Runs(), "run"),
		wording.Plural(len(d.Plan.Pieces), "piece card"), wording.Plural(pieces(d), "piece"), wording.ChangesCounted(d))
	if cut := strings.TrimPrefix(wording.CuttingCounted(d), ", "); cut != "" {
		text += " To cut: " + cut + "."
	}
	text += fmt.Sprintf(" About %g min of %s", c.Time.Minutes(), of)
	if v := wording.Verdict(c); v != "" {
		text += "; " + v
	}
	return text + "."
}

// pieces counts the pieces of all cards.
func pieces(d *deck.Deck) int {
	n := 0
	for i := range d.Plan.Pieces {
		n += d.Plan.Pieces[i].Count
	}
	return n
}

// setupRow is one setup: a box to tick, its bit and fence, its heights.
func (s Setter) setupRow(d *deck.Deck, i int) paper.Block {
	u := &d.Setups[i]
	w := s.Frame.W
	l, bold := s.Letters(paper.Least), s.Bold(3.2)
	number := s.Strong(w, 4.2, strconv.Itoa(u.Number))
	side := tick.Side + 3 + max(7, number.W) + 2
	p := paper.Phrase{}
	if d.BitStays(i) {
		p = p.Say(l, "same bit,")
	} else {
		p = p.Say(bold, u.Bit.Name).Tie(l, ",")
	}
	if w < besidePicture {
		p = p.Say(l, "near edge").Keep(bold, s.Plain(u.SetTo().NearEdge)).Tie(l, ";").Say(l, "up to").Keep(bold, s.Plain(u.SetAt(u.Heights[len(u.Heights)-1])))
		return s.setupLine(u, number, p, side)
	}
	heights := "heights"
	if len(u.Heights) == 1 {
		heights = "height"
	}
	p = p.Say(l, "fence to near edge").Keep(bold, s.Plain(u.SetTo().NearEdge)).Tie(l, ";").Say(l, heights)
	for k, h := range u.Rungs() {
		if n := len(u.Heights); n > mostListed && k > 0 && k < n-1 {
			if k == 1 {
				p = p.Tie(l, ",").Keep(l, "...")
			}
			continue
		}
		if k > 0 {
			p = p.Tie(l, ",")
		}
		p = p.Keep(bold, s.Plain(h))
	}
	p = p.Tie(l, ";").Say(l, wording.Plural(len(u.Runs), "run"))
	if pairs := wording.Pairs(u, s.Blocks); pairs != "" {
		p = p.Tie(l, ",").Say(l, pairs)
	}
	return s.setupLine(u, number, p, side)
}

// setupLine sets the words of a setup behind its box and its number.
func (s Setter) setupLine(u *deck.Setup, number paper.Block, p paper.Phrase, side paper.Paper) paper.Block {
	w := s.Frame.W
	row := rule(w, paper.Thin)
	row.Add(tick.Boxes(1, tick.Side), 0, 0.8)
	row.Add(number, tick.Side+3, 0.7)
	row.Add(p.Set(w-side), side, 1)
	if u.Kept != nil {
		for _, line := range u.Kept.Learnt {
			row.Below(indented(s.Strong(w-side, paper.Least, line), side), 0.3)
		}
	}
	return row
}

// mostListed is how many heights the run sheet lists; of more, the first and
// the last.
const mostListed = 12

// section puts a heading before rows, where there are any.
func (s Setter) section(heading string, rows []paper.Block) []paper.Block {
	if len(rows) == 0 {
		return nil
	}
	first := paper.Stack(0.7, paper.Block{H: 0.5}, s.Strong(s.Frame.W, 3.4, heading), rows[0])
	return append([]paper.Block{first}, rows[1:]...)
}

// bitRows list the bits in the order they are first used, each with its
// diameter and where that comes from.
func (s Setter) bitRows(d *deck.Deck) []paper.Block {
	var rows []paper.Block
	var seen []*joinery.Bit
	for i := range d.Setups {
		b := d.Setups[i].Bit
		if slices.Contains(seen, b) {
			continue
		}
		seen = append(seen, b)
		says := s.Plain(b.True()) + " " + wording.WidthFrom(b, s.Plain)
		if kind := wording.KindOf(b); kind != "" {
			says = kind + " " + says
		}
		if collet := wording.Collet(b, s.Scale); collet != "" && s.Frame.W >= besidePicture { // smaller, the setup's card has it
			says += ", " + collet
		}
		rows = append(rows, s.ticked(b.Name+", "+says, s.Frame.W))
	}
	return rows
}

func (s Setter) warningRows(d *deck.Deck) []paper.Block {
	var rows []paper.Block
	for _, warning := range remark.Once(d) {
		rows = append(rows, s.inLines(paper.Phrase{}.Say(s.Letters(paper.Least), wording.AtTheTable(warning.Text)), s.Frame.W)...)
	}
	return rows
}

// assumptions say what the deck rests on.
func (s Setter) assumptions(d *deck.Deck) []paper.Block {
	by, text := ", on a scale of ", "Lengths are in "
	hair := ". A + or − behind a length: a hair more or less, the true length beside it in brackets. "
	bits := "Bits not measured are taken for the size on their labels, which they seldom are: try a groove, measure, let the marks follow."
	if s.Frame.W < besidePicture {
		by, text = ", by ", "In "
		hair = ". A + or − is a hair more or less; true length in brackets. "
		bits = "Bits not measured are taken as labelled, seldom true: measure a trial groove."
	}
	read := func(scale measure.Scale) string {
		return wording.UnitWord(scale.Unit) + by + scale.Format(scale.Division)
	}
	text += read(s.Scale)
	if s.Other != nil {
		text += "; in brackets in " + read(*s.Other)
	}
	return []paper.Block{s.Say(s.Frame.W, text+hair+bits+wording.ExampleShop(&d.Plan.Shop))}
}
