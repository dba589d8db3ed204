package output

import (
	"fencecard/joinery"
	"fencecard/setup/deck"
)

// setter knows what every page of a deck is set in: the paper, the letter
// sizes and the scale lengths are read off.
type setter struct {
	paper Box   // the whole sheet of a list, upright
	frame Box   // inside its margins
	sheet Box   // the whole sheet of the cards
	cells []Box // where the cards of a sheet go
	grade grade
	scale joinery.Scale
	other *joinery.Scale // the second unit, where both are printed
	reach joinery.FenceReach

	slips  slips // of the card that is laid out
	blocks bool  // the shop sets stop blocks for each card
}

func newSetter(d *deck.Deck, o Pages) (setter, error) {
	w, h := o.Paper.Size()
	s := setter{paper: Box{0, 0, w, h}, scale: d.Plan.Shop.Scale, reach: d.Plan.Shop.Fence,
		blocks: d.Plan.Shop.Stops == joinery.Blocks}
	s.frame = s.paper.Inset(o.Paper.margin())
	if err := s.divide(o); err != nil {
		return setter{}, err
	}
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
	return s, nil
}

// number sets a length.
func (s setter) number(l Letters, length joinery.Length) number {
	return number{letters: l, reading: s.scale.Read(length)}
}

// length adds a length to a phrase.
func (s setter) length(p phrase, l Letters, length joinery.Length) phrase {
	return s.exactly(p, s.number(l, length), length)
}

// measure adds a length with its unit to a phrase.
func (s setter) measure(p phrase, l Letters, length joinery.Length) phrase {
	p = s.length(p, l, length)
	if s.other == nil { // else the unit is there
		p = p.keep(l, s.scale.Unit.String())
	}
	return p
}

// exactly adds a built number to a phrase and small beside it the exact value
// where the number is not. Where both units are wanted each has its name, and
// the second is in brackets, lest the two read as one number.
func (s setter) exactly(p phrase, n number, length joinery.Length) phrase {
	p = p.count(n)
	small := s.letters(least)
	if text := beside(n.reading); text != "" {
		p = p.keep(small, text) // a space between, lest the two read as a sum
	}
	if s.other != nil {
		p = p.keep(s.letters(min(n.letters.Height, s.grade.body)), s.scale.Unit.String())
		p = p.keep(small, "("+s.other.Format(length)+" "+s.other.Unit.String()+")")
	}
	return p
}

// letters are plain letters of a height.
func (s setter) letters(height Paper) Letters { return Letters{Height: height} }

// bold are bold letters of a height.
func (s setter) bold(height Paper) Letters { return Letters{Face: Bold, Height: height} }

// drawings are the scales drawings are made at.
func (s setter) drawings() []drawingScale {
	if s.scale.Unit == joinery.Millimetres {
		return metricDrawings
	}
	return inchDrawings
}

// scaled says at which scale something is drawn, and in which of two units its
// lengths are.
func (s setter) scaled(d drawingScale) string {
	text := "scale " + d.name
	if s.other != nil {
		text += ", " + s.scale.Unit.String()
	}
	return text
}
