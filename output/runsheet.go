package output

import (
	"fmt"
	"strconv"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// runSheet is the front of the deck: the setups in order, what to lay out, how
// long it takes, what to mind, and what was measured or assumed.
func (s setter) runSheet(d *deck.Deck) []page {
	w := s.frame.W
	heading := func(sheet int) block {
		title := phrase{}.say(s.bold(s.grade.title), d.Plan.Title).say(s.letters(s.grade.title), "run sheet")
		if sheet > 0 {
			title = title.tie(s.letters(s.grade.title), ", page "+strconv.Itoa(sheet+1))
			return title.set(w)
		}
		return stack(1, title.set(w), phrase{}.say(s.letters(s.grade.body), sums(d)).set(w))
	}
	var rows []block
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
	text := fmt.Sprintf("%s, %s. Changes: %s. About %g minutes of changes",
		plural(len(d.Setups), "setup"), plural(d.Runs(), "card"), changesCounted(d), c.Time.Minutes())
	if v := verdict(c); v != "" {
		text += "; " + v
	}
	return text + "."
}

// setupRows are one setup: a rule, what is set, and its heights.
func (s setter) setupRows(d *deck.Deck, i int) []block {
	u := &d.Setups[i]
	w := s.frame.W
	body, bold := s.letters(s.grade.body), s.bold(s.grade.body)
	title := s.bold(s.grade.title)
	number := phrase{}.say(title, strconv.Itoa(u.Number)).set(w)
	side := s.grade.title*1.6 + title.width(strconv.Itoa(len(d.Setups)))
	p := phrase{}
	if i > 0 && d.Setups[i-1].Bit == u.Bit {
		p = p.say(body, "same bit,")
	} else {
		p = p.say(bold, u.Bit.Name).tie(body, ",")
	}
	p = s.length(p.say(body, "fence to near edge"), bold, u.Fence.NearEdge)
	p = p.tie(body, ";").say(body, fmt.Sprintf("%s, %s", plural(len(u.Runs), "card"), plural(pieces(u), "piece")))
	text := p.set(w - side)
	lines := append(s.climbs(u, body, w-side), s.keptRows(u.Kept, w-side)...)
	text.below(lines[0], 0.5)
	row := block{}
	row.add(figure("rule", w, 0, func(c Canvas, at Point) { c.Stroke(thin, at, at.Add(w, 0)) }), 0, 0)
	row.add(boxes(1, s.grade.title), 0, 1.5)
	row.add(number, s.grade.title*1.3, 1.2)
	row.add(text, side, 1.2)
	rows := []block{row}
	for _, line := range lines[1:] {
		more := block{}
		more.add(line, side, 0)
		rows = append(rows, more)
	}
	return rows
}

// section puts a heading before rows, where there are any.
func (s setter) section(heading string, rows []block) []block {
	if len(rows) == 0 {
		return nil
	}
	w := s.frame.W
	first := stack(1, phrase{}.say(s.bold(s.grade.body), heading).set(w), rows[0])
	gap := block{h: 1}
	gap.below(first, 0)
	return append([]block{gap}, rows[1:]...)
}

// bitRows list the bits in the order they are first used, each with its
// diameter and where that comes from.
func (s setter) bitRows(d *deck.Deck) []block {
	var rows []block
	seen := map[*joinery.Bit]bool{}
	body := s.letters(s.grade.body)
	for i := range d.Setups {
		b := d.Setups[i].Bit
		if seen[b] {
			continue
		}
		seen[b] = true
		p := s.length(phrase{}.say(s.bold(s.grade.body), b.Name).tie(body, ",").say(body, b.Kind.String()+","), body, b.True())
		if b.Measured > 0 {
			p = p.say(body, "measured")
		} else {
			p = p.say(body, "as labelled, not measured")
		}
		rows = append(rows, ticked(p, 3.5, s.frame.W))
	}
	return rows
}

func (s setter) warningRows(d *deck.Deck) []block {
	var rows []block
	for _, warning := range remark.Once(d) {
		rows = append(rows, phrase{}.say(s.letters(s.grade.body), warning.Text).set(s.frame.W))
	}
	return rows
}

// assumptions say what the deck rests on.
func (s setter) assumptions(d *deck.Deck) []block {
	body := s.letters(s.grade.body)
	w := s.frame.W
	p := s.readOff(phrase{}.say(body, "Lengths are in"), body, s.scale)
	if s.other != nil {
		p = s.readOff(p.tie(body, ";").say(body, "in brackets in"), body, *s.other)
	}
	p = p.tie(body, ".").say(body, "A + or − behind a length: the true length is a hair more or less; it stands small beside.")
	rows := []block{p.set(w)}
	bits := "Diameters of bits that are not measured are those of their labels; bits are seldom that size. Cut a trial slot, measure it, and let the marks follow."
	return append(rows, phrase{}.say(body, bits).set(w))
}

// readOff adds a unit and the division lengths are read off to.
func (s setter) readOff(p phrase, l Letters, scale joinery.Scale) phrase {
	p = p.say(l, unitWord(scale.Unit)).tie(l, ",").say(l, "on a scale of")
	return p.count(number{letters: l, reading: scale.Read(scale.Division)})
}
