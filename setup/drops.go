package setup

import (
	"fmt"
	"math"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// tilt is how far in degrees the work is tilted to be dropped onto a bit for a
// channel, its Near side to the fence; 0 where it is fed in.
func tilt(bit *joinery.Bit, ch joinery.Channel, size joinery.Size) float64 {
	leads := Leads(ch.Near, ch.Down)
	long := size.Between(leads)
	a, _ := ends(ch, leads, long)
	if a == 0 {
		return 0
	}
	return deck.PivotAt(long-a, bit.True(), ch.Depth).Tilt
}

// tooSteep reports whether the work would have to be tilted further than is
// done, and nothing else is said of how it starts.
func (m maker) tooSteep(bit *joinery.Bit, c *joinery.Cut, ch joinery.Channel, size joinery.Size) bool {
	return !c.Bored && !m.shop.Raises && tilt(bit, ch, size) > deck.TooSteep
}

// easy reports whether no step of a way is a hard drop.
func (m maker) easy(w Way, ch joinery.Channel, size joinery.Size) bool {
	for _, step := range w.Steps {
		r := deck.Run{Cut: &joinery.Cut{}, Channel: ch, Step: step}
		if r = dropOf(r, size); r.HardDrop(m.shop.Rules) {
			return false
		}
	}
	return true
}

// steepDrop says of a channel that cannot be dropped on what it would take, and
// the ways out.
func (m missing) steepDrop() (problem, remedy string) {
	size := m.piece.Size
	ch, other := m.channel, m.channel.Reversed(m.piece.Size)
	if m.cut.Fence.Side == other.Near {
		ch, other = other, ch
	}
	r := dropOf(deck.Run{Channel: ch, Step: deck.Step{Bit: m.bit, Down: ch.Down, Fence: ch.Near}}, size)
	how := "its tail is over the bit"
	if r.Tail() > 0 {
		how = fmt.Sprintf("with %s of tail before the bit it would be tilted %.0f degrees", m.text(r.Tail()), math.Ceil(r.Pivot.Tilt))
	}
	problem = fmt.Sprintf("the work cannot be lowered onto the bit here: %s, and over %.0f is not done", how, deck.TooSteep)
	var ways []string
	if long := m.channel.Hi - m.channel.Lo; m.cut.Kind.Encloses && m.channel.Width > long {
		problem += fmt.Sprintf("; it is %s wide and only %s long", m.text(m.channel.Width), m.text(long))
		ways = append(ways, "exchange width and span if they are meant the other way round")
	}
	if !m.cut.Fence.Either && tilt(m.bit, other, size) <= deck.TooSteep && ch.OpenBeside(ch.Near, size) == ch.OpenBeside(other.Near, size) {
		ways = append(ways, fmt.Sprintf("write fence: either, so that the %s may go to the fence and the other end lead", other.Near))
	}
	// The tail that is wanted: the bit, and its height at the steepest tilt.
	high := measure.Length(math.Ceil(float64(ch.Depth) / math.Tan(deck.Steep*math.Pi/180)))
	if more := max(m.shop.Rules.HandDistance, high) - r.Tail(); more > 0 {
		ways = append(ways, fmt.Sprintf("leave the blank %s longer at the %s and saw it off later", m.text(m.shop.Scale.Ceil(more)), r.Leads.Opposite()))
	}
	ways = append(ways, "write start: hole and bore it first", "write raise: yes in the shop file where your table can raise the turning bit into clamped work")
	return problem, strings.Join(ways, ", or ")
}

// dropOf gives a run its start.
func dropOf(r deck.Run, size joinery.Size) deck.Run {
	r.Leads = Leads(r.Step.Fence, r.Step.Down)
	r.Length = size.Between(r.Leads)
	if r.A, r.B = ends(r.Channel, r.Leads, r.Length); r.A > 0 {
		d := r.Along()
		r.Begin, r.Start = deck.Drop, startMark(r.A, r.Length, d)
		pivot := deck.PivotAt(r.Start.TailBeforeEdge, d, r.Channel.Depth)
		r.Pivot = &pivot
	}
	return r
}
