package planfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/timber"

	"go.yaml.in/yaml/v4"
)

// readMirror reads a piece that mirrors another, and its own cuts besides.
func (r *planReader) readMirror(b *blank) {
	if r.over() {
		return
	}
	for _, key := range []string{"size", "grain", "sides"} {
		if at := b.f.Key(key); at != nil {
			r.Fault(at, "take "+key+" out here", "%s takes its %s from the piece it mirrors", b.f.What, key)
		}
	}
	b.Wood = r.readWood(b.f, timber.Wood{})
	f := r.mirrorKeys(b)
	if f == nil {
		return
	}
	across := r.readAcross(f)
	source := r.mirrored(b, f, across)
	if source == nil {
		return
	}
	if !r.room(b, source) {
		return
	}
	piece := *source.Piece
	if b.f.Written("wood") {
		piece.Wood = b.Wood
	}
	for _, d := range across {
		piece = piece.Mirrored(b.Name, d, r.Scale)
	}
	piece.Name, piece.MirrorOf = b.Name, source.Name
	piece.Count, piece.Place, piece.Places = b.Count, b.Place, b.Places
	if b.f.Written("wood") && source.sized {
		r.checkMirror(&piece, b.f.Value("wood"))
	}
	*b.Piece, b.sized = piece, source.sized
	b.cuts.mirrored = &source.cuts
	r.readCuts(b)
}

// checkMirror faults at its wood what a mirrored piece of another wood has no
// room for: a screw in it may move further.
func (r *planReader) checkMirror(p *joinery.Piece, wood *yaml.Node) {
	for i := range p.Cuts {
		for _, fault := range p.Cuts[i].Lay(p, r.Scale) {
			fault.Place = r.Place(wood)
			r.Add(fault)
		}
	}
}

// mostMirrored is the most pieces and cuts that mirrors may add to those written:
// a plan must not grow in memory far beyond its own size.
const mostMirrored = 15_000

// room reports whether one more mirror can be taken; where it cannot, reading
// ends with that fault.
func (r *planReader) room(b, source *blank) bool {
	r.copied += 1 + len(source.Cuts)
	if r.copied <= mostMirrored {
		return true
	}
	r.Fault(b.f.Key("mirror"), "write count where pieces are alike, or split the plan",
		"with this mirror there are more than %d mirrored pieces and cuts", mostMirrored)
	r.crowded = true
	return false
}

func (r *planReader) mirrorKeys(b *blank) *yamlfile.Fields {
	if !b.f.Has("mirror") {
		return nil
	}
	n := b.f.Value("mirror")
	if !r.Mapping(n, "a mirror says of which piece, and across which dimension", "write "+mirrorExample(n)) {
		return nil
	}
	f := r.Fields(n, "mirror", keys.Mirror)
	f.Need(keys.Mirror...)
	return f
}

// mirrorExample shows how a mirror is written, with the maker's own name where
// there is one.
func mirrorExample(n *yaml.Node) string {
	name := "front left leg"
	if n.Kind == yaml.ScalarNode {
		name = yamlfile.Short(n.Value)
	}
	return fmt.Sprintf("mirror: {of: %s, across: left-right}", name)
}

// mirrored finds the piece to mirror.
func (r *planReader) mirrored(b *blank, f *yamlfile.Fields, across []joinery.Dimension) *blank {
	name := f.Name("of")
	if name == "" {
		return nil
	}
	at := f.Value("of")
	source, ok := r.named[name]
	switch {
	case !ok && r.nameless: // it may be the piece whose name is at fault
	case !ok:
		r.Fault(at, r.nearPiece(name, b), "there is no piece named %s", yamlfile.Quoted(name))
	case source == b:
		r.Fault(at, "name another piece, or take mirror out and give this one its size", "%s mirrors itself", b.f.What)
	case source.mirrors():
		r.Fault(at, mirrorOnce(source, across), "%s is a mirror itself", yamlfile.Quoted(name))
	case source.done:
		return source
	}
	return nil
}

// mirrorOnce is the remedy for a mirror of a mirror: the piece behind both,
// mirrored across what remains.
func mirrorOnce(source *blank, across []joinery.Dimension) string {
	of, first := "", []string(nil)
	written := source.f.Value("mirror")
	if n := yamlfile.ValueOf(written, "of"); n != nil {
		of = yamlfile.OneLine(n.Value)
	}
	if n := yamlfile.ValueOf(written, "across"); n != nil {
		first = texts(n)
	}
	for _, d := range across {
		if at := slices.Index(first, d.String()); at >= 0 {
			first = slices.Delete(first, at, at+1)
		} else {
			first = append(first, d.String())
		}
	}
	if of == "" || len(first) == 0 {
		return "mirror a piece that has a size of its own"
	}
	return fmt.Sprintf("mirror the first piece: mirror: {of: %s, across: [%s]}", of, strings.Join(first, ", "))
}

// texts lists the texts of a scalar or a list.
func texts(n *yaml.Node) []string {
	if n == nil {
		return nil
	}
	if n.Kind == yaml.ScalarNode {
		return []string{n.Value}
	}
	var all []string
	for _, inner := range n.Content {
		all = append(all, inner.Value)
	}
	return all
}

// readAcross reads one dimension or a list of them.
func (r *planReader) readAcross(f *yamlfile.Fields) []joinery.Dimension {
	var across []joinery.Dimension
	for _, n := range f.OneOrMore("across") {
		if r.Full {
			break
		}
		d, ok := r.Dimension(n, strings.TrimSpace(n.Value))
		if !ok {
			continue
		}
		if slices.Contains(across, d) {
			r.Fault(n, "name each dimension once", "mirrored twice across %s, which changes nothing", d)
			continue
		}
		across = append(across, d)
	}
	return across
}
