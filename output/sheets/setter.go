package sheets

import (
	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Setter knows what every page of a deck is set in: the paper, the scale
// lengths are read off, and what the shop works with.
type Setter struct {
	paper  paper.Box // the whole page, upright
	frame  paper.Box // inside its margins
	Scale  joinery.Scale
	other  *joinery.Scale // the second unit, where both are printed
	reach  joinery.FenceReach
	blocks bool   // the shop sets stop blocks
	router int    // its highest speed
	title  string // of the deck
	code   string
	minds  map[int]wording.Mind // of the setups, by number
}

func newSetter(d *deck.Deck, o Pages) Setter {
	w, h := o.Paper.Size()
	shop := &d.Plan.Shop
	s := Setter{paper: paper.Box{X: 0, Y: 0, W: w, H: h}, Scale: shop.Scale, reach: shop.Fence,
		blocks: shop.Stops == joinery.Blocks, router: shop.Speed, title: d.Plan.Title, code: d.Code}
	s.frame = s.paper.Inset(o.Paper.margin())
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
	s.minds = map[int]wording.Mind{}
	for i := range d.Setups {
		s.minds[d.Setups[i].Number] = wording.MindOf(&d.Setups[i], wording.MindIn{Scale: s.Scale, Push: shop.Cross.With, Own: s.frame.W >= wideRow})
	}
	return s
}

// number sets a length.
func (s Setter) number(l paper.Letters, length joinery.Length) paper.Number {
	return paper.Number{Letters: l, Reading: s.Scale.Read(length)}
}

// Length adds a length to a phrase.
func (s Setter) Length(p paper.Phrase, l paper.Letters, length joinery.Length) paper.Phrase {
	return s.exactly(p, s.number(l, length), length)
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
		p = p.Keep(small, s.Scale.Unit.String())
		p = p.Keep(small, "("+s.other.Format(length)+" "+s.other.Unit.String()+")")
	}
	return p
}

// plain is a length in running text, its fraction not built.
func (s Setter) plain(length joinery.Length) string {
	r := s.Scale.Read(length)
	text := r.String()
	if beside := wording.Beside(r); beside != "" {
		text += " " + beside
	}
	if s.other != nil {
		text += " " + s.Scale.Unit.String() + " (" + s.other.Format(length) + " " + s.other.Unit.String() + ")"
	}
	return text
}

// set is a length that is set at the table, in letters to be read from a
// metre, its fraction in figures of their own height.
func (s Setter) set(length joinery.Length, whole, fraction, w paper.Paper) paper.Block {
	n := s.number(s.bold(whole), length)
	n.Fraction = fraction
	if n.Reading.Num != 0 && n.Reading.Whole == 0 {
		n.Letters.Height = fraction * 1.3 // only the bar is set by it
	}
	return s.exactly(nil, n, length).Set(w)
}

// unit names the unit of bare numbers; where each has its own it is "".
func (s Setter) unit() string {
	if s.other != nil {
		return ""
	}
	return s.Scale.Unit.String()
}

// Letters are plain letters of a height.
func (s Setter) Letters(height paper.Paper) paper.Letters { return paper.Letters{Height: height} }

// bold are bold letters of a height.
func (s Setter) bold(height paper.Paper) paper.Letters {
	return paper.Letters{Face: paper.Bold, Height: height}
}

// say sets plain words in the smallest letters.
func (s Setter) say(w paper.Paper, words string) paper.Block {
	return paper.Phrase{}.Say(s.Letters(paper.Least), words).Set(w)
}

// strong sets bold words in letters of a height.
func (s Setter) strong(w, height paper.Paper, words string) paper.Block {
	return paper.Phrase{}.Say(s.bold(height), words).Set(w)
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
