package planfile

import (
	"slices"
	"strconv"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/yamlfile"

	"go.yaml.in/yaml/v4"
)

// readRepeated reads a cut that repeats, and returns one cut for each place. A
// span that is a bare length begins at the places; else they are where the near
// walls are.
func (r *planReader) readRepeated(f *yamlfile.Fields, cut *joinery.Cut, b *blank) []*joinery.Cut {
	kind, base := cut.Kind, cut.Name
	rep := r.readRepeat(f)
	at := f.Value("repeat")
	long, along := r.bareSpan(f)
	required := slices.Clone(kind.Required)
	switch {
	case along:
		f.Forget("span")
	case !kind.Has("setback"):
		r.Fault(at, "write span: 1 1/2, with its length, and the repeat says where each begins", "a %s has no setback, so it repeats along its own run", kind)
		return nil
	case f.Written("setback"):
		r.Fault(f.Key("setback"), "take setback out; or, if they lie one behind the other, write how long each is: span: 1 1/2",
			"repeat and setback both say where the near walls are")
		return nil
	default:
		required = slices.DeleteFunc(required, func(key string) bool { return key == "setback" })
		cut.Places.Add("setback", at.Line, at.Column)
	}
	f.Need(required...)
	if base == "" || rep == nil {
		r.readCutValues(f, cut, b)
		return nil
	}
	if !r.copies(f, len(rep.at)) {
		return nil
	}
	name := func(i int) string { return base + " " + strconv.Itoa(i+1) }
	for i := range rep.at {
		b.cuts.see(r, name(i), f.Value(f.Kind))
		b.cuts.stand(base, name(i))
	}
	cut.Name = name(0)
	r.readCutValues(f, cut, b)
	cut.Note = rep.note(cut.Note, r.Scale)
	var cuts []*joinery.Cut
	if r.pastTheEnd(at, rep, taken(along, long, cut.Width), b, name) {
		return nil
	}
	for i, from := range rep.at {
		one := *cut
		one.Name = name(i)
		if along {
			one.Span = joinery.Span{From: from, To: from + long, Side: rep.from}
		} else {
			one.Start = joinery.Setback{Distance: from, From: rep.from}
		}
		cuts = append(cuts, &one)
	}
	return cuts
}

// pastTheEnd faults a repeat that does not end inside the piece.
func (r *planReader) pastTheEnd(n *yaml.Node, rep *repeat, long measure.Length, b *blank, name func(int) string) bool {
	if !b.sized {
		return false
	}
	size := b.Size.Between(rep.from)
	for i, at := range rep.at {
		if out := at + long - size; out > 0 {
			r.Fault(n, "repeat it fewer times, or closer together", "%s would end %s outside the piece, which measures %s %s",
				yamlfile.Quoted(name(i)), r.Scale.Say(out), r.Scale.Say(size), rep.from.Dimension())
			return true
		}
	}
	return false
}

// bareSpan reads a span that is a length alone, as a repeat may have.
func (r *planReader) bareSpan(f *yamlfile.Fields) (measure.Length, bool) {
	n := f.Value("span")
	if n == nil || !r.IsLength(n.Value) {
		return 0, false
	}
	return f.Positive("span"), true
}

// copies reports whether so many more cuts can be taken; where they cannot,
// reading ends with that fault.
func (r *planReader) copies(f *yamlfile.Fields, times int) bool {
	if r.copied += times; r.copied <= mostMirrored {
		return true
	}
	r.Fault(f.Key("repeat"), "split the plan", "with this repeat there are more than %d cuts from mirrors and repeats", mostMirrored)
	r.crowded = true
	return false
}

// taken is how much of the piece one of a repeat takes on its way.
func taken(along bool, long, wide measure.Length) measure.Length {
	if along {
		return long
	}
	return wide
}
