package sheets

import (
	"fencecard/output/paper"
	"fencecard/output/wording"
)

// mindBox says the cautions of a setup in words.
func (s Setter) mindBox(m wording.Mind, w paper.Paper) paper.Block {
	const pad, between = 1.2, 4
	inner := w - 2*pad
	column := inner
	if inner >= twoColumns {
		column = (inner - between) / 2
	}
	var all paper.Phrase
	for _, p := range s.mindPhrases(m) {
		all = append(all, p...)
	}
	if len(all) == 0 {
		return paper.Block{}
	}
	columns := 1
	if column < inner {
		columns = 2
	}
	return paper.Framed(wide(runOn(all, columns, column, between), inner), pad, paper.Thin)
}

// runOn sets a phrase in columns of a width, to be read down.
func runOn(p paper.Phrase, columns int, column, between paper.Paper) paper.Block {
	lines := p.Lines(column)
	each := (len(lines) + columns - 1) / columns
	var all, now paper.Block
	x := paper.Paper(0)
	for i, l := range lines {
		now.Below(l.Block(), 0)
		if (i+1)%each == 0 || i == len(lines)-1 {
			all.Add(now, x, 0)
			now, x = paper.Block{}, x+column+between
		}
	}
	return all
}

// mindPhrases are the cautions of a setup and what is done at every run of it.
func (s Setter) mindPhrases(m wording.Mind) []paper.Phrase {
	var all []paper.Phrase
	for _, c := range m.All {
		all = append(all, s.minding(c, m.For(c.Runs)))
	}
	for _, words := range m.Do {
		all = append(all, paper.Phrase{}.Say(s.Letters(paper.Least), words))
	}
	return all
}

// minding is one caution, before it the runs that it holds for, unless it holds
// for all.
func (s Setter) minding(c wording.Minding, runs string) paper.Phrase {
	p := paper.Phrase{}
	l, b := s.Letters(paper.Least), s.Bold(paper.Least)
	return p.Say(b, c.Weight.String()).Say(b, runs).Say(l, c.Brief)
}
