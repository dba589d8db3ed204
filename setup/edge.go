package setup

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// edge makes a shaped edge with a bit of its outline: at one fence distance, the
// pilot flush with the fence or as far behind it as the section says, in as many
// heights as its wood takes. An outline with a hollow stands at its full height at
// once, for a lower pass would take what the shape keeps, and takes its passes by
// the fence, which goes away from the bit from one to the next.
func (m maker) edge(bit *joinery.Bit, p *joinery.Piece, ch joinery.Channel) (Way, reason) {
	if !bit.Outline.Same(ch.Section.Outline) {
		return Way{}, otherShape
	}
	if reason := m.unfit(bit, ch, p.Size); reason != fits {
		return Way{}, reason
	}
	most := ladder.CapFor(bit, p.Wood, m.shop).Depth
	forward := []measure.Length{ch.Section.Forward}
	if bit.Outline.Undercut() {
		if forward = fencesFor(ch, most, m.shop.Scale); forward == nil {
			return Way{}, tooCoarse
		}
	} else if !ladder.Bites(ladder.Demand{Depth: ch.Depth, Cap: most, Section: ch.Section}, m.shop.Scale) {
		return Way{}, tooCoarse
	}
	way := Way{Bit: bit, Passes: len(forward)}
	for i, s := range forward {
		step := deck.Step{Bit: bit, NearEdge: -(bit.Pilot+bit.Diameter)/2 - s, Down: ch.Down, Fence: ch.Near, Position: i + 1, Of: len(forward)}
		if m.shop.Cross.With == joinery.Carriage && guided(p, nil, ch, step, m.shop.Scale) {
			step.Carriage = m.shop.Cross.Base
			if m.shop.Lift > 0 && m.shop.Lift < ch.Depth+step.Carriage {
				return Way{}, tooHighOnBase
			}
		}
		if reason := m.unstopped(step, p, ch); reason != fits {
			return Way{}, reason
		}
		if i > 0 {
			step.Before = way.Steps[i-1].NearEdge
		}
		way.Steps = append(way.Steps, step)
	}
	return way, fits
}

// unstopped tells why an edge that does not run from end to end cannot be made by a
// step: a panel bit is never stopped in the wood, a bit with a flat at its pilot does
// not come down through it, and between two lines it must come out of the fence.
func (m maker) unstopped(step deck.Step, p *joinery.Piece, ch joinery.Channel) reason {
	long := p.Size[ch.Run()]
	if ch.Lo == 0 && ch.Hi == long {
		return fits
	}
	r := dropOf(deck.Run{Cut: &joinery.Cut{}, Channel: ch, Step: step}, p.Size)
	switch {
	case step.Bit.IsPanelBit():
		return neverStopped
	case r.Start != nil && (step.Bit.Plunges == joinery.No || step.Bit.Outline.Flat() > ch.Section.Forward):
		return noPlunge
	case r.Start != nil && r.Pivot.Tilt > deck.TooSteep && !m.shop.Raises:
		return tooSteep
	case ch.Lo > 0 && ch.Hi < long && r.Travel() <= 0:
		return longerThanSpan
	}
	return fits
}

// fencesFor returns how far the fence stands forward for each pass of a shape
// with a hollow, the first the farthest, on the scale but for the last.
func fencesFor(ch joinery.Channel, most measure.Length, scale measure.Scale) []measure.Length {
	gone := func(forward measure.Length) measure.Length {
		return measure.Strip(joinery.Section{Outline: ch.Section.Outline, Forward: forward}.Area(ch.Depth))
	}
	var all []measure.Length
	last, before := ch.Section.Forward, measure.Length(0)
	for gone(last)-before > most {
		low, high := last/scale.Division, ch.Section.Outline.Wide()/scale.Division+1
		for low < high { // the least that keeps within the bite
			middle := (low + high) / 2
			if gone(middle*scale.Division)-before <= most {
				high = middle
			} else {
				low = middle + 1
			}
		}
		next := low * scale.Division
		if next <= last || gone(next) <= before || len(all) == mostPositions {
			return nil
		}
		all, before = append(all, next), gone(next)
	}
	return append(all, last)
}

// atOnce is a cap that no depth reaches: the whole in one pass.
const atOnce = 1000 * measure.Inch

// demand is what one step of a channel's way asks of the ladder.
func demand(step deck.Step, ch joinery.Channel, most ladder.Cap, shop *joinery.Shop) ladder.Demand {
	d := ladder.Demand{Depth: ch.Depth, Cap: most.Depth, Every: shop.Gentle, From: shop.Scale.Floor(ch.Recess.Depth), Section: deck.SectionAt(step, ch)}
	if d.Section.Shaped() && d.Section.Outline.Undercut() {
		d.Section, d.Cap = joinery.Section{}, atOnce
	}
	return d
}

// edgeWords says what is wrong and what would be right where no bit shapes an edge.
func (m missing) edgeWords() (key, problem, remedy string) {
	ch := m.channel
	key = "bit"
	if m.cut.Bit == "" {
		key = "shape"
	}
	switch m.worst {
	case widerThanOpening:
		return key, fmt.Sprintf("table and fence let no bit over %s turn, and the %s bit is %s wide", m.text(m.shop.Opening), m.bit.Name, m.text(m.bit.Diameter)),
			"take a smaller bit, or correct opening in the shop file"
	case tooHigh, tooHighOnBase:
		return "raise", fmt.Sprintf("raised %s, and the table lifts a bit only %s", m.text(ch.Depth), m.text(m.shop.Lift)),
			"raise it less, or correct lift in the shop file"
	case tooShort:
		return "raise", fmt.Sprintf("raised %s, but the %s bit cuts only %s below its pilot", m.text(ch.Depth), m.bit.Name, m.text(m.bit.Cutting)),
			"raise it less, or add a bit with a longer cutting edge to the shop"
	case longerThanSpan:
		step := deck.Step{Bit: m.bit, NearEdge: -(m.bit.Pilot+m.bit.Diameter)/2 - ch.Section.Forward}
		return "span", fmt.Sprintf("the edge is stopped at both ends and only %s long, and the %s bit comes out of the fence over %s", m.text(ch.Hi-ch.Lo), m.bit.Name, m.shop.Scale.Say(m.shop.Scale.Ceil(deck.Along(step, ch)))),
			"lengthen the span, or take a smaller bit"
	case noPlunge:
		return "span", fmt.Sprintf("the work would be lowered onto the %s bit, which cannot cut its way in from above", m.bit.Name),
			"begin the span at an end of the piece, or take a bit whose outline begins at its pilot"
	case neverStopped:
		return "span", fmt.Sprintf("the %s bit is a panel bit, on which no work is lowered or stopped", m.bit.Name),
			"leave span out, or take a narrower bit"
	case tooSteep:
		return "span", fmt.Sprintf("the work cannot be lowered onto the %s bit here: over %.0f degrees of tilt is not done", m.bit.Name, deck.TooSteep),
			"begin the span farther from the end of the piece that comes last, or leave the blank longer there"
	case tooCoarse:
		most := ladder.CapFor(m.bit, m.piece.Wood, m.shop)
		return "raise", fmt.Sprintf("the %s bit takes %s at one pass at the most (%s), and no height that the shop's scale shows keeps to it",
				m.bit.Name, m.shop.Scale.SayArea(most.Depth.Millimetres()), most.Rule),
			"write a finer scale or a larger bite in the shop file, or take a smaller bit"
	}
	return key, "no bit of the shop has this outline", "add a bit of that kind and radius to the shop, with its pilot, diameter and cutting"
}

// smallerThere reports whether a shaped edge is on the same arris as another that
// takes more wood: the larger comes first, so that the smaller is cut clean.
func smallerThere(small, large joinery.Channel) bool {
	return large.Section.Shaped() && small.Down == large.Down && small.Near == large.Near &&
		small.Lo < large.Hi && large.Lo < small.Hi && small.Section.Area(small.Depth) < large.Section.Area(large.Depth)
}
