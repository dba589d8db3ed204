package output

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// noteGap is the space between notes.
const noteGap Paper = 1

// notes say what to mind, the gravest cautions in full, and what to do.
func (s setter) notes(r *deck.Run) []phrase {
	body, bold, small := s.letters(s.grade.body), s.bold(s.grade.body), s.letters(least)
	full := min(inFull, len(r.Cautions))
	var all []phrase
	for _, caution := range r.Cautions[:full] {
		words := caution.Words
		if s.grade.brief {
			words = caution.Brief
		}
		all = append(all, phrase{}.say(s.bold(s.cautionSize()), caution.Weight.String()).say(s.letters(s.cautionSize()), words))
	}
	if rest := r.Cautions[full:]; len(rest) > 0 {
		all = append(all, s.byCode(rest))
	}
	all = append(all, s.todo(r, r.Cautions[:full]))
	if r.Cut.Note != "" {
		all = append(all, phrase{}.say(bold, "Note:").say(body, r.Cut.Note))
	}
	if lines := jointLines(r, s.scale); len(lines) > 0 {
		all = append(all, phrase{}.say(small, strings.Join(lines, " ")))
	}
	return append(all, s.deepest(r, small).say(small, remark.AlwaysMind))
}

// todo says what to do, step by step, and what becomes of round ends.
func (s setter) todo(r *deck.Run, inFull []deck.Caution) phrase {
	body, bold := s.letters(s.grade.body), s.bold(s.grade.body)
	var p phrase
	todo := steps(r, inFull, s.blocks)
	for i, step := range todo {
		if i == 0 {
			p = p.say(bold, "To do:")
		}
		if len(todo) > 1 { // one alone would be a stray number
			p = p.say(bold, strconv.Itoa(i+1)+")")
		}
		p = p.say(body, step.words(s.grade.compact))
	}
	if !r.Cut.Square && (r.Begin == deck.Drop || r.End == deck.Lift) {
		p = s.length(p.say(body, "The ends stay round, radius"), body, r.Step.Bit.True()/2).tie(body, ".")
	}
	return p
}

// cautionSize is the letter height of cautions.
func (s setter) cautionSize() Paper { return cmp.Or(s.grade.caution, s.grade.body) }

// byCode names cautions by their numbers on the page of cautions and a word.
func (s setter) byCode(cautions []deck.Caution) phrase {
	body, bold := s.letters(s.cautionSize()), s.bold(s.cautionSize())
	var p phrase
	for i, c := range cautions {
		if i == 0 || cautions[i-1].Weight != c.Weight {
			p = p.say(bold, c.Weight.String())
		}
		p = p.say(body, fmt.Sprintf("%d %s", c.Number, c.Code))
		if i < len(cautions)-1 {
			p = p.tie(body, ",")
		}
	}
	return p.say(body, "(see the page of cautions)")
}

// paragraphs sets phrases under each other, with a little space between.
func paragraphs(phrases []phrase, w Paper) block {
	var b block
	for _, p := range phrases {
		if len(p) > 0 {
			b.below(p.set(w), noteGap)
		}
	}
	return b
}

// pourIn sets as many of some phrases under each other as have room in a width
// and height, and returns the others.
func pourIn(phrases []phrase, w, h Paper) (block, []phrase) {
	var b block
	for i, p := range phrases {
		more := b
		more.below(p.set(w), noteGap)
		if more.h > h {
			return b, phrases[i:]
		}
		b = more
	}
	return b, nil
}

// lines sets phrases as a block for each line, to be poured over cards.
func lines(phrases []phrase, w Paper) []block {
	var all []block
	for _, p := range phrases {
		for _, l := range p.lines(w) {
			all = append(all, l.block())
		}
	}
	return all
}

// deepest says how deep one pass may be, and why.
func (s setter) deepest(r *deck.Run, l Letters) phrase {
	return s.length(phrase{}.say(l, "No pass deeper than"), l, r.Cap.Depth).tie(l, ":").say(l, r.Cap.Rule).tie(l, ".")
}
