package shopfile

import (
	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"

	"go.yaml.in/yaml/v4"
)

// readWays reads how the shop goes about its cuts.
func (r *shopReader) readWays(f *yamlfile.Fields, shop *joinery.Shop) {
	replace(f, "crossing", &shop.Cross, r.crossing)
	if f.Written("passes") {
		shop.Gentle = f.Word("passes", "way to take passes", keys.PassesWords) == 0
	}
	if f.Written("raise") {
		shop.Raises = f.Answer("raise") == joinery.Yes
	}
	replace(f, "opening", &shop.Opening, (*yamlfile.Fields).Positive)
	replace(f, "bite", &shop.Bite, r.bite)
}

// crossing reads what pushes work across its end.
func (r *shopReader) crossing(f *yamlfile.Fields, key string) joinery.Crossing {
	if n := f.Value(key); n != nil && n.Kind == yaml.MappingNode {
		g := r.Fields(n, "crossing", keys.Crossing)
		g.Need(keys.Crossing...)
		return joinery.Crossing{With: joinery.Carriage, Base: g.Positive(joinery.Carriage.String())}
	}
	if text, n, ok := f.Scalar(key); ok && text == joinery.Carriage.String() {
		r.Fault(n, "write crossing: {carriage: 1/2}, with the thickness of its base", "a carriage raises the work by its base, which is not said")
		return joinery.Crossing{}
	}
	return joinery.Crossing{With: joinery.Push(max(0, f.Word(key, "way to push work across its end", keys.PushWords)))}
}
