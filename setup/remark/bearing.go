package remark

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
	"fencecard/setup/solid"
)

// swings reports whether work reaches out from the fence many times as far as it
// rides along it, so that it turns about the bit.
func swings(r *deck.Run, rides measure.Length) bool {
	return r.Piece.Size.Between(r.Step.Fence) > trade.SwingShare*rides
}

// longAcross reports whether work that swings reaches out so far that one person
// does not both carry it and hold it square.
func longAcross(r *deck.Run, rides measure.Length, s measure.Scale) bool {
	return swings(r, rides) && r.Piece.Size.Between(r.Step.Fence) > trade.LongAcross.Of(s)
}

// findLongAcross looks for tenons and laps at the ends of long work, each told by its
// run that rides the least.
func findLongAcross(w *work) []finding {
	least := map[*joinery.Cut]*deck.Run{}
	var found []finding
	for _, m := range w.atTable() {
		r := m.runs[0]
		if old := least[m.cut]; !m.cut.Kind.Walled && longAcross(r, w.riding(r), w.scale) && (old == nil || w.riding(r) < w.riding(old)) {
			least[m.cut] = r
		}
	}
	for i := range w.piece.Cuts {
		cut := &w.piece.Cuts[i]
		r := least[cut]
		if r == nil {
			continue
		}
		found = append(found, finding{cut, fmt.Sprintf("for the %s %q it is swung across the bit by its end, %s reaching out from the fence and only %s riding it: saw this end, or bring the router to the work along a guide; at the table only with a second person, or with roller stands level with it",
			cut.Kind, cut.Name, w.text(r.Piece.Size.Between(r.Step.Fence)), w.text(w.riding(r))), []string{"length", "at"}})
	}
	return found
}

// riding is how much of a piece rides the fence at the last pass of a run, along the
// feed: an end that is crossed by its edges has lost its faces by then, and rides with
// what is left between them.
func (w *work) riding(r *deck.Run) measure.Length {
	run, side := r.Leads.Dimension(), r.Step.Fence
	d := side.Dimension()
	up := d.Third(run)
	var gone []solid.Range
	for _, m := range w.cuts {
		last := len(m.runs) - 1
		if last < 0 && !slices.Contains(r.Cut.After, m.cut.Name) || last >= 0 && deck.ByLastPass(m.runs[last], r) >= 0 {
			continue
		}
		if touches(m.box, side, w.piece.Size) && 3*m.box[up].Long() >= 2*w.piece.Size[up] {
			gone = append(gone, m.box[run])
		}
	}
	if left := r.Length - covered(gone); left > 0 {
		return left
	}
	return r.Length // nothing left is told as a lost reference
}

// touches reports whether a block reaches a side of a piece.
func touches(b solid.Box, side joinery.Side, size joinery.Size) bool {
	d := side.Dimension()
	if side.High() {
		return b[d].Hi == size[d]
	}
	return b[d].Lo == 0
}

// swinging looks for channels on which the piece swings. Tenons and laps are
// pushed with a backer whatever their piece.
func (w *work) swinging(m *made) []finding {
	r := m.runs[0]
	rides := w.riding(r)
	if !m.cut.Kind.Walled || !swings(r, rides) || m.goesOn() {
		return nil
	}
	otherwise := ""
	if r.Start != nil && r.Stop != nil && m.channel.Run() != w.piece.Grain && m.cut.Kind.Has("span") {
		otherwise = ", or exchange its width and its span, so that it runs with the long side at the fence"
	}
	hold := "push it with a square block or gauge"
	if r.Start != nil {
		hold = "clamp it to a square block behind its tail, the back stop behind that,"
		otherwise += "; or rout it from above, or chisel it"
	}
	carry := "carry its free end"
	if longAcross(r, rides, w.scale) {
		carry = "let a second person or roller stands carry its free end"
	}
	return []finding{{m.cut, fmt.Sprintf("for the %s it reaches %s out from the fence and rides only %s of it, so it swings: %s and %s%s",
		m.words(), w.text(w.piece.Size.Between(r.Step.Fence)), w.text(rides), hold, carry, otherwise), []string{"fence", "setback", "at"}}}
}

// ownBearing looks for a cut along an edge that leaves little of the piece on
// the table and little along the fence, behind the bit as it goes.
func (w *work) ownBearing(m *made) []finding {
	r := m.runs[len(m.runs)-1]
	if !m.channel.OpenBeside(r.Step.Fence, w.piece.Size) || m.channel.Run() != w.piece.Grain {
		return nil
	}
	flat := w.piece.Size.Between(r.Step.Fence) - m.channel.Width
	high := w.piece.Size.Between(r.Step.Down) - m.channel.Depth
	least := trade.OwnBearing.Of(w.scale)
	if flat <= 0 || high <= 0 || flat >= least || high >= least {
		return nil
	}
	return []finding{{m.cut, fmt.Sprintf("the %s leaves only %s of the piece on the table and %s along the fence, under %s: cut it in a wider blank and rip it afterwards, or run it on a strip as thick as the cut",
		m.words(), w.text(flat), w.text(high), w.text(least)), []string{"width", "depth"}}}
}

// onEdge is how much of work that stands on edge is left on the table by a cut along
// its edge, where that is little and the same cut might be made with the work lying.
func onEdge(r *deck.Run) (left measure.Length, is bool) {
	thick, high := r.Piece.Size.Between(r.Step.Fence), r.Piece.Size.Between(r.Step.Down)
	left = thick - r.Channel.Width
	flat := high - r.Channel.Depth
	return left, r.Cut != nil && r.Cut.Kind.Edge && !r.Channel.Section.Shaped() && left > 0 &&
		high > trade.EdgeShare*left && thick <= trade.TallShare*flat
}

// standing looks for cuts along an edge that work on edge is hardly held upright at.
func (w *work) standing(m *made) []finding {
	r := m.runs[len(m.runs)-1]
	left, is := onEdge(r)
	if !is {
		return nil
	}
	flat := w.piece.Size.Between(r.Step.Down) - r.Channel.Depth
	return []finding{{m.cut, fmt.Sprintf("the %s leaves only %s of the piece on the table, on which it stands %s high: write it lying, in: %s, along: %s, width: %s, depth: %s, so that %s bears",
		m.words(), w.text(left), w.text(w.piece.Size.Between(r.Step.Down)), r.Step.Fence, r.Step.Down, w.scale.Spell(r.Channel.Depth), w.scale.Spell(r.Channel.Width), w.text(flat)), []string{"in", "along"}}}
}

// EndsGone lists the cuts along the grain of a deck that are made when an end of
// their piece no longer bears, and the cut that took it away, but for those that the
// maker wants so.
func EndsGone(d *deck.Deck) []Order {
	var all []Order
	for _, w := range works(d) {
		for _, m := range w.atTable() {
			_, taker := w.endGone(m.runs[0])
			order := Order{First: m.cut, Then: taker}
			if taker != nil && !slices.Contains(m.cut.After, taker.Name) && !slices.Contains(all, order) {
				all = append(all, order)
			}
		}
	}
	return all
}

// borne is what bears of the work at a run.
type borne struct {
	gone  measure.Length // of an end, where it is enough to be minded
	rides measure.Length // along the fence
}

// bearings is what bears at every run.
func bearings(d *deck.Deck) map[*deck.Run]borne {
	found := map[*deck.Run]borne{}
	for _, w := range works(d) {
		for _, m := range w.atTable() {
			for _, r := range m.runs {
				gone, _ := w.endGone(r)
				found[r] = borne{gone, w.riding(r)}
			}
		}
	}
	return found
}

// endGone is how much of an end of a piece earlier cuts have taken from all that
// would ride the table or the fence there at a run along the grain, and the last
// of them; nil where it is too little to speak of.
func (w *work) endGone(r *deck.Run) (gone measure.Length, taker *joinery.Cut) {
	run := r.Leads.Dimension()
	if run != w.piece.Grain {
		return 0, nil
	}
	w.before(r, func(m *made) {
		long := m.box[run].Long()
		if m.cut == r.Cut || m.channel.Section.Shaped() || long < max(gone, trade.EndGone.Of(w.scale)) || 3*long >= 2*w.piece.Size[run] || !w.atEnd(m, run) {
			return
		}
		for _, side := range []joinery.Side{r.Step.Down, r.Step.Fence} {
			d := side.Dimension()
			across := d.Third(run)
			if m.box[across].Long() == w.piece.Size[across] && touches(m.box, side, w.piece.Size) {
				gone, taker = long, m.cut
			}
		}
	})
	return gone, taker
}

// atEnd reports whether a cut takes away an end of a piece.
func (w *work) atEnd(m *made, run joinery.Dimension) bool {
	return touches(m.box, run.Low(), w.piece.Size) || touches(m.box, run.High(), w.piece.Size)
}
