package planfile

import (
	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// readWays reads how the shop goes about its cuts.
func (r *shopReader) readWays(f *fields, shop *joinery.Shop) {
	replace(f, "crossing", &shop.Cross, r.crossing)
	if f.written("passes") {
		shop.Gentle = f.word("passes", "way to take passes", passesWords) == 0
	}
	if f.written("raise") {
		shop.Raises = f.answer("raise") == joinery.Yes
	}
	replace(f, "opening", &shop.Opening, (*fields).positive)
	replace(f, "bite", &shop.Bite, r.bite)
}

// crossing reads what pushes work across its end.
func (r *shopReader) crossing(f *fields, key string) joinery.Crossing {
	if n := f.value(key); n != nil && n.Kind == yaml.MappingNode {
		g := r.fields(n, "crossing", crossingKeys)
		g.need(crossingKeys...)
		return joinery.Crossing{With: joinery.Carriage, Base: g.positive(joinery.Carriage.String())}
	}
	if text, n, ok := f.scalar(key); ok && text == joinery.Carriage.String() {
		r.fault(n, "write crossing: {carriage: 1/2}, with the thickness of its base", "a carriage raises the work by its base, which is not said")
		return joinery.Crossing{}
	}
	return joinery.Crossing{With: joinery.Push(max(0, f.word(key, "way to push work across its end", pushWords)))}
}
