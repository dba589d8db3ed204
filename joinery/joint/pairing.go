package joint

import (
	"fmt"
	"slices"

	"fencecard/joinery"
)

// Spot is an end or a side of a piece, as written.
type Spot struct {
	Piece *joinery.Piece
	Side  joinery.Side // NoSide for a piece that crosses
}

// Pairing is a joint as written: which ends go into which places. They pair in
// the order written.
type Pairing struct {
	Kind   *Kind
	Ends   []Spot
	Into   []Spot
	Places []Place          // how they lie: one, or one for each of a repeat
	Pieces []*joinery.Piece // all of the plan, for their mirrors
}

// Met is one meeting that a pairing comes down to.
type Met struct {
	Meeting
	Number   int  // which of a repeat, from 0
	FromEnd  int  // which of the pairing's ends it comes from
	FromSpot int  // which of its places
	Mirrored bool // it follows from a mirror and was not written
	// Like tells that one more piece like the first enters here, which makes no new
	// half. It must be its own mirror image across Flips, or the first one turned
	// about; no flips ask nothing.
	Like   bool
	Flips  joinery.Flips
	weight int // how many ends enter here; 0 where the same end was counted
}

// Words are the words of the joint as they are at this meeting.
func (m Met) Words(w Words) Words {
	if m.Mirrored {
		return w.Mirrored(m.Into.Across)
	}
	return w
}

// pairer is a pairing at work.
type pairer struct {
	Pairing
	met    []Met
	at     map[Spot]int // the first meeting at a place
	used   map[Spot]int
	faults []Fault
}

// Meet lists the meetings, those first that were written, and counts how many
// places each end enters.
func (p Pairing) Meet() (met []Met, used map[Spot]int, faults []Fault) {
	w := &pairer{Pairing: p, at: map[Spot]int{}, used: map[Spot]int{}}
	if len(p.Ends) == len(p.Into) {
		w.oneByOne()
	} else {
		end := 0
		for spot := range p.Into {
			end = w.place(spot, end)
		}
	}
	var rest []Met
	for _, m := range w.met {
		rest = append(rest, w.mirrors(m)...)
	}
	for _, m := range rest {
		w.turn(m)
	}
	return w.met, w.used, w.faults
}

// oneByOne pairs as many ends with as many places, those first whose pieces
// mirror no other: what follows from them is then known.
func (w *pairer) oneByOne() {
	for _, mirrored := range []bool{false, true} {
		for spot, into := range w.Into {
			if (into.Piece.MirrorOf != "") != mirrored {
				continue
			}
			if first, named := w.at[into]; named {
				w.agree(first, spot)
				continue
			}
			w.pair(spot, spot, false)
		}
	}
}

// pair puts an end into a place, and into its mirrors where it is sure which
// piece goes in there.
func (w *pairer) pair(end, spot int, again bool) {
	part, into := w.Ends[end], w.Into[spot]
	w.add(Met{FromEnd: end, FromSpot: spot, Meeting: Meeting{Part: part.Piece, End: part.Side, Into: into.Piece, Side: into.Side}}, again)
	w.exact(end, spot)
}

// place pairs the next end with a place, and returns which end is at hand.
func (w *pairer) place(spot, end int) int {
	into := w.Into[spot]
	for end < len(w.Ends) && w.full(end) {
		end++
	}
	if end < len(w.Ends) && w.Kind.Shared && w.used[w.Ends[end]] > 0 && !w.Kind.Faces(w.Ends[end].Side, into.Side) {
		end++
	}
	take, again := end, false
	if w.again(end-1, into) && (end == len(w.Ends) || !w.Kind.Faces(w.Ends[end].Side, into.Side)) {
		take, again = end-1, true // the same board, which goes on past the first place
	}
	if first, named := w.at[into]; named {
		w.agree(first, spot)
		return end
	}
	if w.later(spot) {
		w.faults = append(w.faults, Fault{
			Words:   []string{fmt.Sprintf("into %d", spot), "into"},
			Problem: fmt.Sprintf("%q mirrors %q, which is named behind it", into.Piece.Name, into.Piece.MirrorOf),
			Remedy:  fmt.Sprintf("name %s first; what goes into its mirrors follows from it", into.Piece.MirrorOf),
		})
		return end
	}
	if take == len(w.Ends) {
		w.faults = append(w.faults, Fault{
			Words:   []string{fmt.Sprintf("into %d", spot), "into"},
			Problem: fmt.Sprintf("no end is left to go into the %s of %q", into.Side, into.Piece.Name),
			Remedy:  fmt.Sprintf("name it after %s, write count on the piece that goes in, or take this place out", w.Kind.Half),
		})
		return end
	}
	w.pair(take, spot, again)
	return end
}

// later reports whether the piece of a place mirrors one that is named behind it.
func (w *pairer) later(spot int) bool {
	into := w.Into[spot]
	return into.Piece.MirrorOf != "" && slices.ContainsFunc(w.Into[spot+1:], func(s Spot) bool {
		return s.Piece.Name == into.Piece.MirrorOf && s.Side == flip(into.Side, into.Piece.Across)
	})
}

// full reports whether as many pieces as there are have found a place for an
// end.
func (w *pairer) full(end int) bool {
	return w.used[w.Ends[end]] >= w.Ends[end].Piece.Count
}

// again reports whether an end that has a place may have another one.
func (w *pairer) again(end int, into Spot) bool {
	if end < 0 || !w.Kind.Faces(w.Ends[end].Side, into.Side) {
		return false
	}
	return w.past(Meeting{Part: w.Ends[end].Piece, Into: into.Piece, Side: into.Side}) != (joinery.Flips{})
}

// past tells in which dimensions across the joint the entering piece goes on
// past the other, so that one end of it may enter several.
func (w *pairer) past(m Meeting) joinery.Flips {
	var flips joinery.Flips
	if !w.Kind.Passes {
		return flips
	}
	for _, d := range across(m) {
		flips[d] = m.Part.Size[d] > m.Into.Size[d]
	}
	return flips
}

// add keeps a meeting, once for every place of a repeat.
func (w *pairer) add(m Met, counted bool) {
	m.weight = m.Into.Count
	if counted {
		m.weight = 0
	}
	w.at[Spot{m.Into, m.Side}] = len(w.met)
	for i, place := range w.Places {
		one := m
		one.Number, one.Place = i, place
		if m.Mirrored {
			one.Place = place.Mirrored(m.Into.Across)
		}
		w.met = append(w.met, one)
		w.used[Spot{one.Part, one.End}] += one.weight
	}
}

// agree faults a place that a mirror has made already and that is named besides
// with another result.
func (w *pairer) agree(first, spot int) {
	m := w.met[first]
	if !m.Mirrored {
		w.faults = append(w.faults, Fault{
			Words:   []string{fmt.Sprintf("into %d", spot), "into"},
			Problem: fmt.Sprintf("the %s of %q is named twice", m.Side, m.Into.Name),
			Remedy:  "name each place once; repeat puts several on one side",
		})
		return
	}
	for i, place := range w.Places {
		said := m.Meeting
		said.Place = place
		mirrored := w.met[first+i].settled(w.Kind).Offsets()
		offsets := said.settled(w.Kind).Offsets()
		for _, d := range w.Kind.spans(said) {
			if mirrored[d] != offsets[d] {
				w.faults = append(w.faults, Fault{
					Words: []string{fmt.Sprintf("into %d", spot), "into"},
					Problem: fmt.Sprintf("%q mirrors %q, and by that %q lies otherwise %s in it than place says",
						m.Into.Name, m.Into.Original(), m.Part.Name, d),
					Remedy: "take this place out: a mirrored piece mirrors its joints; or write a joint of its own",
				})
				return
			}
		}
	}
}
