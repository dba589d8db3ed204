package setup

import (
	"fmt"
	"slices"

	"fencecard/joinery"
)

// Joint is two halves of the plan that go together, checked against each
// other. It is made from a cut's mates; a joint that both halves name is one.
type Joint struct {
	Into     Half // the mortise, groove or dado
	Part     Half // the tenon, or a whole piece such as a shelf
	Fits     []Fit
	Reveals  []Reveal
	Movement *Movement // nil where no grain crosses
}

// Half is one side of a joint. Cut is nil for a whole piece.
type Half struct {
	Piece *joinery.Piece
	Cut   *joinery.Cut
}

// Fit is one dimension of a joint: the room, what goes into it, and the gap
// that the shop wants between the two.
type Fit struct {
	Of                string // "thickness", "width" or "length"
	Room, Part, Wants joinery.Length
}

// Gap is what is left of the room; negative where the part does not go in.
func (f Fit) Gap() joinery.Length { return f.Room - f.Part }

// Reveal is how far the part's face stands back from the face of the piece it
// goes into; negative where it stands proud.
type Reveal struct {
	Side     joinery.Side
	Distance joinery.Length
}

// join finds and checks every joint of the plan, and tells the cards of theirs.
func (d *Deck) join() []Warning {
	joints, warnings := joints(d)
	d.Joints = joints
	for i := range d.Setups {
		for k := range d.Setups[i].Cards {
			c := &d.Setups[i].Cards[k]
			at := slices.IndexFunc(joints, func(j Joint) bool { return j.Into.Cut == c.Cut || j.Part.Cut == c.Cut })
			if at >= 0 {
				c.Joint = &joints[at]
			}
		}
	}
	return warnings
}

// joints finds and checks every joint of the plan, in the plan's order.
func joints(d *Deck) ([]Joint, []Warning) {
	var found []Joint
	var warnings []Warning
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
			one, other := Half{piece, cut}, Half{otherPiece, otherCut}
			if warning, apart := mateApart(one, other); apart {
				warnings = append(warnings, warning)
				continue
			}
			if !one.Cut.Channelled() {
				one, other = other, one
			}
			c := jointCheck{deck: d, scale: d.Plan.Shop.Scale, joint: Joint{Into: one, Part: other}}
			c.run()
			found = append(found, c.joint)
			warnings = append(warnings, c.warnings...)
		}
	}
	warnings = append(warnings, placesDiffer(found, d.Plan.Shop.Scale)...)
	return found, append(warnings, tenonsMeet(found, d.Plan.Shop.Scale)...)
}

// mateApart warns of two halves that make no joint, or do not face each other.
func mateApart(one, other Half) (Warning, bool) {
	w := Warning{Code: "mates-apart", Piece: one.Piece.Name, Cut: one.Cut.Name,
		Place: one.Cut.Places.At(one.Cut.Place, "mates")}
	switch {
	case other.Cut == nil && one.Cut.Channelled():
		return w, false
	case other.Cut == nil:
		w.Text = fmt.Sprintf("%s is joined with a whole piece; only a mortise, groove or dado is", one)
	case !one.Cut.Joins(other.Cut):
		w.Text = fmt.Sprintf("%s and %s make no joint: a tenon goes into a mortise, groove or dado", one, other)
	case !one.Cut.Faces(other.Cut):
		into, part := one, other
		if !into.Cut.Channelled() {
			into, part = part, into
		}
		w.Text = fmt.Sprintf("%s points to the %s, but %s is cut in the %s: it would have to be in the %s",
			part, part.Cut.At, into, into.Cut.In, part.Cut.At.Opposite())
	default:
		return w, false
	}
	return w, true
}

// String names the half for a message: `tenon "left" of "seat rail"`.
func (h Half) String() string {
	if h.Cut == nil {
		return fmt.Sprintf("%q", h.Piece.Name)
	}
	return fmt.Sprintf("%s %q of %q", h.Cut.Kind, h.Cut.Name, h.Piece.Name)
}

// shoulder is how much the half stands back from its piece's side; a whole
// piece has none.
func (h Half) shoulder(side joinery.Side) joinery.Length {
	if h.Cut == nil {
		return 0
	}
	for _, cheek := range h.Cut.Cheeks {
		if cheek.Side == side {
			return cheek.Depth
		}
	}
	return 0
}

// across is the half's own size in a dimension.
func (h Half) across(d joinery.Dimension) joinery.Length {
	return h.Piece.Size[d] - h.shoulder(d.Low()) - h.shoulder(d.High())
}
