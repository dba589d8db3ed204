package whatif

import (
	"fmt"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Divided is a cut that takes more fence distances than it did.
type Divided struct {
	Cut    string         // `the dado "shelf"`; of several pieces once
	Width  measure.Length // as the plan wants it; 0 where it is not told by a width
	Word   string         // by which the plan says that width; "" where none does
	Fences int            // how many it takes now
}

// DividedCuts lists the cuts that take more fence distances than in an earlier deck
// of the plan, made with other bits, in the plan's order.
func DividedCuts(before, after *deck.Deck) []Divided {
	was, is := fencesOf(before), fencesOf(after)
	var all []Divided
	for i := range after.Plan.Pieces {
		p := &after.Plan.Pieces[i]
		for j := range p.Cuts {
			c := &p.Cuts[j]
			for k := range c.Channels {
				of := channelOf{p.Name, c.Name, c.Channels[k].Part}
				if n := len(was[of]); n == 0 || len(is[of]) <= n {
					continue
				}
				d := Divided{Cut: cutName(c), Fences: len(is[of])}
				if c.Kind.Has("width") {
					d.Width = c.Width
					d.Word, _ = c.Places.Word("width")
				}
				if !slices.Contains(all, d) {
					all = append(all, d)
				}
			}
		}
	}
	return all
}

// Say says it, and that a cut as wide as the bit would do with fewer.
func (d Divided) Say(scale measure.Scale, bit measure.Length) string {
	text := fmt.Sprintf("%s now takes %d fence distances", d.Cut, d.Fences)
	if d.Width > 0 {
		text = fmt.Sprintf("%s, %s wide, now takes %d fence distances", d.Cut, scale.Say(d.Width), d.Fences)
		if d.Word != "" {
			text += fmt.Sprintf("; if %s will do, write %s: %[1]s", scale.Spell(bit), d.Word)
		}
	}
	return text
}

// channelOf names a channel in two decks of a plan.
type channelOf struct{ piece, cut, part string }

// fencesOf are the fence distances that each channel is run at.
func fencesOf(d *deck.Deck) map[channelOf][]measure.Length {
	fences := map[channelOf][]measure.Length{}
	for i := range d.Setups {
		for j := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[j]
			of := channelOf{r.Piece.Name, r.Cut.Name, r.Channel.Part}
			if at := r.Step.NearEdge; !slices.Contains(fences[of], at) {
				fences[of] = append(fences[of], at)
			}
		}
	}
	return fences
}
