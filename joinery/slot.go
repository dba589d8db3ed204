package joinery

import (
	"errors"
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
)

// Slot is a hole for a screw, longer than the screw and its head are wide, in
// which the screw moves with the board that it holds.
var Slot = Kind{
	Name:     "slot",
	Says:     "a slot in which a screw can move",
	Required: []string{"in", "at", "along", "screw", "head", "head depth", "move"},
	Example:  "in: bottom, at: [4 from left, 3/4 from front], along: front-back, screw: 3/16, head: 3/8, head depth: 1/2, move: seasons of 10",
	Refuses: map[string]Refusal{
		"ends":   {Why: "its ends stay round, as screw and head are"},
		"mates":  {Why: "a screw goes through it, and no joint"},
		"repeat": {"how long each slot is follows from its own distance to the fixed line", "write one slot for each screw"},
	},
	Walled:  true,
	Screwed: true,
	Deepest: timber.Share{Num: 3, Den: 4}, // common practice, no source
	Through: true,
	lay:     laySlot,
}

// ScrewSlot is what a maker says of a slot.
type ScrewSlot struct {
	Centre    [2]Setback     // from two sides that meet
	Along     Dimension      // the way the board moves
	Screw     measure.Length // how wide the slot is for the screw's shank
	Head      measure.Length // and for its head
	HeadDepth measure.Length
	Move      timber.ScrewMove
}

// Mirrored returns the slot as seen in a mirror.
func (s *ScrewSlot) mirrored(turn func(*Side)) *ScrewSlot {
	if s == nil {
		return nil
	}
	m := *s
	for i := range m.Centre {
		turn(&m.Centre[i].From)
	}
	return &m
}

// laySlot lays two channels on one centre line, the wide one for the head before
// the narrow one for the shank, which goes through. Both are longer than what
// is to move in them by the whole movement, half of it each way, their ends
// rounded outward to the scale.
func laySlot(l *layout) {
	c, s := l.cut, l.cut.Slot
	if s == nil || c.In == NoSide {
		return
	}
	if s.Along == c.In.Dimension() {
		l.fault(fmt.Sprintf("write along: %s or along: %s, the way the board moves", besideOne(c.In).Dimension(), s.Along.Third(besideOne(c.In).Dimension())),
			[]string{"along"}, "the bit enters the %s, so the slot cannot run %s", c.In, s.Along)
		return
	}
	thick := l.piece.Size.Between(c.In)
	switch {
	case s.Head <= s.Screw:
		l.fault("give the width of the slot for the head, more than "+l.text(s.Screw)+", or one for the shank that is narrower", []string{"head"},
			"the head gets %s and the screw %s, so the head would go through", l.text(s.Head), l.text(s.Screw))
		return
	case s.HeadDepth >= thick:
		l.fault("make it less than "+l.text(thick)+", so that wood is left under the head"+l.orMetric(s.HeadDepth, thick), []string{"head depth"},
			"the slot for the head is %s deep in %s of stock, so the head bears on nothing", l.text(s.HeadDepth), l.text(thick))
		return
	}
	moves, err := s.Move.Over(l.piece.Wood)
	if err != nil {
		var why plantext.Fault
		errors.As(err, &why)
		l.fault("write the whole movement as a length, such as move: 1/4", []string{"move"}, "how far the screw moves is not known: %s", why.Problem)
		return
	}
	across := c.In.Dimension().Third(s.Along)
	middle, near, ok := l.slotCentre(across)
	if !ok {
		return
	}
	head := Channel{Part: "head", Down: c.In, Near: near, Width: s.Head, Depth: s.HeadDepth}
	shank := Channel{Part: "shank", Down: c.In, Near: near, Width: s.Screw, Depth: thick, Recess: Recess{Depth: s.HeadDepth, Width: s.Head}}
	for _, channel := range []*Channel{&head, &shank} {
		half := l.scale.Ceil((channel.Width + moves + 1) / 2)
		channel.Lo, channel.Hi = middle[s.Along]-half, middle[s.Along]+half
		channel.Setback = middle[across] - channel.Width/2
		if near.High() {
			channel.Setback = l.piece.Size[across] - middle[across] - channel.Width/2
		}
	}
	shank.Recess.Beyond = shank.Lo - head.Lo
	if l.slotInside(s.Along, head.Hi-head.Lo, middle, moves) && l.slotInside(across, s.Head, middle, 0) {
		l.channels = append(l.channels, head, shank)
	}
}

// slotCentre finds the slot's centre, measured from the low sides, and the side
// that its walls are measured from.
func (l *layout) slotCentre(across Dimension) (middle Size, near Side, ok bool) {
	c, s := l.cut, l.cut.Slot
	near = across.Low()
	if wish := c.Fence.Side; wish != NoSide && wish.Dimension() == across {
		near = wish
	}
	var said [3]bool
	for _, line := range s.Centre {
		if !line.Centred && !l.crosswise("at", line.From, c.In) {
			return middle, near, false
		}
		if line.Centred {
			continue
		}
		d := line.From.Dimension()
		if said[d] {
			l.fault("measure it once from the "+s.Along.Low().String()+" or the "+s.Along.High().String()+", and once from the "+across.Low().String()+" or the "+across.High().String(),
				[]string{"at"}, "at measures the centre twice %s", d)
			return middle, near, false
		}
		said[d] = true
		middle[d] = line.Distance
		if line.From.High() {
			middle[d] = l.piece.Size[d] - line.Distance
		}
		if d == across {
			near = line.From
		}
	}
	for _, d := range []Dimension{s.Along, across} {
		if !said[d] {
			middle[d] = l.piece.Size[d] / 2
		}
	}
	return middle, near, true
}

// slotInside checks that the slot for the head, so long in one dimension, leaves
// wood at both its ends.
func (l *layout) slotInside(d Dimension, long measure.Length, middle Size, moves measure.Length) bool {
	size, half := l.piece.Size[d], (long+1)/2
	if middle[d] > half && size-middle[d] > half {
		return true
	}
	side, at := d.Low(), middle[d]
	if size-at < at {
		side, at = d.High(), size-at
	}
	why := fmt.Sprintf("the slot for the head is %s wide", l.text(long))
	others := "or take a screw with a smaller head"
	if moves > 0 {
		why = fmt.Sprintf("the slot for the head is %s long, %s and a movement of %s,", l.text(long), l.text(l.cut.Slot.Head), l.scale.Say(moves))
		others += ", or one nearer the fixed line, which moves less"
	}
	remedy := fmt.Sprintf("put the centre more than %s from the %s, %s", l.text(half), side, others)
	if size <= long+l.scale.Division {
		remedy = fmt.Sprintf("make the piece more than %s %s, %s", l.text(long), d, others)
	}
	out := "and leaves nothing"
	if at < half {
		out = fmt.Sprintf("and would run %s out", l.scale.Say(half-at))
	}
	l.fault(remedy, []string{"at"}, "%s %s at the %s", why, out, side)
	return false
}
