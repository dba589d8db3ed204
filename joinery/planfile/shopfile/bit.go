package shopfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// readBits reads the list of bits.
func (r *shopReader) readBits(f *yamlfile.Fields) []joinery.Bit {
	var bits []joinery.Bit
	named := map[string]plantext.Place{}
	for _, n := range f.Entries("bits", "bit", bitExample) {
		if r.Full {
			break
		}
		bit, ok := r.readBit(n)
		if !ok {
			continue
		}
		if first, again := named[bit.Name]; again {
			r.Add(plantext.Fault{
				Place:   bit.Place,
				Problem: fmt.Sprintf("two bits are named %q", bit.Name),
				Remedy:  "give each bit a name of its own",
				Other:   first,
				Clash:   "the first one",
			})
			continue
		}
		named[bit.Name] = bit.Place
		bits = append(bits, bit)
	}
	return bits
}

func (r *shopReader) readBit(n *yaml.Node) (joinery.Bit, bool) {
	if !r.Mapping(n, "a bit has a name and a diameter", "write "+bitExample) {
		return joinery.Bit{}, false
	}
	before := len(r.Faults)
	f := r.Fields(n, "the bit", keys.Bit)
	kind, known := r.bitKind(f)
	if _, shapes := kind.Shape(); shapes || !known {
		f.Need("bit") // what shapes edges is as wide as its pilot and its outline make it
	} else {
		f.Need("bit", "diameter")
	}
	bit := joinery.Bit{Kind: kind, Place: r.Place(n), Name: f.Name("bit")}
	if value := f.Value("bit"); value != nil {
		bit.Place = r.Place(value)
	}
	bit.Diameter, bit.Measured = r.diameter(f), f.Positive("measured")
	bit.Cutting, bit.Shank, bit.Cap = r.likely(f, "cutting"), r.likely(f, "shank"), r.likely(f, "cap")
	bit.Plunges, bit.Speed = f.Answer("plunges"), r.speed(f)
	if known {
		r.readOutline(f, &bit)
	}
	if len(r.Faults) == before {
		r.checkMeasured(f, bit)
		if bit.Outline == nil {
			r.doubtCutting(f, bit)
		}
	}
	return bit, len(r.Faults) == before
}

// checkMeasured faults a measure a tenth or more off the label: a bit is
// seldom its size, but then it is another bit or a slip of the finger.
func (r *shopReader) checkMeasured(f *yamlfile.Fields, bit joinery.Bit) {
	if bit.Measured > 0 && bit.Diameter > 0 && 10*(bit.Measured-bit.Diameter).Abs() >= bit.Diameter {
		r.Fault(f.Value("measured"), "measure the trial groove again; if it is correct, write it as the diameter too",
			"measured is more than a tenth off the diameter")
	}
}

// widestBit is more than any router takes; a wider one is a slip in the unit.
const widestBit = 100 * measure.Millimetre

func (r *shopReader) diameter(f *yamlfile.Fields) measure.Length {
	d := f.Positive("diameter")
	if d > widestBit {
		r.Fault(f.Value("diameter"), checkUnit, "no router bit is this wide")
		return 0
	}
	return d
}

// bitKind reads a bit's kind, and reports whether it is one.
func (r *shopReader) bitKind(f *yamlfile.Fields) (joinery.BitKind, bool) {
	text, n, ok := f.Scalar("kind")
	if !ok {
		return joinery.Straight, !f.Written("kind")
	}
	kind, ok := joinery.ParseBitKind(strings.ToLower(text))
	if !ok {
		r.Choice(r.Place(n), "kind of bit", text, joinery.BitKindNames()...)
	}
	return kind, ok
}
