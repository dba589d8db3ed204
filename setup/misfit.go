package setup

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/ladder"
	"fencecard/setup/remark"
)

// reason is why a bit does not fit a channel.
type reason uint8

const (
	fits reason = iota
	otherShape
	tooWide
	tooNarrow
	longerThanSpan
	widerThanOpening
	tooBroad
	tooHigh
	tooHighOnBase
	tooShort
	shankInBase
	tooCoarse
	beyondReach
	noPlunge
	neverStopped
	tooSteep
)

// misfit remembers, for every reason, the bit that came nearest.
type misfit struct {
	worst reason
	bit   *joinery.Bit
}

// note keeps the reason that lies furthest along: a bit that is narrow enough
// but too short says more than one that is too wide.
func (w *misfit) note(r reason, bit *joinery.Bit) {
	if r > w.worst || r == w.worst && nearer(r, bit, w.bit) {
		w.worst, w.bit = r, bit
	}
}

// nearer tells which of two bits that fail alike came nearer to fitting.
func nearer(r reason, a, b *joinery.Bit) bool {
	switch r {
	case tooWide, longerThanSpan, widerThanOpening, tooBroad, shankInBase:
		return a.True() < b.True()
	case tooShort:
		return a.Cutting > b.Cutting
	case tooCoarse:
		return false // bits are tried in the shop's order
	}
	return a.True() > b.True()
}

// fault says in trade words why no bit makes the channel, and what would.
func (w misfit) fault(p *joinery.Piece, c *joinery.Cut, ch joinery.Channel, shop *joinery.Shop) plantext.Fault {
	m := missing{w, p, c, ch, shop}
	key, problem, remedy := m.words()
	if c.Bit != "" && !c.Kind.Shapes { // a bit that shapes edges is the shape
		key, problem, remedy = "bit", m.named(problem), "name another bit, or leave bit: out and let the program choose"
	}
	name := fmt.Sprintf("%s %q in %q", c.Kind, c.Name, p.Name)
	if ch.Part != "" && !c.Kind.Shapes {
		name += ", " + ch.Part
	}
	return plantext.Fault{
		Place:   c.Places.At(c.Place, key, writtenAs[key], "length", "depth", inSlots[ch.Part]),
		Problem: name + ": " + problem,
		Remedy:  remedy + "; or write by: hand and make it with other tools",
	}
}

// writtenAs is what the depth of a channel is called in a tenon.
var writtenAs = map[string]string{"depth": "cheeks"}

// inSlots is the key of the width of a part of a slot for a screw.
var inSlots = map[string]string{"head": "head", "shank": "screw"}

// missing is a channel that no bit of the shop makes.
type missing struct {
	misfit
	piece   *joinery.Piece
	cut     *joinery.Cut
	channel joinery.Channel
	shop    *joinery.Shop
}

func (m missing) text(l measure.Length) string {
	return m.shop.Scale.Say(l)
}

// words says what is wrong and what would be right; key is where in the plan.
func (m missing) words() (key, problem, remedy string) {
	if m.channel.Section.Shaped() {
		return m.edgeWords()
	}
	ch, add := m.channel, "add "+m.wanted()+" to the shop"
	long := ch.Hi - ch.Lo
	switch m.worst {
	case tooWide:
		if m.shop.Scale.Unit == measure.Millimetres && ch.Width < measure.Millimetre {
			add = "write in behind it if inches are meant; else " + add
		}
		if m.bit.Diameter <= ch.Width {
			measured := m.shop.Scale.Spell(m.bit.True())
			problem := fmt.Sprintf("the %s bit is measured %s, wider than the channel", m.bit.Name, measured)
			if key := inSlots[ch.Part]; key != "" {
				return key, problem, "write " + key + ": " + measured + ", or " + add
			}
			return "width", problem, "write width: " + measured + " and fit its mate to it, or " + add
		}
		return "width", fmt.Sprintf("no bit is narrow enough for a channel %s wide", m.text(ch.Width)), add + ", or widen the cut"
	case tooNarrow:
		return "width", fmt.Sprintf("%s wide would take more than %d fence distances with the %s bit", m.text(ch.Width), mostPositions, m.bit.Name),
			"add a wider bit to the shop"
	case longerThanSpan:
		return "span", fmt.Sprintf("the cut is stopped at both ends and only %s long, shorter than the %s bit is wide", m.text(long), m.bit.Name),
			"lengthen the span, or " + add
	case widerThanOpening:
		return "width", fmt.Sprintf("table and fence let no bit over %s turn, and the %s bit is wider", m.text(m.shop.Opening), m.bit.Name),
			add + ", or correct opening in the shop file"
	case tooBroad:
		most := m.text(widestAcross(m.shop.Scale.Unit))
		return "length", fmt.Sprintf("across an end no bit over %s is used unless the cut names it: the %s bit would take too much wood at once", most, m.bit.Name),
			add + ", or write bit: " + m.bit.Name
	case tooHighOnBase:
		return "depth", fmt.Sprintf("%s deep, and on the carriage, whose base is %s thick, the bit would stand higher than the table lifts it, %s",
				m.text(ch.Depth), m.text(m.shop.Cross.Base), m.text(m.shop.Lift)),
			"make the cut shallower, or the base of the carriage thinner (crossing: in the shop file)"
	case shankInBase:
		return "depth", fmt.Sprintf("%s deep, and the %s bit cuts only %s: its shank is thicker than the bit and would turn in the base of the carriage, %s thick",
				m.text(ch.Depth), m.bit.Name, m.text(m.bit.Cutting), m.text(m.shop.Cross.Base)),
			"make the base of the carriage thinner (crossing: in the shop file), or add a longer bit to the shop"
	case tooShort:
		if ch.Recess.Depth > 0 {
			return "depth", fmt.Sprintf("right through %s, of which the head takes %s, but the %s bit cuts only %s", m.text(ch.Depth), m.text(ch.Recess.Depth), m.bit.Name, m.text(m.bit.Cutting)),
				fmt.Sprintf("%s, or one that cuts %s and whose shank goes into the slot for the head, %s or less", add, m.text(ch.Depth-ch.Recess.Depth), m.text(m.shop.Scale.Floor(min(ch.Recess.Width, ch.Width+2*ch.Recess.Beyond)-2*joinery.ShankRoom)))
		}
		return "depth", fmt.Sprintf("%s deep, but the %s bit cuts only %s", m.text(ch.Depth), m.bit.Name, m.text(m.bit.Cutting)),
			"make the cut shallower, or " + add
	case tooHigh:
		return "depth", fmt.Sprintf("%s deep, but the table lifts a bit only %s", m.text(ch.Depth), m.text(m.shop.Lift)),
			"make the cut shallower, or correct lift in the shop file"
	case tooCoarse:
		most, spell := ladder.CapFor(m.bit, m.piece.Wood, m.shop), measure.DefaultScale(m.shop.Scale.Unit).Spell
		return "depth", fmt.Sprintf("%s deep, and the %s bit takes %s at one pass at the most (%s), but the shop's scale shows no height under %s",
				m.text(ch.Depth), m.bit.Name, spell(most.Depth), most.Rule, spell(m.shop.Scale.Division)),
			fmt.Sprintf("write scale: %s or a finer one in the shop file, or make the cut no deeper than that", spell(most.Depth))
	case beyondReach:
		key = "setback"
		if m.cut.Fence.Side != joinery.NoSide {
			key = "fence"
		}
		return key, fmt.Sprintf("the fence would stand further from the bit than its reach of %s", m.text(m.shop.Fence.Reach)), m.wayOut()
	case noPlunge:
		return "span", fmt.Sprintf("the work is dropped onto the bit, and the %s bit does not plunge", m.bit.Name),
			or(m.cut.Kind.Has("span"), "open the cut at one end", "write start: hole and bore it first") + ", or " + add
	case tooSteep:
		key = "span"
		if m.cut.Fence.Side != joinery.NoSide {
			key = "fence"
		}
		problem, remedy = m.steepDrop()
		return key, problem, remedy
	}
	return "width", "the shop has no bits", "list the bits in the shop file"
}

func or(is bool, yes, no string) string {
	if is {
		return yes
	}
	return no
}

// named says what is wrong with the one bit that the cut allows.
func (m missing) named(problem string) string {
	if m.worst == tooWide && m.bit.Diameter > m.channel.Width {
		return fmt.Sprintf("the %s bit is wider than the channel, %s", m.bit.Name, m.text(m.channel.Width))
	}
	return problem
}

// usualSizes are the diameters that bits are sold in (from memory).
var usualSizes = map[measure.Unit][]measure.Length{
	measure.Inches: {
		measure.Inch / 8, 3 * measure.Inch / 16, measure.Inch / 4, 5 * measure.Inch / 16, 3 * measure.Inch / 8,
		7 * measure.Inch / 16, measure.Inch / 2, 5 * measure.Inch / 8, 3 * measure.Inch / 4, measure.Inch,
	},
	measure.Millimetres: {
		3 * measure.Millimetre, 4 * measure.Millimetre, 5 * measure.Millimetre, 6 * measure.Millimetre,
		8 * measure.Millimetre, 10 * measure.Millimetre, 12 * measure.Millimetre, 14 * measure.Millimetre,
		16 * measure.Millimetre, 18 * measure.Millimetre, 20 * measure.Millimetre,
	},
}

// wanted describes a bit that would make the channel: its diameter, the widest
// usual one that goes in, its cutting length, and whether it must plunge.
func (m missing) wanted() string {
	ch, size := m.channel, m.piece.Size
	most := ch.Width
	if ch.OpenBeside(ch.Near, size) || ch.OpenBeside(ch.Near.Opposite(), size) {
		most = measure.MaxLength
	}
	if _, ok := crossing(m.piece, m.cut, ch); ok {
		most = widestAcross(m.shop.Scale.Unit)
	}
	if m.shop.Opening > 0 {
		most = min(most, m.shop.Opening)
	}
	run := ch.Run()
	if !ch.OpenAt(run.Low(), size) && !ch.OpenAt(run.High(), size) {
		most = min(most, ch.Hi-ch.Lo)
	}
	usual := slices.DeleteFunc(slices.Clone(usualSizes[m.shop.Scale.Unit]), func(d measure.Length) bool { return d > most })
	parts := []string{fmt.Sprintf("a bit of %s or less", m.text(most))}
	if len(usual) > 0 {
		parts[0] = fmt.Sprintf("a bit of %s", m.text(usual[len(usual)-1]))
	}
	parts = append(parts, fmt.Sprintf("with %s of cutting length", m.text(ch.Depth)))
	if drops(ch, ch.Near, size) {
		parts = append(parts, "that plunges")
	}
	return strings.Join(parts, " ")
}

// wayOut is what to do where the fence does not reach: the other side to the
// fence where that is near enough, else a hand-held router along a
// straightedge.
func (m missing) wayOut() string {
	other := m.channel.Reversed(m.piece.Size)
	if m.cut.Fence.Side == other.Near {
		other = m.channel
	}
	at := positions(other, m.piece.Size, m.bit.True(), m.shop.Scale)
	if len(at) > 0 && (maker{shop: m.shop}).within(m.bit, at[len(at)-1]) {
		return fmt.Sprintf("write fence: %s, which is near enough", other.Near)
	}
	if m.shop.Base == 0 {
		return "cut it with a hand-held router along a straightedge (write base: in the shop file to have its place worked out), or correct reach in the shop file"
	}
	return "cut it with a hand-held router: " + remark.Straightedge(m.channel, m.bit, m.shop)
}
