// Package setting has what every page of a deck is set in: the paper, the scale
// that lengths are read off, and how words and lengths are set there.
package setting

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/wording"
)

// Setter knows what every page of a deck is set in: the paper, the scale
// lengths are read off, and what the shop works with.
type Setter struct {
	Page   paper.Box // the whole page, upright
	Frame  paper.Box // inside its margins
	Scale  measure.Scale
	Other  *measure.Scale // the second unit, where both are printed
	Reach  joinery.FenceReach
	Blocks bool   // the shop sets stop blocks
	Router int    // its highest speed
	Title  string // of the deck
	Code   string
}

// Number sets a length.
func (s Setter) Number(l paper.Letters, length measure.Length) paper.Number {
	return paper.Number{Letters: l, Reading: s.Scale.Read(length)}
}

// Exactly adds a built number to a phrase and small beside it the exact value
// where the number is not. Where both units are wanted each has its name, and
// the second is in brackets, lest the two read as one number.
func (s Setter) Exactly(p paper.Phrase, n paper.Number, length measure.Length) paper.Phrase {
	p = p.Count(n)
	small := s.Letters(paper.Least)
	if text := wording.Beside(n.Reading); text != "" {
		p = p.Keep(small, text) // a space between, lest the two read as a sum
	}
	if s.Other != nil {
		p = p.Keep(small, s.Scale.Unit.String())
		p = p.Keep(small, "("+s.Other.Format(length)+" "+s.Other.Unit.String()+")")
	}
	return p
}

// Plain is a length in running text, its fraction not built.
func (s Setter) Plain(length measure.Length) string {
	r := s.Scale.Read(length)
	text := r.String()
	if beside := wording.Beside(r); beside != "" {
		text += " " + beside
	}
	if s.Other != nil {
		text += " " + s.Scale.Unit.String() + " (" + s.Other.Format(length) + " " + s.Other.Unit.String() + ")"
	}
	return text
}

// Built is a length that is set at the table, in letters to be read from a
// metre, its fraction in figures of their own height.
func (s Setter) Built(length measure.Length, whole, fraction, w paper.Paper) paper.Block {
	n := s.Number(s.Bold(whole), length)
	n.Fraction = fraction
	if n.Reading.Num != 0 && n.Reading.Whole == 0 {
		n.Letters.Height = fraction * 1.3 // only the bar is set by it
	}
	return s.Exactly(nil, n, length).Set(w)
}

// Unit names the unit of bare numbers; where each has its own it is "".
func (s Setter) Unit() string {
	if s.Other != nil {
		return ""
	}
	return s.Scale.Unit.String()
}

// Letters are plain letters of a height.
func (s Setter) Letters(height paper.Paper) paper.Letters { return paper.Letters{Height: height} }

// Bold are bold letters of a height.
func (s Setter) Bold(height paper.Paper) paper.Letters {
	return paper.Letters{Face: paper.Bold, Height: height}
}

// Say sets plain words in the smallest letters.
func (s Setter) Say(w paper.Paper, words string) paper.Block {
	return paper.Phrase{}.Say(s.Letters(paper.Least), words).Set(w)
}

// Strong sets bold words in letters of a height.
func (s Setter) Strong(w, height paper.Paper, words string) paper.Block {
	return paper.Phrase{}.Say(s.Bold(height), words).Set(w)
}
