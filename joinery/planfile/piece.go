package planfile

import (
	"fmt"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// The keys of a piece, and of one that mirrors another.
var (
	pieceKeys  = []string{"piece", "count", "size", "grain", "wood", "mirror", "cuts"}
	mirrorKeys = []string{"piece", "count", "wood", "mirror", "cuts"}
)

const pieceExample = "- piece: front left leg"

// blank is a piece while it is read.
type blank struct {
	joinery.Piece
	f     *fields
	sized bool // the size was read without fault
	done  bool // the piece is read; a mirror of it may be made
	cuts  *cutNames
}

// readPieces reads the pieces; mirrors come last, because they may stand
// before what they mirror.
func (r *planReader) readPieces(f *fields) {
	var blanks []*blank
	named := map[string]*blank{}
	for _, n := range f.entries("pieces", "piece", pieceExample) {
		if r.full {
			return
		}
		if b := r.begin(n); b != nil {
			r.keep(b, named)
			blanks = append(blanks, b)
		}
	}
	for _, b := range blanks {
		if _, mirrored := b.f.keys["mirror"]; !mirrored {
			r.readBlank(b)
		}
	}
	for _, b := range blanks {
		if _, mirrored := b.f.keys["mirror"]; mirrored {
			r.readMirror(b, blanks, named)
		}
	}
	r.checkMates(blanks, named)
	for _, b := range blanks {
		r.plan.Pieces = append(r.plan.Pieces, b.Piece)
	}
}

// begin reads a piece's keys and name.
func (r *planReader) begin(n *yaml.Node) *blank {
	if !r.mapping(n, "a piece", pieceExample+", and its size below") {
		return nil
	}
	what := "the piece"
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == "piece" && n.Content[i+1].Kind == yaml.ScalarNode {
			what = fmt.Sprintf("%q", short(n.Content[i+1].Value))
		}
	}
	f := r.fields(n, what, pieceKeys)
	f.need("piece")
	b := &blank{f: f, cuts: newCutNames()}
	b.Name = f.name("piece")
	b.Place = r.place(n)
	if value, ok := f.value["piece"]; ok {
		b.Place = r.place(value)
	}
	b.Places = f.places()
	b.Count = f.count()
	return b
}

// keep faults a second piece of the same name.
func (r *planReader) keep(b *blank, named map[string]*blank) {
	first, again := named[b.Name]
	switch {
	case b.Name == "":
	case again:
		r.add(joinery.Fault{
			Place:   b.Place,
			Problem: fmt.Sprintf("two pieces are named %q", b.Name),
			Remedy:  "give each piece a name of its own, or write count: 2 where they are alike",
			Other:   first.Place,
			Clash:   "the first one",
		})
	default:
		named[b.Name] = b
	}
}

// readBlank reads a piece that mirrors no other.
func (r *planReader) readBlank(b *blank) {
	if r.full {
		return
	}
	b.f.need("size")
	b.Wood = r.readWood(b.f, r.wood)
	b.Size, b.sized = r.readSize(b.f)
	b.Grain = longest(b.Size)
	if text, n, ok := b.f.scalar("grain"); ok {
		if grain, ok := r.dimension(n, text); ok {
			b.Grain = grain
		}
	}
	r.readCuts(b)
	b.done = true
}

// readSize reads the three dimensions.
func (r *planReader) readSize(f *fields) (joinery.Size, bool) {
	var size joinery.Size
	if !f.has("size") {
		return size, false
	}
	n := f.value["size"]
	before := len(r.faults)
	if !r.mapping(n, "size", examplesOf["size"]+", measured as the piece stands in the finished work") {
		return size, false
	}
	dimensions := r.fields(n, "size", dimensionNames())
	if len(r.faults) == before {
		dimensions.need(dimensionNames()...)
	}
	for _, d := range joinery.Dimensions {
		size[d] = dimensions.positive(d.String())
	}
	return size, len(r.faults) == before
}

// longest is the longest dimension; of equals the first.
func longest(size joinery.Size) joinery.Dimension {
	best := joinery.LeftRight
	for _, d := range joinery.Dimensions {
		if size[d] > size[best] {
			best = d
		}
	}
	return best
}
