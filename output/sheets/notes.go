package sheets

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// noteGap is the space between notes.
const noteGap paper.Paper = 1

// notes say what to mind, the gravest cautions in full, and what to do.
func (s Setter) notes(r *deck.Run) []paper.Phrase {
	body, bold, small := s.Letters(s.grade.body), s.bold(s.grade.body), s.Letters(paper.Least)
	full := min(wording.InFull, len(r.Cautions))
	var all []paper.Phrase
	for _, caution := range r.Cautions[:full] {
		words := caution.Words
		if s.grade.brief {
			words = caution.Brief
		}
		all = append(all, paper.Phrase{}.Say(s.bold(s.cautionSize()), caution.Weight.String()).Say(s.Letters(s.cautionSize()), words))
	}
	if rest := r.Cautions[full:]; len(rest) > 0 {
		all = append(all, s.byCode(rest))
	}
	all = append(all, s.todo(r, r.Cautions[:full]))
	if r.Cut.Note != "" {
		all = append(all, paper.Phrase{}.Say(bold, "Note:").Say(body, r.Cut.Note))
	}
	if lines := wording.JointLines(r, s.Scale); len(lines) > 0 {
		all = append(all, paper.Phrase{}.Say(small, strings.Join(lines, " ")))
	}
	return append(all, s.deepest(r, small).Say(small, remark.AlwaysMind))
}

// todo says what to do, step by step, and what becomes of round ends.
func (s Setter) todo(r *deck.Run, inFull []deck.Caution) paper.Phrase {
	body, bold := s.Letters(s.grade.body), s.bold(s.grade.body)
	var p paper.Phrase
	todo := append(wording.Crossing(r, s.Scale, s.push), wording.Steps(r, inFull, s.blocks)...)
	for i, step := range todo {
		if i == 0 {
			p = p.Say(bold, "To do:")
		}
		if len(todo) > 1 { // one alone would be a stray number
			p = p.Say(bold, strconv.Itoa(i+1)+")")
		}
		p = p.Say(body, step.Words(s.grade.compact))
	}
	if !r.Cut.Square && (r.Begin == deck.Drop || r.End == deck.Lift) {
		p = s.Length(p.Say(body, "The ends stay round, radius"), body, r.Step.Bit.True()/2).Tie(body, ".")
	}
	return p
}

// cautionSize is the letter height of cautions.
func (s Setter) cautionSize() paper.Paper { return cmp.Or(s.grade.caution, s.grade.body) }

// byCode names cautions by their numbers on the page of cautions and a word.
func (s Setter) byCode(cautions []deck.Caution) paper.Phrase {
	body, bold := s.Letters(s.cautionSize()), s.bold(s.cautionSize())
	var p paper.Phrase
	for i, c := range cautions {
		if i == 0 || cautions[i-1].Weight != c.Weight {
			p = p.Say(bold, c.Weight.String())
		}
		p = p.Say(body, fmt.Sprintf("%d %s", c.Number, c.Code))
		if i < len(cautions)-1 {
			p = p.Tie(body, ",")
		}
	}
	return p.Say(body, "(see the page of cautions)")
}

// paragraphs sets phrases under each other, with a little space between.
func paragraphs(phrases []paper.Phrase, w paper.Paper) paper.Block {
	var b paper.Block
	for _, p := range phrases {
		if len(p) > 0 {
			b.Below(p.Set(w), noteGap)
		}
	}
	return b
}

// pourIn sets as many of some phrases under each other as have room in a width
// and height, and returns the others.
func pourIn(phrases []paper.Phrase, w, h paper.Paper) (paper.Block, []paper.Phrase) {
	var b paper.Block
	for i, p := range phrases {
		more := b
		more.Below(p.Set(w), noteGap)
		if more.H > h {
			return b, phrases[i:]
		}
		b = more
	}
	return b, nil
}

// lines sets phrases as a block for each line, to be poured over cards.
func lines(phrases []paper.Phrase, w paper.Paper) []paper.Block {
	var all []paper.Block
	for _, p := range phrases {
		for _, l := range p.Lines(w) {
			all = append(all, l.Block())
		}
	}
	return all
}

// deepest says how deep one pass may be, and why.
func (s Setter) deepest(r *deck.Run, l paper.Letters) paper.Phrase {
	return s.Length(paper.Phrase{}.Say(l, "No pass deeper than"), l, r.Cap.Depth).Tie(l, ":").Say(l, r.Cap.Rule).Tie(l, ".")
}
