package planfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// jointCut is a cut that a joint makes in one piece.
type jointCut struct {
	joinery.Cut
	j      *jointWish
	side   joinery.Side // the end or side it is at; NoSide for a piece that crosses
	number int          // which of a repeat, from 0
	group  int          // the cuts of one half, of which the first is the half itself
	mate   *jointHalf   // of a receiving half, what goes in
	into   bool
	base   string // the name of the half itself, without what it brings along
}

// jointHalf is the end that goes into a receiving half.
type jointHalf struct {
	b    *blank
	side joinery.Side
	cut  bool // it has a cut of its own; else the whole piece goes in
}

// makeJoints works out the cuts of every joint and names them. They are put into
// their pieces behind the cuts that are written there.
func (r *planReader) makeJoints() {
	if len(r.joints) == 0 {
		return
	}
	r.countJoints()
	for _, j := range r.joints {
		if !j.broken {
			r.makeJoint(j)
		}
	}
	for _, b := range r.blanks {
		r.nameJointCuts(b)
	}
	for _, b := range r.blanks {
		for i := range b.joined {
			r.mateJointCut(&b.joined[i])
		}
	}
}

// makeJoint works out the halves of one joint, one for each end and each place
// that no mirror makes.
func (r *planReader) makeJoint(j *jointWish) {
	ends := map[joint.Spot]joint.Halves{}
	group := 0
	var told []string // a word that is wrong is wrong at every end and place
	for _, m := range j.met {
		part, into := r.named[m.Part.Name], r.named[m.Into.Name]
		if m.Like || !part.sized || !into.sized {
			continue
		}
		halves, faults := j.kind.Make(m.Meeting, r.wordsFor(m, j), r.Scale, r.plan.Climate)
		for _, f := range faults {
			f = atSpot(f, m)
			what := fmt.Sprint(f.Words, f.Remedy)
			if !m.Mirrored && !slices.Contains(told, what) { // in a mirror it is the same fault
				r.jointFault(j, f)
				told = append(told, what)
			}
		}
		if len(faults) > 0 {
			continue
		}
		spot := joint.Spot{Piece: m.Part, Side: m.End}
		first, made := ends[spot]
		if made && j.kind.Passes {
			halves.Part = union(first.Part, halves.Part)
		} else if made && !alike(first.Part, halves.Part) {
			r.jointFault(j, joint.Fault{Words: []string{"into"}, Remedy: "write a joint for each of the two places",
				Problem: "the " + spot.Side.String() + " of " + yamlfile.Quoted(m.Part.Name) + " would have to be cut in two ways for its places"})
			continue
		}
		ends[spot] = halves
		if m.Mirrored {
			continue // the mirror makes it
		}
		group++
		half := &jointHalf{part, m.End, len(halves.Part) > 0 && halves.Part[0].Name == "" && (halves.Part[0].Kind.Enters || halves.Part[0].Kind.Laps)}
		for _, c := range halves.Into {
			one := jointCut{Cut: c, j: j, side: m.Side, number: m.Number, group: group, into: true}
			one.Kind, one.OfJoint = j.called(c.Kind), true
			if c.Name == "" {
				one.Fence = fencing(c.Fence, j.fence)
				one.Bit, one.Bored, one.By = j.tool.Bit, j.tool.Bored, j.tool.By
				one.Note = j.noteOf(r)
				if halves.Mates {
					one.mate = half
				}
			}
			one.Cut.Places = r.placesOf(j, intoWords)
			into.joined = append(into.joined, one)
		}
	}
	r.makeEnds(j, ends, group)
}

// called is a kind of cut by the maker's own word: who writes a housing reads of
// a housing, and who writes a dado of a dado.
func (j *jointWish) called(kind *joinery.Kind) *joinery.Kind {
	word, _, _ := strings.Cut(j.word, " ")
	if own := joinery.KindNamed(word); own != nil && own.Common() == kind.Common() && !j.kind.Flat {
		return own
	}
	return kind
}

// makeEnds adds the entering halves, those that mirrors do not make.
func (r *planReader) makeEnds(j *jointWish, ends map[joint.Spot]joint.Halves, group int) {
	for _, spot := range r.spotsOf(j) {
		halves, made := ends[spot]
		b := r.named[spot.Piece.Name]
		if !made {
			continue
		}
		if source := r.named[b.MirrorOf]; b.mirrors() && source != nil {
			twin := joint.Spot{Piece: source.Piece, Side: flipped(spot.Side, b.Across)}
			if _, mirrored := ends[twin]; mirrored || r.hasTwin(source, b, twin.Side, halves.Part) {
				continue
			}
		}
		group++
		for _, c := range toldApart(halves.Part) {
			one := jointCut{Cut: c, j: j, side: spot.Side, group: group}
			one.Cut.Places = r.placesOf(j, partWords)
			b.joined = append(b.joined, one)
		}
	}
}

// toldApart names two works by hand of one kind, such as a notch at the front and
// one at the back, by their sides as well.
func toldApart(cuts []joinery.Cut) []joinery.Cut {
	named := map[string]int{}
	for _, c := range cuts {
		named[c.Name]++
	}
	cuts = slices.Clone(cuts)
	for i := range cuts {
		if c := &cuts[i]; named[c.Name] > 1 {
			c.Name = c.In.String() + " " + c.Name
		}
	}
	return cuts
}

// hasTwin reports whether a piece has, from another joint, the very cuts that its
// mirror is to get, so that the mirror has them already.
func (r *planReader) hasTwin(source, b *blank, side joinery.Side, cuts []joinery.Cut) bool {
	for _, own := range source.joined {
		if own.into || own.side != side || len(cuts) == 0 {
			continue
		}
		seen := own.Cut
		for _, d := range joinery.Dimensions {
			if b.Across[d] {
				seen = seen.Mirrored(d)
			}
		}
		if seen.Name = ""; alike([]joinery.Cut{seen}, cuts[:1]) {
			return true
		}
	}
	return false
}

// union is what a board needs that goes into several pieces with one end: a
// notch here and a notch there.
func union(a, b []joinery.Cut) []joinery.Cut {
	all := slices.Clone(a)
	for i := range b {
		if !slices.ContainsFunc(a, func(c joinery.Cut) bool { return alike([]joinery.Cut{c}, b[i:i+1]) }) {
			all = append(all, b[i])
		}
	}
	return all
}

// alike reports whether two lists of cuts take the same wood.
func alike(a, b []joinery.Cut) bool {
	return slices.EqualFunc(a, b, func(a, b joinery.Cut) bool {
		return a.Kind == b.Kind && a.In == b.In && a.At == b.At && a.Along == b.Along && a.Width == b.Width &&
			a.Length == b.Length && a.Depth == b.Depth && a.Start == b.Start && a.Span == b.Span && slices.Equal(a.Cheeks, b.Cheeks)
	})
}

// fencing is the maker's wish for the fence, or what the joint makes of it.
func fencing(joint, wish joinery.Fencing) joinery.Fencing {
	if wish != (joinery.Fencing{}) {
		return wish
	}
	return joint
}

// noteOf is the note of a receiving half.
func (j *jointWish) noteOf(r *planReader) string {
	if j.repeat != nil {
		return j.repeat.note(j.note, r.Scale)
	}
	return j.note
}

// atSpot puts a fault about a place at the item that names it.
func atSpot(f joint.Fault, m joint.Met) joint.Fault {
	if len(f.Words) > 0 && f.Words[0] == "into" {
		f.Words = append([]string{"into " + strconv.Itoa(m.FromSpot)}, f.Words...)
	}
	return f
}

// The words of a joint that say what the keys of a cut say.
var (
	intoWords = map[string][]string{
		"in": {"into"}, "at": {"into"}, "along": {"into"}, "width": {"thickness", "groove", "tongue", "board", "lap"},
		"setback": {"place", "repeat"}, "span": {"stopped", "shoulders", "place", "repeat"}, "depth": {"depth", "length", "through"},
		"length": {"lap", "place"}, "fence": {"fence", "place"}, "after": {"after"}, "note": {"note"}, "ends": {"ends"},
	}
	partWords = map[string][]string{
		"in": {"lap", "tongue"}, "at": {"tenon", "lap"}, "along": {"board", "edges"}, "width": {"depth", "thickness"},
		"length": {"length", "through", "lap"}, "depth": {"depth", "tongue", "lap"}, "cheeks": {"shoulders", "thickness", "tenon"},
		"setback": {"place"}, "span": {"place"},
	}
)

// valueWords are those of them whose value is that of the key, or moves with it.
var valueWords = []string{"thickness", "length", "depth", "place"}

// placesOf tells of every key of a cut at which word of the joint it was said.
func (r *planReader) placesOf(j *jointWish, words map[string][]string) plantext.Places {
	places := plantext.PlacesIn(r.Text, len(words))
	for key, said := range words {
		for _, word := range said {
			if n := j.f.Value(word); n != nil {
				places.AddAs(key, word, slices.Contains(valueWords, word), n.Line, n.Column)
				break
			}
		}
	}
	return places
}

// nameJointCuts names the cuts of a piece that come from joints: by the joint,
// with the side where it has several there, and with a number where it repeats.
func (r *planReader) nameJointCuts(b *blank) {
	type at struct {
		j    *jointWish
		side joinery.Side
	}
	groups := map[at]map[int]bool{}
	sides := map[*jointWish]int{}
	for _, c := range b.joined {
		here := at{c.j, c.side}
		if groups[here] == nil {
			groups[here] = map[int]bool{}
			sides[c.j]++
		}
		groups[here][c.group] = true
	}
	for i := range b.joined {
		c := &b.joined[i]
		name := c.j.name
		if sides[c.j] > 1 && c.side != joinery.NoSide {
			name += " " + c.side.String()
		}
		if len(groups[at{c.j, c.side}]) > 1 {
			name += " " + strconv.Itoa(c.number+1)
		}
		if c.base = name; c.Name != "" {
			name += " " + c.Name
		}
		c.Name, c.Place = name, r.Place(c.j.at)
	}
}

// mateJointCut says what goes into a receiving half.
func (r *planReader) mateJointCut(c *jointCut) {
	if c.mate == nil {
		return
	}
	c.Mates = joinery.Mate{Piece: c.mate.b.Name}
	if !c.mate.cut {
		return
	}
	for b, side := c.mate.b, c.mate.side; b != nil; b = r.named[b.MirrorOf] {
		for _, other := range b.joined {
			if !other.into && other.side == side && other.Name == other.base {
				c.Mates.Cut = other.Name
				if other.j == c.j {
					return
				}
			}
		}
		side = flipped(side, b.Across)
	}
}

// addJointCuts puts the cuts of joints behind those written in the piece.
func (r *planReader) addJointCuts(b *blank) {
	for i := range b.joined {
		c := &b.joined[i]
		if r.over() {
			return
		}
		b.cuts.see(r, c.Name, c.j.at)
		if c.Name != c.j.name {
			b.cuts.stand(c.j.name, c.Name)
		}
		c.After = append(c.After, r.panelOrder(b, c)...)
		if c.into && c.Name == c.base {
			for _, n := range c.j.f.OneOrMore("after") {
				c.After = append(c.After, yamlfile.OneLine(n.Value))
				b.cuts.waits(c.Name, yamlfile.OneLine(n.Value), n)
			}
		}
		b.Cuts = append(b.Cuts, c.Cut)
		if cut := &b.Cuts[len(b.Cuts)-1]; b.sized && r.fits {
			for _, fault := range cut.Lay(b.Piece, r.Scale) {
				r.Add(fault)
			}
		}
	}
}

// panelOrder names the tongues at the ends of a panel's grain, which are cut
// before those along it: that clears the torn corners away.
func (r *planReader) panelOrder(b *blank, c *jointCut) []string {
	if c.into || !c.j.kind.Framed || c.side.Dimension() == b.Grain {
		return nil
	}
	var names []string
	for _, other := range b.joined {
		if other.j == c.j && !other.into && other.side.Dimension() == b.Grain {
			names = append(names, other.Name)
		}
	}
	return names
}
