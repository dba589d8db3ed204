package planfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"

	"go.yaml.in/yaml/v4"
)

// pieceKeys are the keys of a piece; one that mirrors another has no size and
// no grain.
var pieceKeys = []string{"piece", "count", "size", "grain", "wood", "mirror", "cuts"}

const pieceExample = "- piece: front left leg"

// blank is a piece while it is read, and what others may ask of it afterwards.
type blank struct {
	*joinery.Piece         // its place among the plan's
	f              *fields // only while it is read
	sized          bool    // the size was read without fault
	done           bool    // the piece is read; a mirror of it may be made
	mirror         *mirrorWish
	cuts           cutNames
}

// readPieces reads the pieces.
func (r *planReader) readPieces(f *fields) {
	r.plan.Pieces = make([]joinery.Piece, 0, f.size("pieces"))
	waiting := map[position]*blank{}
	for n := range f.entries("pieces", "piece", pieceExample) {
		if r.over() {
			return
		}
		b := r.begin(n)
		if b == nil {
			continue
		}
		r.keep(b)
		if !r.readPiece(b) {
			waiting[positionOf(n)] = b
		}
		b.f = nil // the tree of a piece is many times its text
	}
	if len(waiting) > 0 {
		r.readWaiting(f, waiting)
	}
	if !r.over() {
		r.checkMates()
	}
}

// readWaiting reads the mirrors that stand before what they mirror. They are
// parsed once more, since the trees of all would be too much to keep.
func (r *planReader) readWaiting(f *fields, waiting map[position]*blank) {
	for n := range f.entries("pieces", "piece", pieceExample) {
		b, waits := waiting[positionOf(n)]
		if !waits {
			continue
		}
		b.f = r.pieceFields(n)
		r.readMirror(b)
		b.f = nil
		delete(waiting, positionOf(n))
		if len(waiting) == 0 || r.over() {
			return
		}
	}
}

// take puts one more piece into the plan, still blank.
func (r *planReader) take(f *fields) *blank {
	if len(r.plan.Pieces) == cap(r.plan.Pieces) {
		r.plan.Pieces = slices.Grow(r.plan.Pieces, 1)
		for i, b := range r.blanks {
			b.Piece = &r.plan.Pieces[i]
		}
	}
	r.plan.Pieces = append(r.plan.Pieces, joinery.Piece{})
	b := &blank{f: f, Piece: &r.plan.Pieces[len(r.plan.Pieces)-1]}
	r.blanks = append(r.blanks, b)
	return b
}

// pieceFields reads a piece's keys; nil where it has none.
func (r *planReader) pieceFields(n *yaml.Node) *fields {
	if !r.mapping(n, "a piece has a name and a size, each after its key", "write "+pieceExample+", and its size below") {
		return nil
	}
	what := "the piece"
	if name := valueOf(n, "piece"); name != nil && name.Kind == yaml.ScalarNode {
		what = quoted(name.Value)
	}
	f := r.fields(n, what, pieceKeys)
	if !f.written("piece") && !slices.Contains(f.meant, "piece") {
		r.fault(n, "add "+example("piece")+"; if this belongs to the piece above, take its dash out", "this piece has no name")
	}
	f.needs = append(f.needs, "piece")
	return f
}

// begin reads a piece's name and count, and whether it mirrors another.
func (r *planReader) begin(n *yaml.Node) *blank {
	f := r.pieceFields(n)
	if f == nil {
		return nil
	}
	b := r.take(f)
	b.Name = f.name("piece")
	b.Place = r.place(n)
	if value := f.value("piece"); value != nil {
		b.Place = r.place(value)
	}
	b.Places = f.places()
	b.Count = f.count()
	if f.written("mirror") {
		b.mirror = wishOf(f.value("mirror"))
	}
	return b
}

// readPiece reads a piece, unless it mirrors one that is not read yet.
func (r *planReader) readPiece(b *blank) bool {
	if b.mirror == nil {
		r.readBlank(b)
		return true
	}
	source := r.named[b.mirror.of]
	if source == nil || !source.done {
		return false
	}
	r.readMirror(b)
	return true
}

// keep faults a second piece of the same name.
func (r *planReader) keep(b *blank) {
	first, again := r.named[b.Name]
	switch {
	case b.Name == "":
		r.nameless = true
	case again:
		r.add(joinery.Fault{
			Place:   b.Place,
			Problem: "two pieces are named " + quoted(b.Name),
			Remedy:  "give each piece a name of its own, or write count: 2 where they are alike",
			Other:   first.Place,
			Clash:   "the first one",
		})
	default:
		r.named[b.Name] = b
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
	n := f.value("size")
	before := len(r.faults)
	if !r.mapping(n, "a size has three dimensions, each by its name", sizeRemedy(n)) || !r.namesDimensions(n) {
		return size, false
	}
	dimensions := r.fields(n, "size", dimensionNames())
	dimensions.need(dimensionNames()...)
	for _, d := range joinery.Dimensions {
		size[d] = dimensions.positive(d.String())
	}
	return size, len(r.faults) == before
}

// sizeRemedy shows how a size is written, with the maker's own numbers where
// there are three.
func sizeRemedy(n *yaml.Node) string {
	parts := timesSign.Split(n.Value, -1)
	if n.Kind != yaml.ScalarNode || len(parts) != 3 {
		parts = []string{"1 5/8", "1 5/8", "17"}
	}
	return fmt.Sprintf("write size: {left-right: %s, front-back: %s, top-bottom: %s}, as the piece stands in the finished work",
		short(parts[0]), short(parts[1]), short(parts[2]))
}

var timesSign = pattern.New(`\s*[x×*]\s*`)

// namesDimensions faults a size of which no dimension has its name, once.
func (r *planReader) namesDimensions(n *yaml.Node) bool {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if near := meant(n.Content[i].Value, dimensionNames()); near != "" || strings.Contains(n.Content[i].Value, "-") {
			return true
		}
	}
	r.fault(n, sizeRemedy(n)+": a width or a length does not say which way it lies", "the size names none of left-right, front-back and top-bottom")
	return false
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
