// Package joints finds which cuts of a plan make a joint, and checks its halves
// against each other: do they fit, do they lie flush, may the wood move.
package joints

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Check finds and checks every joint of the plan, and tells the runs of theirs.
func Check(d *deck.Deck) []deck.Warning {
	joints, warnings := joints(d)
	d.Joints = joints
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			at := slices.IndexFunc(joints, func(j deck.Joint) bool { return j.Into.Cut == r.Cut || j.Part.Cut == r.Cut })
			if at >= 0 {
				r.Joint = &joints[at]
			}
		}
	}
	return warnings
}

// Of finds every joint of a plan, in its order, as the drawings show them: the
// plan need not have a deck yet.
func Of(plan *joinery.Plan) []deck.Joint {
	found, _ := joints(&deck.Deck{Plan: plan})
	return found
}

// joints finds and checks every joint of the plan, in the plan's order.
func joints(d *deck.Deck) ([]deck.Joint, []deck.Warning) {
	var found []deck.Joint
	var warnings []deck.Warning
	seen := map[[2]*joinery.Cut]bool{}
	for i := range d.Plan.Pieces {
		piece := &d.Plan.Pieces[i]
		for k := range piece.Cuts {
			cut := &piece.Cuts[k]
			otherPiece, otherCut := d.Plan.Mate(cut)
			if otherPiece == nil || otherCut != nil && seen[[2]*joinery.Cut{otherCut, cut}] {
				continue
			}
			seen[[2]*joinery.Cut{cut, otherCut}] = true
			one, other := halfOf(piece, cut, otherCut), halfOf(otherPiece, otherCut, cut)
			if one.Cut == nil {
				one, other = other, one
			}
			if warning, apart := mateApart(one, other); apart {
				warnings = append(warnings, warning)
				continue
			}
			if !one.Cut.Kind.Receives {
				one, other = other, one
			}
			c := jointCheck{deck: d, scale: d.Plan.Shop.Scale, joint: deck.Joint{Into: one, Part: other}}
			c.run()
			found = append(found, c.joint)
			warnings = append(warnings, c.warnings...)
		}
	}
	warnings = append(warnings, tooLong(found, d.Plan.Shop.Scale)...)
	warnings = append(warnings, framesApart(found, d.Plan.Shop.Scale)...)
	warnings = append(warnings, betweenTooLong(found, warnings, d.Plan.Shop.Scale)...)
	warnings = append(warnings, placesDiffer(found, d.Plan.Shop.Scale)...)
	return found, append(warnings, tenonsMeet(found, d.Plan.Shop.Scale)...)
}

// halfOf is one half of a joint with another cut. A raised panel goes in as a whole,
// by the edge that faces the groove.
func halfOf(piece *joinery.Piece, cut, with *joinery.Cut) deck.Half {
	if cut == nil || cut.Kind.Shapes && with != nil && with.Kind.Receives {
		return deck.Half{Piece: piece, End: with.In.Opposite(), Enters: with.Depth}
	}
	return deck.Half{Piece: piece, Cut: cut, End: cut.At, Enters: cut.Length}
}

// mateApart warns of two halves that make no joint, or do not face each other.
func mateApart(one, other deck.Half) (deck.Warning, bool) {
	w := deck.Warning{Code: "mates-apart", Piece: one.Piece.Name, Cut: one.Cut.Name,
		Place: one.Cut.Places.At(one.Cut.Place, "mates")}
	switch {
	case other.Cut == nil && one.Cut.Kind.Receives:
		return w, false
	case other.Cut == nil:
		w.Text = fmt.Sprintf("%s is joined with a whole piece; only a %s is", one, receivers())
	case !one.Cut.Joins(other.Cut):
		w.Text = fmt.Sprintf("%s and %s make no joint: a tenon goes into a %s", one, other, receivers())
	case !one.Cut.Faces(other.Cut):
		into, part := one, other
		if !into.Cut.Kind.Receives {
			into, part = part, into
		}
		w.Text = fmt.Sprintf("%s points to the %s, but %s is cut in the %s: it would have to be in the %s",
			part, part.Cut.At, into, into.Cut.In, part.Cut.At.Opposite())
	default:
		return w, false
	}
	return w, true
}

// receivers names the kinds of cut that a part goes into.
func receivers() string { return joinery.KindsThat(func(k *joinery.Kind) bool { return k.Receives }) }

// ShoulderOf is how much the half stands back from its piece's side. Another cut
// across the same end, as a lap that leaves a haunch beside the tenon, or a
// notch or a rabbet at the end of a whole board, takes its depth off as well.
func ShoulderOf(h deck.Half, side joinery.Side) measure.Length {
	var back measure.Length
	if h.Cut != nil {
		for _, cheek := range h.Cut.Cheeks {
			if cheek.Side == side {
				back = cheek.Depth
			}
		}
	}
	for i := range h.Piece.Cuts {
		for _, ch := range h.Piece.Cuts[i].Channels {
			// What takes off less than half of the tenon's length leaves it that wide.
			if ch.Down == side && ch.Near == h.End && crossesEnd(ch, h.Piece.Size) && 2*ch.Width >= h.Enters {
				back = max(back, ch.Depth)
			}
		}
	}
	return back
}

// crossesEnd reports whether a channel takes the whole of an end off a side.
func crossesEnd(ch joinery.Channel, size joinery.Size) bool {
	return ch.Setback == 0 && ch.EndToEnd(size)
}

// acrossOf is the half's own size in a dimension.
func acrossOf(h deck.Half, d joinery.Dimension) measure.Length {
	return h.Piece.Size[d] - ShoulderOf(h, d.Low()) - ShoulderOf(h, d.High())
}
