package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/where"
	"fencecard/joinery/planfile/yamlfile"
)

// readMoulding reads how an edge is shaped. What the bit or the shape leaves open
// stays nil and was faulted.
func (r *planReader) readMoulding(f *yamlfile.Fields, cut *joinery.Cut) *joinery.Moulding {
	before := len(r.Faults)
	m := joinery.Moulding{Raise: f.Positive("raise"), Leaves: f.Positive("leaves")}
	m.Down, m.Fence = where.Arris(f)
	if text, _, ok := f.Scalar("reach"); ok && !strings.EqualFold(text, "full") {
		m.Reach = f.Positive("reach")
	}
	switch bit := r.plan.Shop.Bit(cut.Bit); {
	case cut.Bit != "" && bit != nil && bit.Outline == nil:
		r.Fault(f.Value("bit"), "name a bit of kind round-over, cove, chamfer or outline", "the %s bit is %s and shapes no edge", yamlfile.Quoted(cut.Bit), bit.Kind)
	case cut.Bit != "":
		for _, key := range []string{"shape", "radius"} {
			if n := f.Key(key); n != nil {
				r.Fault(n, "take "+key+" out, or bit", "the bit says what shape the edge gets")
			}
		}
		if bit != nil {
			m.Outline = bit.Outline
		}
	case f.Knows("shape"):
		m.Outline = r.readShape(f)
	}
	if len(r.Faults) > before {
		return nil
	}
	return &m
}

// readShape reads the shape of an edge for which any bit of the shop will do.
func (r *planReader) readShape(f *yamlfile.Fields) *joinery.Outline {
	if !f.Written("shape") && !f.Written("radius") {
		r.Fault(f.Value(f.Kind), "add bit: and the name of a bit, or shape: round-over, radius: 1/4", "the cut does not say what shape the edge gets")
		return nil
	}
	f.Need("shape", "radius")
	radius := f.Positive("radius")
	text, n, ok := f.Scalar("shape")
	if !ok {
		return nil
	}
	kind, known := joinery.ParseBitKind(strings.ToLower(text))
	shape, shapes := kind.Shape()
	if !known || !shapes || shape == joinery.Drawn {
		r.Choice(r.Place(n), "shape", text, keys.ShapeWords...)
		return nil
	}
	if radius == 0 {
		return nil
	}
	outline := &joinery.Outline{Shape: shape, Radius: radius}
	for i := range r.plan.Shop.Bits {
		if o := r.plan.Shop.Bits[i].Outline; o != nil && o.Same(outline) {
			return o // one and the same for all bits and cuts of that form
		}
	}
	return outline
}
