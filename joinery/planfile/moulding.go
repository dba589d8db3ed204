package planfile

import (
	"strings"

	"fencecard/joinery"
)

// readMoulding reads how an edge is shaped. What the bit or the shape leaves open
// stays nil and was faulted.
func (r *planReader) readMoulding(f *fields, cut *joinery.Cut) *joinery.Moulding {
	before := len(r.faults)
	m := joinery.Moulding{Raise: f.positive("raise"), Leaves: f.positive("leaves")}
	if f.knows("on") {
		m.Down, m.Fence = readArris(f)
	}
	if text, _, ok := f.scalar("reach"); ok && !strings.EqualFold(text, "full") {
		m.Reach = f.positive("reach")
	}
	switch bit := r.plan.Shop.Bit(cut.Bit); {
	case cut.Bit != "" && bit != nil && bit.Outline == nil:
		r.fault(f.value("bit"), "name a bit of kind round-over, cove, chamfer or outline", "the %s bit is %s and shapes no edge", quoted(cut.Bit), bit.Kind)
	case cut.Bit != "":
		for _, key := range []string{"shape", "radius"} {
			if n := f.key(key); n != nil {
				r.fault(n, "take "+key+" out, or bit", "the bit says what shape the edge gets")
			}
		}
		if bit != nil {
			m.Outline = bit.Outline
		}
	case f.knows("shape"):
		m.Outline = r.readShape(f)
	}
	if len(r.faults) > before {
		return nil
	}
	return &m
}

// readShape reads the shape of an edge for which any bit of the shop will do.
func (r *planReader) readShape(f *fields) *joinery.Outline {
	if !f.written("shape") && !f.written("radius") {
		r.fault(f.value(f.kind), "add bit: and the name of a bit, or shape: round-over, radius: 1/4", "the cut does not say what shape the edge gets")
		return nil
	}
	f.need("shape", "radius")
	radius := f.positive("radius")
	text, n, ok := f.scalar("shape")
	if !ok {
		return nil
	}
	kind, known := joinery.ParseBitKind(strings.ToLower(text))
	shape, shapes := kind.Shape()
	if !known || !shapes || shape == joinery.Drawn {
		r.choice(r.place(n), "shape", text, shapeWords...)
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
