package proof

import (
	"fmt"
	"strings"

	"fencecard/joinery"
)

// Settings is what a maker measures on the table as it stands; nil where it
// was not measured.
type Settings struct {
	Fence  *joinery.Length // fence face to the near edge of the bit; negative where it is buried
	Start  *joinery.Length // leading end of the work past the trailing edge when it is dropped on
	Stop   *joinery.Length // leading end of the work past the leading edge when it is lifted off
	Height *joinery.Length // of the bit above the table
}

// Finding is one wall, end or depth as the table stands.
type Finding struct {
	What  string         // "near wall", "far wall", "begins", "ends", "depth"
	From  string         // what it is measured from: "the front", "the top end"
	Would joinery.Length // where the table would cut it
	Wants joinery.Length // where this card wants it; another card may cut on from there
	Words string         // "1/64 too near the back"; "correct" within half a division
	Move  string         // what to do about it; "" where it is right
}

// Off returns by how much it is off: more than the card wants is positive.
func (f Finding) Off() joinery.Length { return f.Would - f.Wants }

// Right reports whether nothing need be moved.
func (f Finding) Right() bool { return f.Move == "" }

// AsSet says what the table as it stands would cut with a card of a deck that
// proves. The error is [joinery.Faults]: there is no such card, or it has no
// such mark.
func AsSet(plan *joinery.Plan, claims *Claims, number string, s Settings) ([]Finding, error) {
	b, err := benchFor(plan, claims, number)
	if err != nil {
		return nil, err
	}
	var found []Finding
	if s.Fence != nil {
		found = append(found, b.walls(*s.Fence)...)
	}
	if s.Start != nil {
		if b.card.Start == nil {
			return nil, b.noMark("start", "fed in", b.card.Leads)
		}
		found = append(found, b.line("begins", *s.Start, b.card.Start.Line))
	}
	if s.Stop != nil {
		if b.card.Stop == nil {
			return nil, b.noMark("stop", "run out", b.card.Leads.Opposite())
		}
		found = append(found, b.line("ends", *s.Stop, b.card.Stop.Line))
	}
	if s.Start != nil && s.Stop != nil && *s.Stop-*s.Start < b.bit {
		return nil, joinery.Faults{{
			Problem: fmt.Sprintf("between these marks the work would move backwards: the slot cannot be shorter than the bit, %s", b.text(b.bit)),
			Remedy:  "give the start from the bit's trailing edge and the stop from its leading edge",
		}}
	}
	if s.Height != nil {
		found = append(found, b.depth(*s.Height))
	}
	return found, nil
}

// bench is one card of a deck, ready to be cut.
type bench struct {
	table
	setup *Setup
	cut   *wanted
	tool  *joinery.Bit
	scale joinery.Scale
}

// text is a length in the shop's unit, whatever unit was measured in.
func (b bench) text(l joinery.Length) string {
	if !b.scale.On(l) {
		return b.scale.Fine(l) + " " + b.scale.Unit.String()
	}
	return lengthText(b.scale, l)
}

// benchFor finds a card by its number.
func benchFor(plan *joinery.Plan, claims *Claims, number string) (bench, error) {
	p := newProver(plan, claims)
	for i := range claims.Setups {
		s := &claims.Setups[i]
		for j := range s.Cards {
			c := &s.Cards[j]
			if c.Number != number {
				continue
			}
			w, bit := p.wants.find(c), p.bits[s.Bit.Name]
			if w == nil || bit == nil {
				break
			}
			t := table{c, bit.True(), w.piece.Size, w.piece.Size.Between(c.Leads)}
			return bench{t, s, w, bit, p.scale}, nil
		}
	}
	return bench{}, joinery.Faults{{
		Problem: fmt.Sprintf("the deck has no card %q", joinery.Brief(number, 24)),
		Remedy:  "write a card's number as it is printed, " + cardNumbers(claims),
	}}
}

// cardNumbers tells the numbers a deck has, as a range for each setup.
func cardNumbers(claims *Claims) string {
	var ranges []string
	for _, s := range claims.Setups {
		switch n := len(s.Cards); n {
		case 0:
		case 1:
			ranges = append(ranges, s.Cards[0].Number)
		default:
			ranges = append(ranges, fmt.Sprintf("%s to %s", s.Cards[0].Number, s.Cards[n-1].Number))
		}
	}
	const most = 8
	if len(ranges) > most {
		ranges = append(ranges[:most], "and so on")
	}
	return strings.Join(ranges, ", ")
}

func (b bench) noMark(which, how string, side joinery.Side) error {
	return joinery.Faults{{
		Problem: fmt.Sprintf("card %s has no %s: the work is %s at the %s end", b.card.Number, which, how, side),
		Remedy:  "leave --" + which + " out",
	}}
}

// right reports whether two lengths are one on the shop's scale: half a division
// is not wrong.
func (b bench) right(a, c joinery.Length) bool { return 2*(a-c).Abs() <= b.scale.Division }

// walls are what a fence that stands so far from the bit's near edge cuts.
func (b bench) walls(near joinery.Length) []Finding {
	side := b.card.Fence
	from := "the " + side.String()
	size := b.size.Between(side)
	wants := b.setup.Fence.NearEdge
	finding := func(what string, would, wants joinery.Length) Finding {
		f := Finding{What: what, From: from, Would: would, Wants: wants, Words: "correct"}
		if !b.right(would, wants) {
			f.Words = fmt.Sprintf("%s too near the %s", b.text(f.Off().Abs()), toward(f.Off(), side))
			f.Move = b.moveFence(f.Off())
		}
		return f
	}
	var found []Finding
	if wants > 0 {
		found = append(found, finding("near wall", near, wants))
	}
	if wants+b.bit < size {
		found = append(found, finding("far wall", near+b.bit, wants+b.bit))
	}
	return found
}

// moveFence says where to move the fence that leaves a wall off, positive for
// too far from the fence.
func (b bench) moveFence(off joinery.Length) string {
	if off > 0 {
		return "move the fence " + b.text(off) + " toward the bit"
	}
	return "move the fence " + b.text(-off) + " away from the bit"
}

// line is where the cut begins or ends along the work.
func (b bench) line(what string, would, wants joinery.Length) Finding {
	lead := b.card.Leads
	f := Finding{What: what, From: fmt.Sprintf("the %s end", lead), Would: would, Wants: wants, Words: "correct"}
	if off := f.Off(); !b.right(would, wants) {
		f.Words = fmt.Sprintf("%s too near the %s", b.text(off.Abs()), toward(off, lead))
		f.Move = b.moveMark(map[string]string{"begins": "start", "ends": "stop"}[what], off)
	}
	return f
}

// moveMark says where to move a mark that leaves a line off, positive for too
// far from the leading end: then the work went too far to the left.
func (b bench) moveMark(which string, off joinery.Length) string {
	if off > 0 {
		return "move the " + which + " mark " + b.text(off) + " to the right, the infeed"
	}
	return "move the " + which + " mark " + b.text(-off) + " to the left, the outfeed"
}

// depth is what the bit's height cuts.
func (b bench) depth(height joinery.Length) Finding {
	f := Finding{What: "depth", From: "the " + b.card.Down.String(), Would: height, Wants: b.cut.channel.Depth, Words: "correct"}
	off := f.Off()
	if b.right(f.Would, f.Wants) {
		return f
	}
	f.Words = fmt.Sprintf("%s too %s", b.text(off.Abs()), deepOrShallow(off))
	f.Move = b.moveBit(off)
	for _, rung := range b.card.Heights {
		if b.right(height, rung) {
			f.Words, f.Move = fmt.Sprintf("a height on the way, %s to go", b.text(-off)), ""
		}
	}
	return f
}

// moveBit says where to move the bit that leaves a depth off.
func (b bench) moveBit(off joinery.Length) string {
	if off > 0 {
		return "lower the bit " + b.text(off)
	}
	return "raise the bit " + b.text(-off)
}
