package planfile

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/yamlfile"
)

var (
	betweenShoulders = pattern.New(`(?i)^(.+?)\s+between(?:\s+the)?\s+shoulders?$`)
	nearShoulders    = pattern.New(`(?i)^(.+?)\s+[a-z ]*(?:bet|sho)[a-z ]*$`)
)

// dimensionOf reads one dimension of a size: a length, or one "between shoulders"
// to which joints add what enters at either end.
func (b *blank) dimensionOf(f *yamlfile.Fields, d joinery.Dimension) measure.Length {
	text, n, ok := f.Scalar(d.String())
	if !ok {
		return 0
	}
	m := betweenShoulders.FindStringSubmatch(text)
	if m == nil {
		if near := nearShoulders.FindStringSubmatch(text); near != nil && f.File.IsLength(near[1]) {
			f.File.Fault(n, "write "+near[1]+" between shoulders", "%s is no length", yamlfile.Quoted(text))
			return 0
		}
		return f.Positive(d.String())
	}
	length, ok := f.File.Length(n, m[1])
	if ok && length == 0 {
		f.File.Fault(n, "write a length above 0", "%s is 0", d)
	}
	b.between[d] = n
	return length
}

// finishSizes adds to the lengths between shoulders what the joints let in, and
// gives the mirrors their sizes.
func (r *planReader) finishSizes() {
	for _, b := range r.blanks {
		if b.mirrors() || !b.sized {
			continue
		}
		opening := b.Size
		for _, d := range joinery.Dimensions {
			if b.between[d] == nil {
				continue
			}
			b.Opening[d] = opening[d]
			for _, end := range []joinery.Side{d.Low(), d.High()} {
				enters, ok := r.enters(b, end, opening[d])
				b.Size[d] += enters
				b.sized = b.sized && ok
			}
		}
		r.setGrain(b)
	}
	for _, b := range r.blanks {
		if source := r.named[b.MirrorOf]; b.mirrors() && b.related {
			b.Size, b.Opening, b.Grain = source.Size, source.Opening, source.Grain
			b.sized = source.sized
		}
	}
}

// enters is how far an end of a piece goes in beyond its shoulder. An end that
// goes nowhere is a fault.
func (r *planReader) enters(b *blank, end joinery.Side, opening measure.Length) (measure.Length, bool) {
	faulty := false
	for _, j := range r.joints {
		faulty = faulty || j.broken
		for _, m := range j.met {
			if m.Part.Original() != b.Name || flipped(m.End, m.Part.Across) != end || m.Like {
				continue
			}
			length, faults := j.kind.Enters(m.Meeting, m.Words(j.words), opening, r.Scale, r.plan.Climate)
			for _, f := range faults {
				r.jointFault(j, f)
			}
			return length, len(faults) == 0
		}
	}
	if !faulty && len(r.Faults) == 0 {
		r.Fault(b.between[end.Dimension()], "write its whole length, or a joint for the "+end.String()+" end",
			"no joint says what goes in at the %s of %s", end, b.f.What)
	}
	return 0, false
}

// setGrain finds which way the grain runs: as written, or the longest way.
func (r *planReader) setGrain(b *blank) {
	if b.f.Key("grain") == nil {
		b.Grain = b.Size.Longest()
	}
}
