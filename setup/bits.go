package setup

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// maker finds the ways to make channels in one shop.
type maker struct {
	shop *joinery.Shop
}

// ways returns every way to make a channel, best first: the bit of the exact
// width, else the fewest fence distances, else the widest bit; the side the
// walls are measured from before the one opposite. What [maker.sift] leaves out
// counts only where nothing else will do. The misfit says why there is no way.
func (m maker) ways(p *joinery.Piece, c *joinery.Cut, ch joinery.Channel) ([]Way, misfit) {
	var ways []Way
	var why misfit
	for i := range m.shop.Bits {
		bit := &m.shop.Bits[i]
		if c.Bit != "" && c.Bit != bit.Name {
			continue
		}
		if (bit.Outline != nil) != ch.Section.Shaped() {
			continue
		}
		if ch.Section.Shaped() {
			way, reason := m.edge(bit, p, ch)
			if reason != fits {
				why.note(reason, bit)
			} else {
				ways = append(ways, way)
			}
			continue
		}
		if reason := m.unfit(bit, ch, p.Size); reason != fits {
			why.note(reason, bit)
			continue
		}
		if !ladder.CapFor(bit, p.Wood, m.shop).Reaches(ch.Depth, m.shop.Scale) {
			why.note(tooCoarse, bit)
			continue
		}
		made, reason := m.waysWith(bit, p, c, ch)
		if reason != fits {
			why.note(reason, bit)
		}
		ways = append(ways, made...)
	}
	if ch.Section.Shaped() {
		return ways, why
	}
	ways = m.sift(ways, ch, p.Size)
	slices.SortStableFunc(ways, func(a, b Way) int { return better(a, b, ch) })
	return ways, why
}

// waysWith returns the ways of one bit, or why it has none or one less.
func (m maker) waysWith(bit *joinery.Bit, p *joinery.Piece, c *joinery.Cut, ch joinery.Channel) ([]Way, reason) {
	var ways []Way
	var why reason
	keep := func(w Way, r reason) {
		if r == fits {
			r = m.carry(&w, p, c, ch)
		}
		if r == fits {
			ways = append(ways, w)
		} else {
			why = r
		}
	}
	if end, ok := crossing(p, c, ch); ok {
		if bit.Diameter > widestAcross(m.shop.Scale.Unit) && c.Bit == "" {
			return nil, tooBroad
		}
		keep(m.cross(bit, p, end))
		return ways, why
	}
	for _, side := range fencing(c, ch, p.Size) {
		keep(m.way(bit, c, side, p.Size))
	}
	if c.Fence.Either {
		if way, ok := m.turned(bit, c, ch, p.Size); ok {
			keep(way, fits)
		}
	}
	return ways, why
}

// carry puts the guided steps of a way on the shop's carriage, and tells why the
// bit does not reach through its base.
func (m maker) carry(w *Way, p *joinery.Piece, c *joinery.Cut, ch joinery.Channel) reason {
	for i := range w.Steps {
		step := &w.Steps[i]
		w.Passes++
		if nibble := nibbled(p, c, ch, *step, m.shop.Scale); nibble != nil {
			w.Passes += nibble.Passes - 1
		}
		if m.shop.Cross.With != joinery.Carriage || !guided(p, c, ch, *step, m.shop.Scale) {
			continue
		}
		step.Carriage = m.shop.Cross.Base
		switch high := ch.Depth + step.Carriage; {
		case m.shop.Lift > 0 && m.shop.Lift < high:
			return tooHighOnBase
		case w.Bit.Shank > w.Bit.True() && w.Bit.Cutting > 0 && w.Bit.Cutting < high:
			return shankInBase
		}
	}
	return fits
}

// sift leaves out, each time if others remain: bits whose label is no division
// of the shop's scale, metric ones at an inch fence, which leave distances that
// no rule shows; bits not known to plunge, where the work is dropped on; and
// bits whose centre runs outside the wood of a stopped cut at an edge, which end
// it short of its line. Of one bit's ways it leaves out drops that are hard, if
// others remain: that is a question of the side at the fence, and a narrower bit
// that gains its own width of tail is no way out.
func (m maker) sift(ways []Way, ch joinery.Channel, size joinery.Size) []Way {
	edge := (ch.OpenBeside(ch.Near, size) || ch.OpenBeside(ch.Near.Opposite(), size)) &&
		!ch.EndToEnd(size)
	easier := map[*joinery.Bit]bool{} // bits that have a way without a hard drop
	for _, w := range ways {
		easier[w.Bit] = easier[w.Bit] || !w.Drops || m.easy(w, ch, size)
	}
	for _, good := range []func(Way) bool{
		func(w Way) bool { return w.Bit.True() == ch.Width || m.shop.Scale.On(w.Bit.Diameter) },
		func(w Way) bool { return !w.Drops || w.Bit.Plunges == joinery.Yes },
		func(w Way) bool { return !w.Drops || m.easy(w, ch, size) || !easier[w.Bit] },
		func(w Way) bool { return !edge || w.Bit.True() <= 2*ch.Width },
	} {
		if slices.ContainsFunc(ways, good) {
			ways = slices.DeleteFunc(ways, func(w Way) bool { return !good(w) })
		}
	}
	return ways
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
		cmp.Compare(a.Passes, b.Passes),
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
func (m maker) way(bit *joinery.Bit, c *joinery.Cut, ch joinery.Channel, size joinery.Size) (Way, reason) {
	at := positions(ch, size, bit.True(), m.shop.Scale)
	way := Way{Bit: bit, Drops: !c.Bored && drops(ch, ch.Near, size)}
	switch {
	case at == nil && bit.True() < ch.Width:
		return Way{}, tooNarrow
	case at == nil:
		return Way{}, tooWide
	case way.Drops && bit.Plunges == joinery.No:
		return Way{}, noPlunge
	case m.tooSteep(bit, c, ch, size):
		return Way{}, tooSteep
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
func (m maker) turned(bit *joinery.Bit, c *joinery.Cut, ch joinery.Channel, size joinery.Size) (Way, bool) {
	across, d, other := size.Between(ch.Near), bit.True(), ch.Near.Opposite()
	near := (across+ch.Width)/2 - d
	way := Way{Bit: bit, Drops: !c.Bored && (drops(ch, ch.Near, size) || drops(ch, other, size))}
	switch {
	case 2*ch.Setback+ch.Width != across, d >= ch.Width, 2*d < ch.Width+m.shop.Scale.Division:
		return Way{}, false
	case m.tooSteep(bit, c, ch, size), m.tooSteep(bit, c, ch.Reversed(size), size):
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
func (m maker) within(bit *joinery.Bit, near measure.Length) bool {
	reach := m.shop.Fence.Reach
	return reach == 0 || deck.FenceAt(bit, near).Centre <= reach
}

// entersRecess reports whether the shank of a bit that cuts less deep than the
// channel goes into the recess over it, clear of its walls.
func entersRecess(bit *joinery.Bit, ch joinery.Channel) bool {
	return bit.Shank > 0 && bit.Cutting >= ch.Depth-ch.Recess.Depth &&
		bit.Shank+2*joinery.ShankRoom <= ch.Recess.Width &&
		(bit.Shank-bit.True())/2+joinery.ShankRoom <= ch.Recess.Beyond
}

// unfit tells why a bit cannot make the channel at any fence distance.
func (m maker) unfit(bit *joinery.Bit, ch joinery.Channel, size joinery.Size) reason {
	run := ch.Run()
	lowOpen, highOpen := ch.OpenAt(run.Low(), size), ch.OpenAt(run.High(), size)
	walled := !ch.OpenBeside(ch.Near, size) && !ch.OpenBeside(ch.Near.Opposite(), size)
	switch {
	case walled && bit.True() > ch.Width:
		return tooWide // said before the rest: no other change would help
	case m.shop.Opening > 0 && m.shop.Opening < bit.True():
		return widerThanOpening
	case m.shop.Lift > 0 && m.shop.Lift < ch.Depth:
		return tooHigh
	case bit.Cutting > 0 && bit.Cutting < ch.Depth && !entersRecess(bit, ch):
		return tooShort
	case !lowOpen && !highOpen && !ch.Section.Shaped() && bit.True() > ch.Hi-ch.Lo:
		return longerThanSpan
	}
	return fits
}
