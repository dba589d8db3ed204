package planfile

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile/yamlfile"
)

// relate tells the joints, before mirrors are made, what they will be: their
// size, grain and wood are those of the piece they mirror.
func (r *planReader) relate() {
	for _, b := range r.blanks {
		if r.named[b.Name] != b {
			continue // without a name, or the second of one
		}
		if !b.mirrors() {
			b.related = true
			continue
		}
		n := b.f.Value("mirror")
		source := r.named[yamlfile.OneLine(yamlfile.TextOf(yamlfile.ValueOf(n, "of")))]
		if source == nil || source.mirrors() {
			continue // told where the mirror is read
		}
		b.related = true
		b.Size, b.Grain, b.MirrorOf = source.Size, source.Grain, source.Name
		if !b.f.Written("wood") {
			b.Wood = source.Wood
		}
		for _, word := range texts(yamlfile.ValueOf(n, "across")) {
			if d, ok := joinery.ParseDimension(yamlfile.OneLine(word)); ok {
				b.Across[d] = true
			}
		}
	}
}

// pairJoints finds which ends go into which places, mirrors included.
func (r *planReader) pairJoints() {
	var pieces []*joinery.Piece
	for _, b := range r.blanks {
		if b.related {
			pieces = append(pieces, b.Piece)
		}
	}
	twins := map[string]int{}
	for _, p := range pieces {
		twins[p.MirrorOf]++
	}
	for _, j := range r.joints {
		for _, spot := range j.into {
			r.copied += len(j.places) * (1 + twins[spot.Piece.Name])
		}
		if r.copied > mostMirrored {
			r.Fault(j.at, "split the plan", "with this joint there are more than %d mirrored pieces and cuts and cuts of joints", mostMirrored)
			r.crowded = true
			return
		}
		p := joint.Pairing{Kind: j.kind, Places: j.places, Pieces: pieces}
		for _, end := range j.ends {
			p.Ends = append(p.Ends, end.Spot)
		}
		for _, spot := range j.into {
			p.Into = append(p.Into, spot.Spot)
		}
		var faults []joint.Fault
		j.met, j.used, faults = p.Meet()
		for _, f := range faults {
			r.jointFault(j, f)
		}
	}
}

// countJoints holds the places that every end enters against how many pieces
// there are.
func (r *planReader) countJoints() {
	all := map[joint.Spot]int{}
	for _, j := range r.joints {
		for spot, n := range j.used {
			all[spot] += n
		}
	}
	told := map[*joinery.Piece]bool{}
	for _, j := range r.joints {
		if j.broken {
			continue
		}
		for _, spot := range r.spotsOf(j) {
			n := all[spot]
			if spot.Side == joinery.NoSide {
				n = j.used[spot] // each of its joints crosses it elsewhere
			}
			few := n < spot.Piece.Count && !j.kind.Shared || n == 0
			many := n > spot.Piece.Count && !j.kind.Shared && !j.kind.Passes
			if (few || many) && !told[spot.Piece] {
				told[spot.Piece] = true
				r.wrongCount(j, spot, n)
			}
		}
	}
}

// spotsOf lists the ends that a joint makes halves at, in its mirrors too.
func (r *planReader) spotsOf(j *jointWish) []joint.Spot {
	var spots []joint.Spot
	add := func(s joint.Spot) {
		if !slices.Contains(spots, s) {
			spots = append(spots, s)
		}
	}
	for _, end := range j.ends {
		add(end.Spot)
	}
	for _, m := range j.met {
		if !m.Like {
			add(joint.Spot{Piece: m.Part, Side: m.End})
		}
	}
	for _, s := range slices.Clone(spots) {
		for _, b := range r.blanks {
			if b.related && b.MirrorOf == s.Piece.Name && s.Piece.MirrorOf == "" {
				add(joint.Spot{Piece: b.Piece, Side: flipped(s.Side, b.Across)})
			}
		}
	}
	return spots
}

// flipped is a side as seen in a mirror.
func flipped(side joinery.Side, across joinery.Flips) joinery.Side {
	if side != joinery.NoSide && across[side.Dimension()] {
		return side.Opposite()
	}
	return side
}

// wrongCount faults an end that enters more or fewer places than there are pieces.
func (r *planReader) wrongCount(j *jointWish, spot joint.Spot, n int) {
	what := yamlfile.Quoted(spot.Piece.Name)
	if spot.Side != joinery.NoSide {
		what = "the " + spot.Side.String() + " of " + what
	}
	f := joint.Fault{Words: []string{"into"}}
	count := spot.Piece.Count
	switch {
	case n == 0 && spot.Piece.MirrorOf != "":
		f.Problem = fmt.Sprintf("%s mirrors %q and has this half too, but it goes into nothing", what, spot.Piece.MirrorOf)
		f.Remedy = "name its place behind into, or in a joint of its own"
	case n == 0:
		f.Problem = what + " goes into nothing"
		f.Remedy = "name its place behind into, or take it out"
	case n < count:
		f.Problem = fmt.Sprintf("there are %d of %q, but only %d %s for %s", count, spot.Piece.Name, n, plural(n, "place"), what)
		f.Remedy = fmt.Sprintf("name %d more behind into, or write count: %d", count-n, n)
	default:
		f.Problem = fmt.Sprintf("%s goes into %d places, but there %s of it", what, n, isAre(count))
		f.Remedy = fmt.Sprintf("write count: %d on %q, or give the others a joint of their own", n, spot.Piece.Name)
	}
	r.jointFault(j, f)
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

func isAre(n int) string {
	if n == 1 {
		return "is only 1"
	}
	return fmt.Sprintf("are %d", n)
}
