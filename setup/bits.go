package setup

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// maker finds the ways to make channels in one shop.
type maker struct {
	shop *joinery.Shop
}

// ways returns every way to make a channel, best first: the bit of the exact
// width, else the fewest fence distances, else the widest bit; a bit known to
// plunge before one that may; the side the walls are measured from before the
// one opposite. A bit whose label is no division of the shop's scale, a metric
// one at an inch fence, counts only where it has the exact width or nothing
// else will do: it leaves distances that no rule shows. The misfit says why
// there is no way.
func (m maker) ways(p *joinery.Piece, c *joinery.Cut, ch joinery.Channel) ([]Way, misfit) {
	var ways []Way
	var why misfit
	for i := range m.shop.Bits {
		bit := &m.shop.Bits[i]
		if reason := m.unfit(bit, ch, p.Size); reason != fits {
			why.note(reason, bit)
			continue
		}
		if !ladder.CapFor(bit, p.Wood, m.shop).Reaches(ch.Depth, m.shop.Scale) {
			why.note(tooCoarse, bit)
			continue
		}
		for _, side := range fencing(c, ch, p.Size) {
			way, reason := m.way(bit, side, p.Size)
			if reason != fits {
				why.note(reason, bit)
				continue
			}
			ways = append(ways, way)
		}
		if c.Fence.Either {
			if way, ok := m.turned(bit, ch, p.Size); ok {
				ways = append(ways, way)
			}
		}
	}
	ways = m.readable(ways, ch)
	slices.SortStableFunc(ways, func(a, b Way) int { return better(a, b, ch) })
	return ways, why
}

// readable leaves out the ways of bits off the scale, if others remain.
func (m maker) readable(ways []Way, ch joinery.Channel) []Way {
	onScale := func(w Way) bool {
		return w.Bit.True() == ch.Width || m.shop.Scale.On(w.Bit.Diameter)
	}
	if !slices.ContainsFunc(ways, onScale) {
		return ways
	}
	return slices.DeleteFunc(ways, func(w Way) bool { return !onScale(w) })
}

// better orders the ways to make a channel.
func better(a, b Way, ch joinery.Channel) int {
	last := func(yes bool) int {
		if yes {
			return 1
		}
		return 0
	}
	return cmp.Or(
		cmp.Compare(last(a.Bit.True() != ch.Width), last(b.Bit.True() != ch.Width)),
		cmp.Compare(len(a.Steps), len(b.Steps)),
		cmp.Compare(last(a.Drops && a.Bit.Plunges != joinery.Yes), last(b.Drops && b.Bit.Plunges != joinery.Yes)),
		// A down-cut bit packs its chips where the work is dropped on.
		cmp.Compare(last(a.Drops && a.Bit.Kind == joinery.DownCut), last(b.Drops && b.Bit.Kind == joinery.DownCut)),
		cmp.Compare(b.Bit.True(), a.Bit.True()),
		cmp.Compare(last(a.Steps[0].Turned), last(b.Steps[0].Turned)),
	)
}

// fencing returns the channel as measured from each side the maker allows at
// the fence. With either side allowed, the side that would put the wood
// between bit and fence is left out: the bit would climb.
func fencing(c *joinery.Cut, ch joinery.Channel, size joinery.Size) []joinery.Channel {
	other := ch.Reversed(size)
	switch {
	case c.Fence.Either && ch.OpenBeside(ch.Near, size) != ch.OpenBeside(other.Near, size):
		if ch.OpenBeside(other.Near, size) {
			return []joinery.Channel{other}
		}
		return []joinery.Channel{ch}
	case c.Fence.Either:
		return []joinery.Channel{ch, other}
	case c.Fence.Side == other.Near:
		return []joinery.Channel{other}
	}
	return []joinery.Channel{ch}
}

// way makes the channel with a bit, its Near side to the fence.
func (m maker) way(bit *joinery.Bit, ch joinery.Channel, size joinery.Size) (Way, reason) {
	at := positions(ch, size, bit.True(), m.shop.Scale)
	way := Way{Bit: bit, Drops: drops(ch, ch.Near, size)}
	switch {
	case at == nil && bit.True() < ch.Width:
		return Way{}, tooNarrow
	case at == nil:
		return Way{}, tooWide
	case way.Drops && bit.Plunges == joinery.No:
		return Way{}, noPlunge
	case !m.within(bit, at[len(at)-1]):
		return Way{}, beyondReach
	}
	way.Steps = make([]deck.Step, len(at))
	for i, near := range at {
		way.Steps[i] = deck.Step{
			Bit: bit, NearEdge: near, Down: ch.Down, Fence: ch.Near,
			Position: i + 1, Of: len(at),
		}
	}
	return way, fits
}

// drops reports whether the work is dropped onto the bit, that is whether the
// channel is stopped towards the end that leads.
func drops(ch joinery.Channel, fence joinery.Side, size joinery.Size) bool {
	return !ch.OpenAt(Leads(fence, ch.Down), size)
}

// turned makes a centred channel wider than the bit at one fence distance, the
// piece turned for the second run. Each run cuts the half far from the fence;
// the near half first would make the second a climb cut.
func (m maker) turned(bit *joinery.Bit, ch joinery.Channel, size joinery.Size) (Way, bool) {
	across, d, other := size.Between(ch.Near), bit.True(), ch.Near.Opposite()
	near := (across+ch.Width)/2 - d
	way := Way{Bit: bit, Drops: drops(ch, ch.Near, size) || drops(ch, other, size)}
	switch {
	case 2*ch.Setback+ch.Width != across, d >= ch.Width, 2*d < ch.Width+m.shop.Scale.Division:
		return Way{}, false
	case way.Drops && bit.Plunges == joinery.No, !m.within(bit, near):
		return Way{}, false
	}
	run := deck.Step{Bit: bit, NearEdge: near, Down: ch.Down, Fence: ch.Near, Position: 1, Of: 2, Turned: true}
	back := run
	back.Fence, back.Position = other, 2
	way.Steps = []deck.Step{run, back}
	return way, true
}

// within reports whether the fence reaches that far from the bit's centre.
func (m maker) within(bit *joinery.Bit, near joinery.Length) bool {
	reach := m.shop.Fence.Reach
	return reach == 0 || deck.FenceAt(bit, near).Centre <= reach
}

// unfit tells why a bit cannot make the channel at any fence distance.
func (m maker) unfit(bit *joinery.Bit, ch joinery.Channel, size joinery.Size) reason {
	run := ch.Run()
	lowOpen, highOpen := ch.OpenAt(run.Low(), size), ch.OpenAt(run.High(), size)
	walled := !ch.OpenBeside(ch.Near, size) && !ch.OpenBeside(ch.Near.Opposite(), size)
	switch {
	case walled && bit.True() > ch.Width:
		return tooWide // said before the rest: no other change would help
	case m.shop.Lift > 0 && m.shop.Lift < ch.Depth:
		return tooHigh
	case bit.Cutting > 0 && bit.Cutting < ch.Depth:
		return tooShort
	case !lowOpen && !highOpen && bit.True() > ch.Hi-ch.Lo:
		return longerThanSpan
	}
	return fits
}
