package sheets

import (
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Space between the parts of a card.
const (
	cardGap  paper.Paper = 3
	panelPad paper.Paper = 2
)

// Shares of the row below the drawing from above: the section, and the notes.
const (
	sectionShare = 0.42
	notesShare   = 0.55
	aboveShare   = 0.6 // of the room for both drawings
)

// card lays one card out. What does not fit on one goes on several slips.
func (s Setter) card(u *deck.Setup, r *deck.Run) []paper.Block {
	if b, ok := s.whole(u, r); ok {
		return []paper.Block{b}
	}
	return s.inSlips(u, r)
}

// split lays a card out on several slips: on the second or later the drawings,
// and more if the notes are long. The first note, which is the gravest caution,
// is on the slip of that number.
func (s Setter) split(u *deck.Setup, r *deck.Run) (slips []paper.Block, gravest int) {
	w, h := s.cells[0].W, s.cells[0].H
	cards := fill(s.cardWords(u, r), cardGap, h, func(i int) paper.Block {
		if i == 0 {
			return paper.Block{} // the first row is the head itself
		}
		return s.again(r, w, i+1, ", continued")
	})
	last := len(cards) - 1
	words := cards[last:]
	told := 0 // cautions under the first words
	if last > 0 {
		cards[0], told = s.underFirst(cards[0], r)
	} else {
		words = nil
		for _, large := range s.roomier() {
			words = append(words, paper.Stack(cardGap, large.cardWords(u, r)...))
		}
	}
	rest, gravest := s.onTwo(words, last+1, told, u, r)
	if told > 0 {
		gravest = 1
	}
	return append(cards[:last], rest...), gravest
}

// onTwo puts the drawings on a slip of their own. The notes stand under the
// words as far as there is room, the gravest first, and go on beside or under
// the drawings; what has room on neither slip goes on more. The words are the
// same in several sizes, the largest first; they are on the slip with a number.
// Some cautions were told before. It tells which slip the first note is on.
func (s Setter) onTwo(words []paper.Block, number, told int, u *deck.Setup, r *deck.Run) (slips []paper.Block, noted int) {
	w, h := s.cells[0].W, s.cells[0].H
	head := s.again(r, w, number+1, ", drawings")
	bare, _ := s.stacked(head, u, r, nil)
	with := func(notes []paper.Phrase) (paper.Block, bool) {
		if len(notes) == 0 {
			return bare.Block, true
		}
		smallest := min(nearBy, bare.bit)
		if b, ok := s.onOne(head, u, r, notes); ok && b.bit >= smallest {
			return b.Block, true
		}
		under := paragraphs(notes, w)
		b, ok := s.shorter(under.H+cardGap).stacked(head, u, r, nil)
		return paper.Stack(cardGap, b.Block, under), ok && b.bit >= smallest
	}
	// What the drawings leave no room for, line by line on more slips.
	spread := func(rest []paper.Phrase) (slips []paper.Block, drawn int) {
		for n := len(rest); ; n-- {
			if drawings, ok := with(rest[:n]); ok {
				return append([]paper.Block{drawings}, fill(lines(rest[n:], w), 0, h, func(i int) paper.Block {
					return paper.Stack(0, s.again(r, w, number+2+i, ", notes"), paper.Block{H: cardGap})
				})...), n
			}
		}
	}
	ways := s.briefer()
	for _, brief := range ways {
		notes := brief.notes(r)[told:]
		first, rest := s.underWords(words, notes)
		if drawings, ok := with(rest); ok && len(rest) < len(notes) {
			return []paper.Block{first, drawings}, number
		}
	}
	// The gravest caution under the words is worth more slips.
	for _, brief := range ways {
		notes := brief.notes(r)[told:]
		if first, rest := s.underWords(words, notes); len(rest) < len(notes) {
			more, _ := spread(rest)
			return append([]paper.Block{first}, more...), number
		}
	}
	for _, brief := range ways {
		first, rest := s.underWords(words, brief.notes(r)[told:])
		if drawings, ok := with(rest); ok {
			return []paper.Block{first, drawings}, number + 1
		}
	}
	first, rest := s.underWords(words, ways[0].notes(r)[told:])
	more, drawn := spread(rest)
	if drawn > 0 {
		return append([]paper.Block{first}, more...), number + 1
	}
	return append([]paper.Block{first}, more...), number + 2
}

// underFirst puts as many cautions as it can under the first of several slips
// of words, and counts them.
func (s Setter) underFirst(words paper.Block, r *deck.Run) (paper.Block, int) {
	w, h := s.cells[0].W, s.cells[0].H
	for _, brief := range s.briefer() {
		full := brief.notes(r)[:min(wording.InFull, len(r.Cautions))]
		if under, rest := pourIn(full, w, h-words.H-cardGap); len(rest) < len(full) {
			return paper.Stack(cardGap, words, under), len(full) - len(rest)
		}
	}
	return words, 0
}

// underWords puts as many notes as it can under words, and these in the
// largest size that leaves the same notes room. It returns the other notes.
func (s Setter) underWords(words []paper.Block, notes []paper.Phrase) (paper.Block, []paper.Phrase) {
	w, h := s.cells[0].W, s.cells[0].H
	_, most := pourIn(notes, w, h-words[len(words)-1].H-cardGap)
	for _, b := range words {
		if under, rest := pourIn(notes, w, h-b.H-cardGap); len(rest) == len(most) && b.H <= h+paper.Touching {
			return paper.Stack(cardGap, b, under), rest
		}
	}
	return words[len(words)-1], notes
}

// shorter returns the setter for cards that leave some room at the foot.
func (s Setter) shorter(by paper.Paper) Setter {
	cell := s.cells[0]
	cell.H -= by
	s.cells = []paper.Box{cell}
	return s
}

// whole puts everything on one card if it can be, the drawings distinct or at
// least to be read near by, the numbers and the letters of the cautions as
// large as leaves that.
func (s Setter) whole(u *deck.Setup, r *deck.Run) (paper.Block, bool) {
	bit := paper.Paper(u.Bit.True().Millimetres())
	var legible paper.Block
	found := false
	for _, brief := range s.briefer() {
		notes := brief.notes(r)
		for _, low := range brief.lower() {
			words := paper.Stack(cardGap, low.cardWords(u, r)...)
			b, ok := low.onOne(words, u, r, notes)
			if ok && b.bit >= min(distinct, bit) {
				return b.Block, true
			}
			if ok && b.bit >= min(nearBy, bit) && !found {
				legible, found = b.Block, true
			}
		}
	}
	return legible, found
}

// briefer are the ways to set the cautions, each in less room: in all their
// words, in a few, and these in small letters. A small card has the few at
// once.
func (s Setter) briefer() []Setter {
	full, brief, small := s, s, s
	brief.grade.brief, small.grade.brief = true, true
	small.grade.caution = paper.Least
	switch {
	case s.grade.body == paper.Least:
		return []Setter{brief}
	case s.grade.compact:
		return []Setter{brief, small}
	}
	return []Setter{full, brief, small}
}

// lower are the sizes of the numbers, the largest first.
func (s Setter) lower() []Setter {
	all := s.roomier()
	for {
		if s.grade.height = paper.StepDown(s.grade.height); s.grade.height < s.grade.body {
			return all
		}
		all = append(all, s)
	}
}

// roomier are the sizes of the fence distances and marks, the largest first
// and those that a card always has room for last.
func (s Setter) roomier() []Setter {
	var all []Setter
	for _, r := range s.grade.roomy {
		large := s
		large.grade.value, large.grade.aside = r.value, r.aside
		all = append(all, large)
	}
	return append(all, s)
}

// drawn is a block with the two drawings to scale in it.
type drawn struct {
	paper.Block
	bit paper.Paper // how large the bit is in the smaller of the two
}

// How large a bit must be on paper for a drawing to be distinct, and to be read
// near by; where that cannot be had on one card the drawings go on a second.
const (
	distinct paper.Paper = 2.6
	nearBy   paper.Paper = 1.5
)

// onOne puts everything on one card, the drawings under each other if they can
// be read from a distance so, else in the way that makes them larger. It
// reports whether there was room.
func (s Setter) onOne(words paper.Block, u *deck.Setup, r *deck.Run, notes []paper.Phrase) (drawn, bool) {
	best, ok := s.stacked(words, u, r, notes)
	if ok && best.bit >= s.grade.bit {
		return best, true
	}
	if abreast, fits := s.abreast(words, u, r, notes); fits && (!ok || abreast.bit > best.bit) {
		return abreast, true
	}
	return best, ok
}

// stacked puts the two drawings under what is there, and the notes beside the
// second.
func (s Setter) stacked(words paper.Block, u *deck.Setup, r *deck.Run, notes []paper.Phrase) (drawn, bool) {
	w, h := s.cells[0].W, s.cells[0].H
	rest := h - words.H - 2*cardGap
	beside := paragraphs(notes, w*notesShare)
	across := w
	if len(notes) > 0 {
		across = w * sectionShare
	}
	above, ok := s.fromAbove(u, r, w, rest-max(beside.H, rest*(1-aboveShare)))
	if !ok {
		return drawn{}, false
	}
	lower, ok := s.infeedEnd(u, r, across, rest-above.H)
	lower.Add(beside, w-w*notesShare, 0)
	b := paper.Stack(cardGap, words, above.Block, lower.Block)
	return drawn{b, min(above.bit, lower.bit)}, ok && b.H <= h+paper.Touching
}

// abreast puts the two drawings beside each other, and the notes under them.
func (s Setter) abreast(words paper.Block, u *deck.Setup, r *deck.Run, notes []paper.Phrase) (drawn, bool) {
	w, h := s.cells[0].W, s.cells[0].H
	below := paragraphs(notes, w)
	rest := h - words.H - below.H - 2*cardGap
	above, ok := s.fromAbove(u, r, w*0.6, rest)
	if !ok {
		return drawn{}, false
	}
	section, ok := s.infeedEnd(u, r, w*0.36, rest)
	above.Add(section.Block, w-section.W, 0)
	return drawn{paper.Stack(cardGap, words, above.Block, below), min(above.bit, section.bit)}, ok
}
