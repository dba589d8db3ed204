package planfile

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/where"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

const cutExample = "- mortise: seat rail"

// readCuts reads the cuts of a piece, holds each against the piece, and
// checks the order they ask for.
func (r *planReader) readCuts(b *blank) {
	entries := b.f.Entries("cuts", "cut", cutExample)
	b.Cuts = slices.Grow(b.Cuts, len(entries))
	for _, n := range entries {
		if r.over() {
			return
		}
		r.readCut(n, b)
	}
	r.addJointCuts(b)
	r.checkAfter(b)
}

// readCut reads one cut. One with a fault is left out of the piece, but its
// name stays known, so that nothing else is faulted for it.
func (r *planReader) readCut(n *yaml.Node, b *blank) {
	if !r.Mapping(n, "a cut begins with its kind and name", "write "+cutExample+", and in, width, setback and depth below") {
		return
	}
	before := len(r.Faults)
	kind, key := r.kind(n)
	if key == "" {
		return
	}
	if kind == nil {
		if value := yamlfile.ValueOf(n, key); value.Kind == yaml.ScalarNode {
			b.cuts.see(r, yamlfile.OneLine(value.Value), value)
		}
		return
	}
	what := "the " + key
	if value := yamlfile.ValueOf(n, key); value.Kind == yaml.ScalarNode && !yamlfile.Null(value) {
		what = key + " " + yamlfile.Quoted(value.Value)
	}
	f := r.FieldsOf(n, what, kind.Keys(), key)
	f.Must(key)
	cut := joinery.Cut{Kind: kind, Name: f.Name(key), Place: r.Place(f.Value(key)), Places: f.Places()}
	cuts := []*joinery.Cut{&cut}
	if f.Written("repeat") {
		cuts = r.readRepeated(f, &cut, b)
	} else {
		b.cuts.see(r, cut.Name, f.Value(key))
		f.Need(kind.Required...)
		r.readCutValues(f, &cut, b)
	}
	if len(r.Faults) == before {
		r.allRead(f)
	}
	for _, c := range cuts {
		if r.over() || len(r.Faults) > before || !b.sized || !r.fits {
			return
		}
		for _, fault := range c.Lay(b.Piece, r.Scale) {
			r.Add(fault)
		}
		if len(r.Faults) == before {
			b.Cuts = append(b.Cuts, *c)
		}
	}
}

// allRead faults a key that its kind takes and that nothing here reads: the piece
// would be cut without what it asks for.
func (r *planReader) allRead(f *yamlfile.Fields) {
	for _, key := range f.Unread() {
		r.Fault(key, "take it out, and please report this plan as a mistake of fencecard", "%s may say %s, and nothing reads it", f.What, key.Value)
	}
}

// kind finds the key that is a kind of cut. Where there is none, it is a fault
// and the first key stands for it.
func (r *planReader) kind(n *yaml.Node) (*joinery.Kind, string) {
	var kind *joinery.Kind
	word := ""
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		k := joinery.KindNamed(key.Value)
		switch {
		case k == nil || key.Kind != yaml.ScalarNode:
		case kind == nil:
			kind, word = k, key.Value
		case key.Value != word:
			r.Fault(key, "begin a second cut with a dash of its own", "one cut cannot be a %s and a %s", word, key.Value)
			return nil, ""
		}
	}
	if kind != nil || len(n.Content) == 0 {
		return kind, word
	}
	first := n.Content[0]
	r.noKind(first)
	return nil, first.Value
}

// noKind faults a cut without a kind.
func (r *planReader) noKind(first *yaml.Node) {
	var names, all, ours []string
	for _, k := range joinery.Kinds {
		names = append(names, k.Name)
		all = append(append(all, k.Name), k.Also...)
		ours = append(ours, k.Keys()...)
	}
	remedy := fmt.Sprintf("begin it with %s and a name, such as %s", plantext.List(names, "or"), cutExample)
	near := plantext.Nearest(first.Value, all)
	switch {
	case near != "":
		r.Fault(first, "write "+near, "%s is no kind of cut", yamlfile.Quoted(first.Value))
	case slices.Contains(ours, first.Value) || slices.Contains([]string{"kind", "type", "cut", "name", "joint"}, first.Value):
		r.Fault(first, remedy, "a cut begins with its kind and name, not with %s", first.Value)
	default:
		r.Fault(first, remedy, "%s is no kind of cut known here", yamlfile.Quoted(first.Value))
	}
}

// readCutValues reads the keys of a cut that were written.
func (r *planReader) readCutValues(f *yamlfile.Fields, cut *joinery.Cut, b *blank) {
	cut.In = f.Side("in")
	if cut.Kind.Screwed {
		cut.Slot = r.readSlot(f, cut.In)
	} else {
		cut.At, cut.Along = f.Side("at"), f.Side("along")
	}
	cut.Width, cut.Length, cut.Depth = f.Positive("width"), f.Positive("length"), f.Positive("depth")
	cut.Start = where.Setback(f, cut.In)
	cut.Span = where.Span(f, cut.In, b.Size, b.sized)
	cut.Cheeks = where.Cheeks(f, cut.At)
	cut.Fence = where.Fence(f)
	cut.Square = f.Word("ends", "way to leave ends", keys.EndsWords) == 1
	if f.Has("note") {
		cut.Note = f.Text("note", yamlfile.LongestNote)
	}
	cut.After = r.readAfter(f, cut.Name, b)
	cut.Mates = r.readMates(f)
	r.readBy(f, cut)
	if cut.Kind.Shapes {
		cut.Moulding = r.readMoulding(f, cut)
	}
}

// readBy reads what a cut is made with: one bit of the shop, or hand tools.
func (r *planReader) readBy(f *yamlfile.Fields, cut *joinery.Cut) {
	r.readTool(f, cut)
	if cut.By = f.Name("by"); cut.By == "" {
		return
	}
	for _, key := range []string{"bit", "start"} {
		if n := f.Key(key); n != nil {
			r.Fault(n, "take "+key+" or by out", "%s is for a cut at the table, and this one is made by %s", key, yamlfile.Short(cut.By))
		}
	}
}

// readTool reads which bit a cut is made with, and how it is started.
func (r *planReader) readTool(f *yamlfile.Fields, cut *joinery.Cut) {
	cut.Bit = f.Name("bit")
	if shop := &r.plan.Shop; cut.Bit != "" && !r.doubtful && shop.Bit(cut.Bit) == nil {
		var names []string
		for i := range shop.Bits {
			names = append(names, shop.Bits[i].Name)
		}
		r.Fault(f.Value("bit"), yamlfile.NearName("bit", cut.Bit, names), "the shop has no bit named %s", yamlfile.Quoted(cut.Bit))
	}
	cut.Bored = f.Word("start", "way to start a cut", keys.StartWords) == 0
}
