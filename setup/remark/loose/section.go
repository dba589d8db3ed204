package loose

import (
	"cmp"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/setup/solid"
)

// parts counts the parts a section falls into: it is sliced at every wall, and
// what is left in a slice hangs together with what it overlaps in the next.
func parts(runs []passage) int {
	if len(runs) == 0 {
		return 1
	}
	size, run := runs[0].Piece.Size, runs[0].Channel.Run()
	u, v := (run+1)%3, (run+2)%3
	at := []measure.Length{0, size[u]}
	for _, c := range runs {
		at = append(at, c.room[u].Lo, c.room[u].Hi)
	}
	slices.Sort(at)
	at = slices.Compact(at)
	count := 0
	var before, now []stretch
	for i := range at[1:] {
		var gone []solid.Range
		for _, c := range runs {
			if c.room[u].Lo <= at[i] && c.room[u].Hi >= at[i+1] {
				gone = append(gone, c.room[v])
			}
		}
		now = nil
		for _, left := range remains(gone, size[v]) {
			s := stretch{Range: left, part: new(part)}
			count++
			for _, b := range before {
				if b.And(left).Long() > 0 && s.part.join(b.part) {
					count--
				}
			}
			now = append(now, s)
		}
		before = now
	}
	return count
}

// stretch is wood in one slice of a section, and the part it belongs to.
type stretch struct {
	solid.Range
	part *part
}

// part is one part of a section; what was joined to another points to it.
type part struct{ into *part }

func (p *part) root() *part {
	for p.into != nil {
		p = p.into
	}
	return p
}

// join makes one part of two, and reports whether they were two.
func (p *part) join(q *part) bool {
	p, q = p.root(), q.root()
	if p == q {
		return false
	}
	p.into = q
	return true
}

// remains returns what ranges leave of a length.
func remains(gone []solid.Range, long measure.Length) []solid.Range {
	slices.SortFunc(gone, func(a, b solid.Range) int { return cmp.Compare(a.Lo, b.Lo) })
	var left []solid.Range
	reached := measure.Length(0)
	for _, g := range append(gone, solid.Range{Lo: long, Hi: long}) {
		if g.Lo > reached {
			left = append(left, solid.Range{Lo: reached, Hi: g.Lo})
		}
		reached = max(reached, g.Hi)
	}
	return left
}
