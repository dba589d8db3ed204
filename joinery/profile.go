package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// Profile shapes an edge by a bit with an outline.
var Profile = Kind{
	Name:     "profile",
	Says:     "an edge shaped by a bit with an outline",
	Required: []string{"on"},
	Optional: []string{"shape", "radius", "raise", "reach", "span"},
	Example:  "on: top front, shape: round-over, radius: 1/4",
	Refuses: map[string]Refusal{
		"fence":  {Why: "on: says which edge is at the fence"},
		"ends":   {Why: "a stopped edge fades out; what is to be crisp is carved"},
		"start":  {Why: "nothing is bored into an edge that shows"},
		"repeat": {"it shapes one arris", "write one profile for each arris"},
		"mates":  {Why: "an edge that goes into a groove is that of a panel"},
	},
	Shapes:  true,
	Deepest: timber.Share{Num: 1, Den: 1},
	lay:     layProfile,
}

// Moulding is what a maker says of a shaped edge.
type Moulding struct {
	Down, Fence Side // of the arris: the face on the table and the edge at the fence
	Outline     *Outline
	Raise       measure.Length // 0: the whole outline
	Reach       measure.Length // over the face at the table; 0: all of it
	Leaves      measure.Length // of a raised panel: the thickness of its edge
}

// mirrored returns the moulding as seen in a mirror.
func (m *Moulding) mirrored(turn func(*Side)) *Moulding {
	if m == nil {
		return nil
	}
	turned := *m
	turn(&turned.Down)
	turn(&turned.Fence)
	return &turned
}

// fenceFlat is the least flat that is left of an edge to ride the fence: 3/16 in,
// 5 mm (common practice, no source).
func fenceFlat(u measure.Unit) measure.Length {
	if u == measure.Millimetres {
		return 5 * measure.Millimetre
	}
	return 3 * measure.Inch / 16
}

func layProfile(l *layout) {
	m := l.cut.Moulding
	if m == nil || m.Outline == nil || !l.crosswise("on", m.Fence, m.Down) {
		return
	}
	raise := m.Raise
	if raise == 0 {
		raise = m.Outline.Deep()
	}
	channel, ok := l.shaped("", m.Down, m.Fence, raise, m.Reach)
	if !ok {
		return
	}
	lo, hi, spanOK := l.reach(channel.Run())
	channel.Lo, channel.Hi = lo, hi
	if spanOK && l.leavesFlat(channel) {
		l.channels = append(l.channels, channel)
	}
}

// shaped is a channel along an edge as a bit with the cut's outline shapes it.
func (l *layout) shaped(part string, down, fence Side, raise, reach measure.Length) (Channel, bool) {
	o := l.cut.Moulding.Outline
	section := Section{Outline: o}
	thick, across := l.piece.Size.Between(down), l.piece.Size.Between(fence)
	whole := measure.FromMillimetres(section.Reach(raise))
	switch {
	case raise > thick:
		l.fault("raise it "+l.text(thick)+" at the most"+l.orMetric(raise, thick), []string{"raise", "leaves", "on"},
			"raised %s the bit stands higher than the piece is thick, %s", l.text(raise), l.text(thick))
		return Channel{}, false
	case reach > whole:
		l.fault("write reach: full, or "+l.text(l.scale.Floor(whole))+" at the most", []string{"reach"},
			"raised %s the bit reaches %s over the face, not %s", l.text(raise), l.text(whole), l.text(reach))
		return Channel{}, false
	case whole > across || reach > across:
		l.fault("take a smaller bit, or give reach: "+l.text(across)+" at the most", []string{"reach", "bit", "radius", "on"},
			"the cut reaches %s over a face that measures %s", l.text(whole), l.text(across))
		return Channel{}, false
	}
	if reach > 0 {
		section.Forward = whole - reach
	}
	whole = measure.FromMillimetres(section.Widest(raise))
	if whole == 0 {
		l.fault("raise it higher", []string{"raise"}, "raised %s the bit cuts nothing", l.text(raise))
		return Channel{}, false
	}
	return Channel{Part: part, Down: down, Near: fence, Width: whole, Depth: raise, Section: section,
		Hi: l.piece.Size[down.Dimension().Third(fence.Dimension())]}, true
}

// leavesFlat checks that enough of the edge stays flat to ride the fence: above
// this cut, and beside what is shaped on the same edge from the other face.
func (l *layout) leavesFlat(ch Channel) bool {
	size := l.piece.Size
	left, least := size.Between(ch.Down)-ch.Depth, fenceFlat(l.scale.Unit)
	beside := ""
	for i := range l.piece.Cuts {
		c := &l.piece.Cuts[i]
		if c == l.cut || c.Name == l.cut.Name {
			break // what comes later is held against this one
		}
		for _, other := range c.Channels {
			if other.Section.Shaped() && other.Near == ch.Near && other.Down == ch.Down.Opposite() &&
				other.Lo < ch.Hi && ch.Lo < other.Hi {
				left -= other.Depth
				beside = " between it and \"" + c.Name + "\""
			}
		}
	}
	if left >= least {
		return true
	}
	l.fault("raise the bit less, or shape the edge of thicker stock; or write by: hand and run it on a straight board fixed on top that rides the fence", []string{"raise", "bit", "radius", "on"},
		"only %s of the edge stays flat%s to ride the fence, and the fence wants %s", l.text(max(0, left)), beside, l.text(least))
	return false
}
