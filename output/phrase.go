package output

import (
	"strings"
	"unicode/utf8"
)

// phrase is running text with lengths in it, to be set in lines.
type phrase []word

// word is what a line is not broken inside of, unless it is longer than the
// line.
type word struct {
	letters Letters
	text    string
	number  *number // set in place of the text
	tied    bool    // to the word before: no space, no new line
	kept    bool    // on the line of the word before, a space between
}

// say adds words of plain text.
func (p phrase) say(l Letters, text string) phrase {
	for _, t := range strings.Fields(printable(text)) {
		p = append(p, word{letters: l, text: t})
	}
	return p
}

// tie adds text that stays with the word before it, without a space.
func (p phrase) tie(l Letters, text string) phrase {
	first := len(p)
	p = p.say(l, text)
	if first > 0 && len(p) > first {
		p[first].tied = true
	}
	return p
}

// keep adds text that is not broken and stays on the line of the word before.
func (p phrase) keep(l Letters, text string) phrase {
	return append(p, word{letters: l, text: printable(text), kept: true})
}

// count adds a built number.
func (p phrase) count(n number) phrase { return append(p, word{letters: n.letters, number: &n}) }

// space is the width of the gap between words.
func (w word) space() Paper { return w.letters.width(" ") }

func (w word) width() Paper {
	if w.number != nil {
		return w.number.width()
	}
	return w.letters.width(w.text)
}

// rise and drop are how far a word reaches over and under its baseline.
func (w word) rise() Paper {
	line := w.letters.rise(w.text)
	if w.number != nil {
		return max(line, w.number.rise())
	}
	return line
}

func (w word) drop() Paper {
	line := descender * em(w.letters.Height)
	if w.number != nil {
		return max(line, w.number.drop())
	}
	return line
}

// plainRise is the room above the baseline of letters without marks on them,
// in shares of a capital's height; brackets stand a little over capitals.
const plainRise = 1.15

// rise is how far a line of text reaches over its baseline.
func (l Letters) rise(text string) Paper {
	for _, r := range text {
		if r >= utf8.RuneSelf {
			return ascender * em(l.Height)
		}
	}
	return plainRise * l.Height
}

// set breaks the phrase into lines no wider than a width and returns them as
// a block of that width at most.
func (p phrase) set(width Paper) block {
	var b block
	for _, line := range p.lines(width) {
		b.below(line.block(), 0)
	}
	return b
}

// line is words on one baseline.
type line []word

// lines fills lines, the first words first.
func (p phrase) lines(width Paper) []line {
	var lines []line
	var now line
	var used Paper
	for _, group := range p.groups(width) {
		w := group.width()
		if len(now) > 0 {
			gap := now[len(now)-1].space()
			if used+gap+w > width+touching {
				lines, now, used = append(lines, now), nil, 0
			} else {
				used += gap
			}
		}
		now = append(now, group...)
		used += w
	}
	if len(now) > 0 {
		lines = append(lines, now)
	}
	return lines
}

// groups returns the words with those tied to them or kept by them; plain words wider than
// the line are cut in pieces.
func (p phrase) groups(width Paper) []line {
	var groups []line
	for _, w := range p {
		if (w.tied || w.kept) && len(groups) > 0 {
			last := &groups[len(groups)-1]
			if longer := append(*last, w); longer.width() <= width {
				*last = longer
				continue
			}
			w.tied = false
		}
		for _, piece := range w.pieces(width) {
			groups = append(groups, line{piece})
		}
	}
	return groups
}

// pieces cuts a word that is wider than a line, but not what belongs to a
// number.
func (w word) pieces(width Paper) []word {
	if w.number != nil || w.kept || w.width() <= width {
		return []word{w}
	}
	var pieces []word
	piece := w
	piece.text = ""
	for _, r := range w.text {
		longer := piece
		longer.text += string(r)
		if piece.text != "" && longer.width() > width {
			pieces = append(pieces, piece)
			longer.text = string(r)
		}
		piece = longer
	}
	return append(pieces, piece)
}

func (l line) width() Paper {
	var w Paper
	for i, word := range l {
		w += l.gap(i) + word.width()
	}
	return w
}

// gap is the space before a word of the line. A unit stays close to its
// number, however large that is.
func (l line) gap(i int) Paper {
	switch {
	case i == 0 || l[i].tied:
		return 0
	case l[i].kept:
		return l[i].space()
	}
	return l[i-1].space()
}

// block lays the line out. Neighbouring words in the same letters are one part.
func (l line) block() block {
	var rise, drop Paper
	for _, w := range l {
		rise, drop = max(rise, w.rise()), max(drop, w.drop())
	}
	b := block{h: rise + drop}
	var run word // plain words gathered so far
	var x, start Paper
	flush := func() {
		if run.text != "" {
			b.add(run.block(), start, rise-run.rise())
		}
		run.text = ""
	}
	for i, w := range l {
		gap := l.gap(i)
		x += gap
		switch {
		case w.number != nil:
			flush()
			b.add(w.block(), x, rise-w.rise())
		case run.text != "" && run.letters == w.letters:
			if gap > 0 {
				run.text += " "
			}
			run.text += w.text
		default:
			flush()
			run, start = w, x
		}
		x += w.width()
	}
	flush()
	b.h = rise + drop
	return b
}

// block returns the word as a block of one part.
func (w word) block() block {
	rise := w.rise()
	if w.number != nil {
		n := *w.number
		b := figure("number", w.width(), rise+w.drop(), func(c Canvas, at Point) { n.paint(c, at.Add(0, rise)) })
		b.parts[0].says = n.reading.String()
		return b
	}
	b := figure("text", w.width(), rise+w.drop(), func(c Canvas, at Point) { c.Text(at.Add(0, rise), w.letters, w.text) })
	b.parts[0].says = w.text
	return b
}
