package paper

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Phrase is running text with lengths in it, to be set in lines.
type Phrase []Word

// Word is what a line is not broken inside of, unless it is longer than the
// line.
type Word struct {
	Letters Letters
	text    string
	number  *Number // set in place of the text
	tied    bool    // to the word before: no space, no new line
	kept    bool    // on the line of the word before, a space between
}

// Say adds words of plain text. A fraction stays with the whole number before it.
func (p Phrase) Say(l Letters, text string) Phrase {
	before := ""
	for _, t := range strings.Fields(Printable(text)) {
		p = append(p, Word{Letters: l, text: t, kept: whole(before) && fraction(t)})
		before = t
	}
	return p
}

// whole reports whether a word ends in a whole number, as "6" or "(-6" do.
func whole(word string) bool {
	word = strings.TrimLeft(word, "(-−")
	return word != "" && strings.Trim(word, digits) == ""
}

// fraction reports whether a word begins with a fraction, as "17/32" or "17/32," do.
func fraction(word string) bool {
	over, under, ok := strings.Cut(word, "/")
	return ok && whole(over) && under != "" && strings.ContainsAny(under[:1], digits)
}

const digits = "0123456789"

// Tie adds text that stays with the word before it, without a space.
func (p Phrase) Tie(l Letters, text string) Phrase {
	first := len(p)
	p = p.Say(l, text)
	if first > 0 && len(p) > first {
		p[first].tied = true
	}
	return p
}

// Keep adds text that is not broken and stays on the line of the word before.
func (p Phrase) Keep(l Letters, text string) Phrase {
	return append(p, Word{Letters: l, text: Printable(text), kept: true})
}

// Sentences parts the phrase after every full stop that ends a sentence, what stands
// in brackets behind one staying with it.
func (p Phrase) Sentences() []Phrase {
	var all []Phrase
	first := 0
	for i, w := range p {
		if i == len(p)-1 || w.ends(p[i+1]) {
			all = append(all, p[first:i+1:i+1])
			first = i + 1
		}
	}
	return all
}

// ends reports whether a word is the last of a sentence, another one being next.
func (w Word) ends(next Word) bool {
	first, _ := utf8.DecodeRuneInString(next.text)
	switch {
	case next.tied || next.kept || first == '(':
		return false
	case strings.HasSuffix(w.text, ")"):
		return !unicode.IsLower(first) && first != utf8.RuneError
	}
	return strings.HasSuffix(w.text, ".")
}

// Count adds a built number.
func (p Phrase) Count(n Number) Phrase { return append(p, Word{Letters: n.Letters, number: &n}) }

// space is the width of the gap between words.
func (w Word) space() Paper { return w.Letters.Width(" ") }

func (w Word) width() Paper {
	if w.number != nil {
		return w.number.width()
	}
	return w.Letters.Width(w.text)
}

// Rise and drop are how far a word reaches over and under its baseline.
func (w Word) Rise() Paper {
	line := w.Letters.rise(w.text)
	if w.number != nil {
		return max(line, w.number.Rise())
	}
	return line
}

func (w Word) drop() Paper {
	line := Descender * Em(w.Letters.Height)
	if w.number != nil {
		return max(line, w.number.Drop())
	}
	return line
}

// plainRise is the room above the baseline of letters without marks on them,
// in shares of a capital's height; brackets stand a little over capitals.
const plainRise = 1.15

// low are signs that stand no higher than a capital, as few outside ASCII do.
const low = "–—−•·×…"

// rise is how far a line of text reaches over its baseline.
func (l Letters) rise(text string) Paper {
	for _, r := range text {
		if r >= utf8.RuneSelf && !strings.ContainsRune(low, r) {
			return Ascender * Em(l.Height)
		}
	}
	return plainRise * l.Height
}

// Set breaks the phrase into lines no wider than a width and returns them as
// a block of that width at most.
func (p Phrase) Set(width Paper) Block {
	var b Block
	for _, line := range p.Lines(width) {
		b.Below(line.Block(), 0)
	}
	return b
}

// line is words on one baseline.
type line []Word

// Lines fills lines, the first words first.
func (p Phrase) Lines(width Paper) []line {
	var lines []line
	var now line
	var used Paper
	for _, group := range p.groups(width) {
		w := group.width()
		if len(now) > 0 {
			gap := now[len(now)-1].space()
			if group[0].kept {
				gap = group[0].space()
			}
			if used+gap+w > width+Touching {
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
func (p Phrase) groups(width Paper) []line {
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
func (w Word) pieces(width Paper) []Word {
	if w.number != nil || w.kept || w.width() <= width {
		return []Word{w}
	}
	var pieces []Word
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

// Block lays the line out. Neighbouring words in the same letters are one part.
func (l line) Block() Block {
	var rise, drop Paper
	for _, w := range l {
		rise, drop = max(rise, w.Rise()), max(drop, w.drop())
	}
	b := Block{H: rise + drop}
	var run Word // plain words gathered so far
	var x, start Paper
	flush := func() {
		if run.text != "" {
			b.Add(run.block(), start, rise-run.Rise())
		}
		run.text = ""
	}
	for i, w := range l {
		gap := l.gap(i)
		x += gap
		switch {
		case w.number != nil:
			flush()
			b.Add(w.block(), x, rise-w.Rise())
		case run.text != "" && run.Letters == w.Letters:
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
	b.H = rise + drop
	return b
}

// block returns the word as a block of one part.
func (w Word) block() Block {
	rise := w.Rise()
	if w.number != nil {
		n := *w.number
		b := Figure("number", w.width(), rise+w.drop(), func(c Canvas, at Point) { n.paint(c, at.Add(0, rise)) })
		b.Parts[0].Says = n.Reading.String()
		return b
	}
	b := Figure("text", w.width(), rise+w.drop(), func(c Canvas, at Point) { c.Text(at.Add(0, rise), w.Letters, w.text) })
	b.Parts[0].Says = w.text
	return b
}
