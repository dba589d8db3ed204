package sheets

import (
	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Setter knows what every page of a deck is set in: the paper, the letter
// sizes and the scale lengths are read off.
type Setter struct {
	paper paper.Box   // the whole sheet of a list, upright
	frame paper.Box   // inside its margins
	sheet paper.Box   // the whole sheet of the cards
	cells []paper.Box // where the cards of a sheet go
	grade grade
	Scale joinery.Scale
	other *joinery.Scale // the second unit, where both are printed
	reach joinery.FenceReach

	slips  slips // of the card that is laid out
	blocks bool  // the shop sets stop blocks for each card
	push   joinery.Push
}

func newSetter(d *deck.Deck, o Pages) (Setter, error) {
	w, h := o.Paper.Size()
	s := Setter{paper: paper.Box{X: 0, Y: 0, W: w, H: h}, Scale: d.Plan.Shop.Scale, reach: d.Plan.Shop.Fence,
		blocks: d.Plan.Shop.Stops == joinery.Blocks, push: d.Plan.Shop.Cross.With}
	s.frame = s.paper.Inset(o.Paper.margin())
	if err := s.divide(o); err != nil {
		return Setter{}, err
	}
	switch {
	case o.Scale.Division > 0:
		s.Scale = o.Scale
	case o.Units == InInches && s.Scale.Unit != joinery.Inches:
		s.Scale = joinery.InchScale
	case o.Units == InMillimetres && s.Scale.Unit != joinery.Millimetres:
		s.Scale = joinery.MetricScale
	}
	if o.Units == InBoth {
		other := joinery.DefaultScale(1 - s.Scale.Unit)
		s.other = &other
	}
	return s, nil
}

// number sets a length.
func (s Setter) number(l paper.Letters, length joinery.Length) paper.Number {
	return paper.Number{Letters: l, Reading: s.Scale.Read(length)}
}

// Length adds a length to a phrase.
func (s Setter) Length(p paper.Phrase, l paper.Letters, length joinery.Length) paper.Phrase {
	return s.exactly(p, s.number(l, length), length)
}

// measure adds a length with its unit to a phrase.
func (s Setter) measure(p paper.Phrase, l paper.Letters, length joinery.Length) paper.Phrase {
	p = s.Length(p, l, length)
	if s.other == nil { // else the unit is there
		p = p.Keep(l, s.Scale.Unit.String())
	}
	return p
}

// exactly adds a built number to a phrase and small beside it the exact value
// where the number is not. Where both units are wanted each has its name, and
// the second is in brackets, lest the two read as one number.
func (s Setter) exactly(p paper.Phrase, n paper.Number, length joinery.Length) paper.Phrase {
	p = p.Count(n)
	small := s.Letters(paper.Least)
	if text := wording.Beside(n.Reading); text != "" {
		p = p.Keep(small, text) // a space between, lest the two read as a sum
	}
	if s.other != nil {
		p = p.Keep(s.Letters(min(n.Letters.Height, s.grade.body)), s.Scale.Unit.String())
		p = p.Keep(small, "("+s.other.Format(length)+" "+s.other.Unit.String()+")")
	}
	return p
}

// Letters are plain letters of a height.
func (s Setter) Letters(height paper.Paper) paper.Letters { return paper.Letters{Height: height} }

// bold are bold letters of a height.
func (s Setter) bold(height paper.Paper) paper.Letters {
	return paper.Letters{Face: paper.Bold, Height: height}
}

// drawings are the scales drawings are made at.
func (s Setter) drawings() []drawingScale {
	if s.Scale.Unit == joinery.Millimetres {
		return metricDrawings
	}
	return inchDrawings
}

// scaled says at which scale something is drawn, and in which of two units its
// lengths are.
func (s Setter) scaled(d drawingScale) string {
	text := "scale " + d.Name
	if s.other != nil {
		text += ", " + s.Scale.Unit.String()
	}
	return text
}
