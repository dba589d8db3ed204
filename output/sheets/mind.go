package sheets

import (
	"cmp"
	"slices"
	"strings"

	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/remark/trade"
)

// mindBox says the cautions of a setup in words.
func (s Setter) mindBox(m wording.Mind, w paper.Paper) paper.Block {
	const pad, between = 0.6, 3
	inner := w - 2*pad
	column := inner
	if inner >= twoColumns {
		column = (inner - between) / 2
	}
	all := slices.Concat(s.mindPhrases(m)...)
	if len(all) == 0 {
		return paper.Block{}
	}
	columns := 1
	if column < inner {
		columns = 2
	}
	return paper.Framed(wide(runOn(all, columns, column, between), inner), pad, paper.Thin)
}

// mindLines says them on lines as wide as the paper, which takes less of a small one.
func (s Setter) mindLines(m wording.Mind, w paper.Paper) paper.Block {
	return slices.Concat(s.mindPhrases(m)...).Set(w)
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

// mindPhrases are the cautions of a setup and what is done at every run of it:
// the signal word once before all of its weight, a bullet before each; what holds
// for the same runs stands together behind their numbers.
func (s Setter) mindPhrases(m wording.Mind) []paper.Phrase {
	l, b := s.Letters(paper.Least), s.Bold(paper.Least)
	var all []paper.Phrase
	said := make([]bool, len(m.All))
	for i, c := range m.All {
		if said[i] {
			continue
		}
		p := paper.Phrase{}
		if i == 0 || m.All[i-1].Weight != c.Weight {
			p = p.Say(b, c.Weight.String())
		}
		runs, words := m.For(c.Runs), ""
		for k, other := range m.All {
			if k == i || k > i && runs != "" && other.Weight == c.Weight && m.For(other.Runs) == runs {
				words += " " + other.Brief
				said[k] = true
			}
		}
		if runs != "" {
			first, rest, _ := strings.Cut(strings.TrimSpace(words), " ")
			p = bulleted(p, b, runs).Keep(l, first).Say(l, rest)
		} else {
			p = bulleted(p, l, words)
		}
		all = append(all, p)
	}
	for _, words := range m.Do {
		all = append(all, bulleted(nil, l, words))
	}
	return all
}

// bulleted adds words behind a bullet, which stays with the first of them, and with the
// signal word before it.
func bulleted(p paper.Phrase, l paper.Letters, words string) paper.Phrase {
	bold := l
	bold.Face = paper.Bold
	first, rest, _ := strings.Cut(strings.TrimSpace(words), " ")
	if len(p) > 0 {
		p = p.Keep(bold, bullet)
	} else {
		p = p.Say(bold, bullet)
	}
	return p.Keep(l, first).Say(l, rest)
}

// bullet parts the cautions of a weight.
const bullet = "•"

// rules sets the rules that hold at every run, in two columns unless one is lower.
func (s Setter) rules(w paper.Paper) paper.Block {
	one := s.rulesPhrase().Set(w)
	if two := runOn(s.rulesPhrase(), 2, (w-4)/2, 4); w >= twoColumns && two.H <= one.H {
		return two
	}
	return one
}

func (s Setter) rulesPhrase() paper.Phrase {
	var all paper.Phrase
	rules := trade.Everywhere()
	for i, c := range rules {
		signal, words := c.Weight.String(), c.Words
		if s.Frame.W < besidePicture {
			if i > 0 && c.Weight == rules[i-1].Weight {
				signal = "•" // as under the head of a setup
			}
			words = cmp.Or(c.Brief, words)
		}
		all = all.Say(s.Bold(paper.Least), signal).Say(s.Letters(paper.Least), words)
	}
	return all
}
