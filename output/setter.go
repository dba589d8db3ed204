package output

import (
	"fencecard/joinery"
	"fencecard/setup"
)

// setter knows what every page of a deck is set in: the paper, the letter
// sizes and the scale lengths are read off.
type setter struct {
	paper Box // the whole sheet
	frame Box // inside the margins
	scale joinery.Scale
	other *joinery.Scale // the second unit, where both are printed
}

func newSetter(d *setup.Deck, o Pages) setter {
	w, h := o.Paper.Size()
	s := setter{paper: Box{0, 0, w, h}, scale: d.Plan.Shop.Scale}
	s.frame = s.paper.Inset(margin)
	switch {
	case o.Scale.Division > 0:
		s.scale = o.Scale
	case o.Units == InInches && s.scale.Unit != joinery.Inches:
		s.scale = joinery.InchScale
	case o.Units == InMillimetres && s.scale.Unit != joinery.Millimetres:
		s.scale = joinery.MetricScale
	}
	if o.Units == InBoth {
		other := joinery.DefaultScale(1 - s.scale.Unit)
		s.other = &other
	}
	return s
}

// number sets a length.
func (s setter) number(l Letters, length joinery.Length) number {
	return number{l, s.scale.Read(length)}
}

// length adds a length to a phrase: the built number, small beside it the
// exact value where the number is not, and the second unit where both are
// wanted.
func (s setter) length(p phrase, l Letters, length joinery.Length) phrase {
	n := s.number(l, length)
	p = p.count(n)
	small := Letters{Height: least}
	if n.reading.Remainder != 0 {
		p = p.tie(small, "("+n.reading.Exact+")")
	}
	if s.other != nil {
		p = p.say(small, s.other.Format(length)+" "+s.other.Unit.String())
	}
	return p
}

// lengths adds several, with a space between.
func (s setter) lengths(p phrase, l Letters, lengths []joinery.Length) phrase {
	for _, one := range lengths {
		p = s.length(p, l, one)
	}
	return p
}
