package planfile

import (
	"fmt"
	"slices"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

const cutExample = "- mortise: seat rail"

// readCuts reads the cuts of a piece, holds each against the piece, and
// checks the order they ask for.
func (r *planReader) readCuts(b *blank) {
	entries := b.f.entries("cuts", "cut", cutExample)
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
	if !r.mapping(n, "a cut begins with its kind and name", "write "+cutExample+", and in, width, setback and depth below") {
		return
	}
	before := len(r.faults)
	kind, key := r.kind(n)
	if key == "" {
		return
	}
	if kind == nil {
		if value := valueOf(n, key); value.Kind == yaml.ScalarNode {
			b.cuts.see(r, oneLine(value.Value), value)
		}
		return
	}
	what := "the " + key
	if value := valueOf(n, key); value.Kind == yaml.ScalarNode && !null(value) {
		what = key + " " + quoted(value.Value)
	}
	f := r.fieldsOf(n, what, kind.Keys(), key)
	f.must(key)
	cut := joinery.Cut{Kind: kind, Name: f.name(key), Place: r.place(f.value(key)), Places: f.places()}
	cuts := []*joinery.Cut{&cut}
	if f.written("repeat") {
		cuts = r.readRepeated(f, &cut, b)
	} else {
		b.cuts.see(r, cut.Name, f.value(key))
		f.need(kind.Required...)
		r.readCutValues(f, &cut, b)
	}
	for _, c := range cuts {
		if r.over() || len(r.faults) > before || !b.sized || !r.fits {
			return
		}
		for _, fault := range c.Lay(b.Piece, r.scale) {
			r.add(fault)
		}
		if len(r.faults) == before {
			b.Cuts = append(b.Cuts, *c)
		}
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
			r.fault(key, "begin a second cut with a dash of its own", "one cut cannot be a %s and a %s", word, key.Value)
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
	remedy := fmt.Sprintf("begin it with %s and a name, such as %s", joinery.List(names, "or"), cutExample)
	near := joinery.Nearest(first.Value, all)
	switch {
	case near != "":
		r.fault(first, "write "+near, "%s is no kind of cut", quoted(first.Value))
	case slices.Contains(ours, first.Value) || slices.Contains([]string{"kind", "type", "cut", "name", "joint"}, first.Value):
		r.fault(first, remedy, "a cut begins with its kind and name, not with %s", first.Value)
	default:
		r.fault(first, remedy, "%s is no kind of cut known here", quoted(first.Value))
	}
}

// readCutValues reads the keys of a cut that were written.
func (r *planReader) readCutValues(f *fields, cut *joinery.Cut, b *blank) {
	cut.In = f.side("in")
	if f.knows("screw") {
		cut.Slot = r.readSlot(f, cut.In)
	} else {
		cut.At, cut.Along = f.side("at"), f.side("along")
	}
	cut.Width, cut.Length, cut.Depth = f.positive("width"), f.positive("length"), f.positive("depth")
	cut.Start = readSetback(f, cut.In)
	cut.Span = readSpan(f, cut.In, b.Size, b.sized)
	cut.Cheeks = readCheeks(f, cut.At)
	cut.Fence = readFencing(f)
	cut.Square = f.word("ends", "way to leave ends", endsWords) == 1
	if f.has("note") {
		cut.Note = f.text("note", longestNote)
	}
	cut.After = r.readAfter(f, cut.Name, b)
	cut.Mates = r.readMates(f)
	r.readBy(f, cut)
	if cut.Kind.Shapes {
		cut.Moulding = r.readMoulding(f, cut)
	}
}

// readBy reads what a cut is made with: one bit of the shop, or hand tools.
func (r *planReader) readBy(f *fields, cut *joinery.Cut) {
	r.readTool(f, cut)
	if cut.By = f.name("by"); cut.By == "" {
		return
	}
	for _, key := range []string{"bit", "start"} {
		if n := f.key(key); n != nil {
			r.fault(n, "take "+key+" or by out", "%s is for a cut at the table, and this one is made by %s", key, short(cut.By))
		}
	}
}

// readTool reads which bit a cut is made with, and how it is started.
func (r *planReader) readTool(f *fields, cut *joinery.Cut) {
	cut.Bit = f.name("bit")
	if shop := &r.plan.Shop; cut.Bit != "" && !r.doubtful && shop.Bit(cut.Bit) == nil {
		var names []string
		for i := range shop.Bits {
			names = append(names, shop.Bits[i].Name)
		}
		r.fault(f.value("bit"), nearName("bit", cut.Bit, names), "the shop has no bit named %s", quoted(cut.Bit))
	}
	cut.Bored = f.word("start", "way to start a cut", startWords) == 0
}
