package sheets

import (
	"sync"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Setter sets the pages of one deck.
type Setter struct {
	setting.Setter
	minds map[int]wording.Mind // of the setups, by number
	rows  *sync.Map            // of columns, by rowsOf
	push  joinery.Push         // what pushes work across its end
	bare  bool                 // without boxes and lines to write on: they are elsewhere
}

func newSetter(d *deck.Deck, o Pages) Setter {
	w, h := o.Paper.Size()
	shop := &d.Plan.Shop
	s := Setter{Setter: setting.Setter{Page: paper.Box{X: 0, Y: 0, W: w, H: h}, Scale: shop.Scale, Reach: shop.Fence,
		Blocks: shop.Stops == joinery.Blocks, Router: shop.Speed, Title: d.Plan.Title, Code: d.Code}}
	s.Frame = s.Page.Inset(o.Paper.margin())
	switch {
	case o.Scale.Division > 0:
		s.Scale = o.Scale
	case o.Units == InInches && s.Scale.Unit != measure.Inches:
		s.Scale = measure.InchScale
	case o.Units == InMillimetres && s.Scale.Unit != measure.Millimetres:
		s.Scale = measure.MetricScale
	}
	if o.Units == InBoth {
		other := measure.DefaultScale(1 - s.Scale.Unit)
		s.Other = &other
	}
	s.push = shop.Cross.With
	s.minds, s.rows = map[int]wording.Mind{}, &sync.Map{}
	for i := range d.Setups {
		s.minds[d.Setups[i].Number] = wording.MindOf(&d.Setups[i], wording.MindIn{Scale: s.Scale, Push: s.push, Block: s.Blocks, Own: s.Frame.W >= wideRow})
	}
	return s
}
