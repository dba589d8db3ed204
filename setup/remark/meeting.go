package remark

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
	"fencecard/setup/solid"
)

// findMeeting looks for cuts that break into each other where the joints do
// not mean them to.
func findMeeting(w *work) []finding {
	var found []finding
	w.meetings(func(a, b *made, shared solid.Box) {
		found = append(found, finding{b.cut, fmt.Sprintf("the %s and the %s meet %s: %s",
			a.words(), b.words(), w.where(a, shared), w.apart(a, b, shared)), []string{"depth", "setback", "span"}})
	})
	return found
}

// meetings visits the pairs of cuts that break into each other, and what they share.
func (w *work) meetings(visit func(a, b *made, shared solid.Box)) {
	w.pairs(func(a, b *made) {
		if meant(a, b) {
			return
		}
		if shared := w.shared(a, b); !shared.Empty() && solid.Between(a.hollows, b.hollows, w.piece.Size) <= 0 {
			visit(a, b, shared)
		}
	})
}

// openings names the kind of the cut that each run breaks into, which is there by then.
func openings(d *deck.Deck) map[*deck.Run]string {
	found := map[*deck.Run]string{}
	for _, w := range works(d) {
		w.meetings(func(a, b *made, _ solid.Box) {
			if len(a.runs) == 0 || len(b.runs) == 0 {
				return // made by hand, when what is cut at the table is there
			}
			if deck.ByLastPass(a.runs[len(a.runs)-1], b.runs[len(b.runs)-1]) > 0 {
				a, b = b, a
			}
			for _, r := range b.runs {
				found[r] = a.cut.Kind.Name
			}
		})
	}
	return found
}

// shared is the block that two cuts have in common, of shaped edges where their
// sections are; an empty one where they do not meet.
func (w *work) shared(a, b *made) solid.Box {
	shared := a.box.And(b.box)
	if shared.Empty() || !a.channel.Section.Shaped() && !b.channel.Section.Shaped() {
		return shared
	}
	for _, one := range a.hollow.Boxes(w.piece.Size) {
		for _, other := range b.hollow.Boxes(w.piece.Size) {
			if !one.And(other).Empty() {
				return shared
			}
		}
	}
	return solid.Box{}
}

// meant reports whether two cuts may share room in a sound joint. What takes
// away an edge or an end is met by grooves and dados in most frames and cases.
// From the same side a groove runs into a mortise of its own line, a mortise
// lies wholly inside a dado or a plate's recess, and dados cross grooves.
func meant(a, b *made) bool {
	mortises := a.cut.Kind.Encloses || b.cut.Kind.Encloses
	switch {
	case !a.cut.Kind.Walled && !b.cut.Kind.Walled:
		return true
	case !a.cut.Kind.Walled || !b.cut.Kind.Walled:
		return !mortises || shallow(a, b) || shallow(b, a)
	case a.channel.Down != b.channel.Down:
		return false
	case !mortises:
		return true
	}
	across, run := a.hollow.Across, a.hollow.Run()
	inLine := a.hollow.Across == b.hollow.Across &&
		(a.box[across].Within(b.box[across]) || b.box[across].Within(a.box[across]))
	inside := func(x, y solid.Box) bool { return x[across].Within(y[across]) && x[run].Within(y[run]) }
	grooved := a.cut.Kind.Encloses != b.cut.Kind.Encloses
	return grooved && inLine || inside(a.box, b.box) || inside(b.box, a.box)
}

// shallow reports whether a cut that takes an edge or an end away leaves most
// of a mortise's walls, as the rabbet of a glazed frame does, or the cheek of a
// tenon with a wedge through it.
func shallow(mortise, other *made) bool {
	down := mortise.hollow.Down.Dimension()
	return mortise.cut.Kind.Encloses && 2*mortise.box[down].And(other.box[down]).Long() <= mortise.channel.Depth
}

// where tells between which lines two cuts meet, along the first one's run.
func (w *work) where(a *made, shared solid.Box) string {
	run := a.hollow.Run()
	from, side := shared[run], run.Low()
	if top := w.piece.Size[run]; top-from.Hi < from.Lo {
		from, side = solid.Range{Lo: top - from.Hi, Hi: top - from.Lo}, run.High()
	}
	return fmt.Sprintf("from %s to %s from the %s", w.text(from.Lo), w.text(from.Hi), side)
}

// apart says how to keep two cuts apart.
func (w *work) apart(a, b *made, shared solid.Box) string {
	downA, downB := a.channel.Down.Dimension(), b.channel.Down.Dimension()
	web := trade.WebInLeg.Of(w.scale)
	overA, overB := shared[downA].Long(), shared[downB].Long()
	switch {
	case !a.cut.Kind.Walled || !b.cut.Kind.Walled:
		enclosing := a
		if b.cut.Kind.Encloses {
			enclosing = b
		}
		return fmt.Sprintf("move the %s away, or let the other cut take less", enclosing.cut.Kind)
	case a.channel.Down == b.channel.Down:
		return "move one of them, or shorten its span"
	case downA == downB:
		return fmt.Sprintf("make one of them %s shallower, or both %s, so that %s is left between them",
			w.enough(overA+web), w.enough((overA+web)/2), w.text(web))
	}
	part, mitred := "", ""
	if a.cut.Kind.Encloses && b.cut.Kind.Encloses {
		part, mitred = ", the tenon as much shorter", fmt.Sprintf("; or mitre the ends of both tenons over the last %s", w.enough(max(overA, overB)))
	}
	return fmt.Sprintf("make the %s %s shallower or the %s %s shallower%s, which leaves %s between them%s",
		nameOf(a), w.enough(w.shorter(a, b)), nameOf(b), w.enough(w.shorter(b, a)), part, w.text(web), mitred)
}

// shorter returns how much shallower a must be to end a web before b.
func (w *work) shorter(a, b *made) measure.Length {
	down := a.channel.Down.Dimension()
	wall := b.box[down]
	reach := wall.Lo
	if a.channel.Down.High() {
		reach = w.piece.Size[down] - wall.Hi
	}
	return min(a.channel.Depth, a.channel.Depth-reach+trade.WebInLeg.Of(w.scale))
}

func nameOf(m *made) string {
	return fmt.Sprintf("%s in the %s", m.cut.Kind, m.channel.Down)
}

// findOtherFace looks for cuts in the middle of the stock, one running into the
// other, that are set from opposite faces: they are in line in stock of just the
// size that the plan gives.
func findOtherFace(w *work) []finding {
	var found []finding
	told := map[*made]bool{}
	w.pairs(func(a, b *made) {
		across := a.hollow.Across
		if told[b] || !w.middle(a) || !w.middle(b) || b.hollow.Across != across || far(a, b, 1) || faces(a) == faces(b) {
			return
		}
		told[b] = true
		thick := w.text(w.piece.Size[across])
		found = append(found, finding{b.cut, fmt.Sprintf("the %s is set from the %s and the %s from the %s, both in the middle: stock that is off %s puts them as much out of line, so plane all of it to just that",
			a.words(), faces(a), b.words(), faces(b), thick), []string{"fence", "setback"}})
	})
	return found
}

// middle reports whether a channel made at the table stands in the middle between
// two walls.
func (w *work) middle(m *made) bool {
	return len(m.runs) > 0 && m.channel.InMiddle(w.piece.Size)
}

// faces names the sides of a piece that a channel's runs go to the fence by.
func faces(m *made) string {
	first, last := m.runs[0].Step.Fence, m.runs[len(m.runs)-1].Step.Fence
	if first == last {
		return first.String()
	}
	return "both faces"
}
