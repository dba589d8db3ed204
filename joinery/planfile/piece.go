package planfile

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

const pieceExample = "- piece: front left leg"

// mostCount is how many of a piece one plan may ask for.
const mostCount = 10_000

// blank is a piece while the plan is read.
type blank struct {
	*joinery.Piece // its place among the plan's
	f              *yamlfile.Fields
	sized          bool          // the size was read without fault
	related        bool          // what it mirrors is known, if anything
	done           bool          // the piece is read; a mirror of it may be made
	between        [3]*yaml.Node // lengths that are left to joints
	joined         []jointCut    // the cuts that come from joints
	cuts           cutNames
}

// mirrors reports whether the piece mirrors another.
func (b *blank) mirrors() bool { return b.f.Written("mirror") }

// readPieces reads the pieces; mirrors come last, because they may stand
// before what they mirror.
func (r *planReader) readPieces(f *yamlfile.Fields) {
	entries := f.Entries("pieces", "piece", pieceExample)
	r.plan.Pieces = make([]joinery.Piece, 0, len(entries))
	for _, n := range entries {
		if r.over() {
			return
		}
		r.begin(n)
	}
	for _, b := range r.blanks {
		if !b.mirrors() {
			r.readStock(b)
		}
	}
	r.relate()
	r.readJoints(f)
	r.pairJoints()
	r.finishSizes()
	r.makeJoints()
	for _, b := range r.blanks {
		if !b.mirrors() {
			r.readBlank(b)
		}
	}
	for _, b := range r.blanks {
		if b.mirrors() {
			r.readMirror(b)
		}
	}
	if !r.over() {
		r.checkMates()
		r.checkRaised()
		r.checkJoints()
	}
}

// pieceFields reads a piece's keys; nil where it has none.
func (r *planReader) pieceFields(n *yaml.Node) *yamlfile.Fields {
	if !r.Mapping(n, "a piece has a name and a size, each after its key", "write "+pieceExample+", and its size below") {
		return nil
	}
	what := "the piece"
	if name := yamlfile.ValueOf(n, "piece"); name != nil && name.Kind == yaml.ScalarNode {
		what = yamlfile.Quoted(name.Value)
	}
	f := r.Fields(n, what, keys.Piece)
	if f.Lacks("piece") {
		r.Fault(n, "add "+keys.Example("piece")+"; if this belongs to the piece above, take its dash out", "this piece has no name")
	}
	f.Must("piece")
	return f
}

// begin reads a piece's name and count.
func (r *planReader) begin(n *yaml.Node) {
	f := r.pieceFields(n)
	if f == nil {
		return
	}
	r.plan.Pieces = append(r.plan.Pieces, joinery.Piece{})
	b := &blank{f: f, Piece: &r.plan.Pieces[len(r.plan.Pieces)-1]}
	r.blanks = append(r.blanks, b)
	b.Name = f.Name("piece")
	b.Place = r.Place(n)
	if value := f.Value("piece"); value != nil {
		b.Place = r.Place(value)
	}
	b.Places = f.Places()
	b.Count = r.count(f)
	r.keep(b)
}

// keep faults a second piece of the same name.
func (r *planReader) keep(b *blank) {
	first, again := r.named[b.Name]
	switch {
	case b.Name == "":
		r.nameless = true
	case again:
		r.Add(plantext.Fault{
			Place:   b.Place,
			Problem: "two pieces are named " + yamlfile.Quoted(b.Name),
			Remedy:  "give each piece a name of its own, or write count: 2 where they are alike",
			Other:   first.Place,
			Clash:   "the first one",
		})
	default:
		r.named[b.Name] = b
	}
}

// readStock reads what a piece that mirrors no other is made of.
func (r *planReader) readStock(b *blank) {
	if r.over() {
		return
	}
	b.f.Need("size")
	b.Wood = r.readWood(b.f, r.wood)
	b.Size, b.sized = r.readSize(b)
	b.Grain = b.Size.Longest()
	if text, n, ok := b.f.Scalar("grain"); ok {
		if grain, ok := r.Dimension(n, text); ok {
			b.Grain = grain
		}
	}
	b.Called = r.readSides(b.f)
}

// readBlank reads the cuts of a piece that mirrors no other.
func (r *planReader) readBlank(b *blank) {
	if r.over() {
		return
	}
	r.readCuts(b)
	b.done = true
}

// readSize reads the three dimensions.
func (r *planReader) readSize(b *blank) (joinery.Size, bool) {
	f := b.f
	var size joinery.Size
	if !f.Has("size") {
		return size, false
	}
	n := f.Value("size")
	before := len(r.Faults)
	if !r.Mapping(n, "a size has three dimensions, each by its name", sizeRemedy(n)) || !r.namesDimensions(n) {
		return size, false
	}
	dimensions := r.Fields(n, "size", keys.DimensionNames())
	dimensions.Need(keys.DimensionNames()...)
	for _, d := range joinery.Dimensions {
		size[d] = b.dimensionOf(dimensions, d)
	}
	return size, len(r.Faults) == before
}

// sizeRemedy shows how a size is written, with the maker's own numbers where
// there are three.
func sizeRemedy(n *yaml.Node) string {
	parts := timesSign.Split(n.Value, -1)
	if n.Kind != yaml.ScalarNode || len(parts) != 3 {
		parts = []string{"1 5/8", "1 5/8", "17"}
	}
	return fmt.Sprintf("write size: {left-right: %s, front-back: %s, top-bottom: %s}, as the piece stands in the finished work",
		yamlfile.Short(parts[0]), yamlfile.Short(parts[1]), yamlfile.Short(parts[2]))
}

var timesSign = pattern.New(`\s*[x×*]\s*`)

// namesDimensions faults a size of which no dimension has its name, once.
func (r *planReader) namesDimensions(n *yaml.Node) bool {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if near := keys.Meant(n.Content[i].Value, keys.DimensionNames()); near != "" || strings.Contains(n.Content[i].Value, "-") {
			return true
		}
	}
	r.Fault(n, sizeRemedy(n)+": a width or a length does not say which way it lies", "the size names none of left-right, front-back and top-bottom")
	return false
}

// count reads how many of a piece are made.
func (r *planReader) count(f *yamlfile.Fields) int {
	text, n, ok := f.Scalar("count")
	if !ok {
		return 1
	}
	count, err := strconv.Atoi(text)
	switch {
	case err == nil && count > mostCount, errors.Is(err, strconv.ErrRange):
		r.Fault(n, fmt.Sprintf("write %d at the most", mostCount), "%s is too many for one plan", yamlfile.Short(text))
	case err != nil:
		r.Fault(n, "write how many are made, such as count: 4", "%s is not a whole number", yamlfile.Quoted(text))
	case count < 1:
		r.Fault(n, "write 1 or more; to leave a piece out, put # before each of its lines", "a count of %d makes nothing", count)
	default:
		return count
	}
	return 1
}

// nearPiece is the remedy for an unknown name of a piece.
func (r *planReader) nearPiece(name string, but *blank) string {
	var names []string
	for _, b := range r.blanks {
		if b != but && b.Name != "" {
			names = append(names, b.Name)
		}
	}
	return yamlfile.NearName("piece", name, names)
}
