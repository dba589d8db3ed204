package shopfile

import (
	"fmt"
	"math/big"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"

	"go.yaml.in/yaml/v4"
)

// readOutline reads the outline of a bit that shapes edges, and holds it against
// the bit's diameter, which may be left out.
func (r *shopReader) readOutline(f *yamlfile.Fields, bit *joinery.Bit) {
	shape, ok := bit.Kind.Shape()
	if !ok {
		for _, key := range []string{"radius", "pilot", "outline"} {
			if n := f.Key(key); n != nil {
				r.Fault(n, "write kind: round-over, kind: cove, kind: chamfer or kind: outline, or take "+key+" out", "a %s bit has no %s", bit.Kind, key)
			}
		}
		return
	}
	before := len(r.Faults)
	o := &joinery.Outline{Shape: shape}
	f.Need("pilot")
	bit.Pilot = f.Positive("pilot")
	if shape == joinery.Drawn {
		f.Need("outline")
		o.Corners = r.readCorners(f)
		if n := f.Key("radius"); n != nil {
			r.Fault(n, "take radius out", "the outline says its form already")
		}
	} else {
		f.Need("radius")
		o.Radius = f.Positive("radius")
		if n := f.Key("outline"); n != nil {
			r.Fault(n, "take outline out, or write kind: outline", "a %s bit has a radius, which says its form", bit.Kind)
		}
	}
	if n := f.Key("measured"); n != nil {
		r.Fault(n, "take measured out; where the cut is off, correct radius, pilot or outline", "the width of a bit that shapes edges cuts no wall")
	}
	if len(r.Faults) > before || bit.Pilot == 0 || o.Wide() == 0 || f.Written("diameter") && bit.Diameter == 0 {
		return // told already, where a key is misspelt in place of the one that is missing
	}
	spell, want := measure.DefaultScale(r.Unit).Spell, o.Across(bit.Pilot)
	switch {
	case !f.Written("diameter") && want > widestBit:
		r.Fault(f.Value("pilot"), checkUnit, "a pilot of %s and a reach of %s on each side make %s, and no router bit is this wide", spell(bit.Pilot), spell(o.Wide()), spell(want))
		return
	case !f.Written("diameter"):
		bit.Diameter = want
	case bit.Diameter != want:
		r.Fault(f.Value("diameter"), "write diameter: "+strings.TrimSuffix(strings.TrimSuffix(spell(want), " in"), " mm")+", or correct pilot, radius or outline",
			"a pilot of %s and a reach of %s on each side make %s, not %s", spell(bit.Pilot), spell(o.Wide()), spell(want), spell(bit.Diameter))
		return
	}
	bit.Outline = o
}

// readCorners reads a list of heights below the pilot and reaches beyond it.
func (r *shopReader) readCorners(f *yamlfile.Fields) []joinery.Corner {
	n := f.Value("outline")
	if n == nil {
		return nil
	}
	remedy := "write " + keys.Example("outline") + ": pairs of how far below the pilot, and how far beyond it"
	if n.Kind != yaml.SequenceNode || len(n.Content) < 2 || len(n.Content) > joinery.MostCorners {
		r.Fault(n, remedy, "an outline is a list of 2 to %d corners", joinery.MostCorners)
		return nil
	}
	var corners []joinery.Corner
	for i, pair := range n.Content {
		if pair.Kind != yaml.SequenceNode || len(pair.Content) != 2 || pair.Content[0].Kind != yaml.ScalarNode || pair.Content[1].Kind != yaml.ScalarNode {
			r.Fault(pair, remedy, "a corner of an outline is two lengths in brackets")
			return nil
		}
		below, ok1 := r.Length(pair.Content[0], pair.Content[0].Value)
		reach, ok2 := r.Length(pair.Content[1], pair.Content[1].Value)
		switch {
		case !ok1 || !ok2:
			return nil
		case i == 0 && below != 0:
			r.Fault(pair, "begin with [0, and the reach there]", "the outline begins below the pilot")
			return nil
		case i > 0 && below <= corners[i-1].Below:
			r.Fault(pair, "list the corners from the pilot down, each lower than the one before", "this corner lies no lower than the one before it")
			return nil
		}
		corners = append(corners, joinery.Corner{Below: below, Reach: reach})
	}
	o := joinery.Outline{Shape: joinery.Drawn, Corners: corners}
	if o.Wide() == 0 {
		r.Fault(n, remedy, "the outline never reaches beyond the pilot")
		return nil
	}
	return corners
}

// bite reads an area in square inches or square millimetres, as the unit is.
func (r *shopReader) bite(f *yamlfile.Fields, key string) measure.Length {
	text, n, ok := f.Scalar(key)
	if !ok {
		return 0
	}
	most, unit, such := big.NewRat(1, 1), "square inches", "0.032"
	if r.Unit == measure.Millimetres {
		most, unit, such = big.NewRat(600, 1), "square millimetres", "20.5"
	}
	area, ok := yamlfile.Number(text)
	if !ok || area.Sign() <= 0 || area.Cmp(most) > 0 {
		r.Fault(n, fmt.Sprintf("write the most wood that one pass takes across an edge, in %s up to %s, such as %s", unit, most.RatString(), such), "%s is no bite of a bit", yamlfile.Quoted(text))
		return 0
	}
	mm2, _ := area.Float64()
	if r.Unit == measure.Inches {
		mm2 *= measure.Inch.Millimetres() * measure.Inch.Millimetres()
	}
	return measure.Strip(mm2)
}
