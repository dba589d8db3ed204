package planfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// readBits reads the list of bits.
func (r *shopReader) readBits(f *fields) []joinery.Bit {
	var bits []joinery.Bit
	named := map[string]joinery.Place{}
	for _, n := range f.entries("bits", "bit", bitExample) {
		if r.full {
			break
		}
		bit, ok := r.readBit(n)
		if !ok {
			continue
		}
		if first, again := named[bit.Name]; again {
			r.add(joinery.Fault{
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
	if !r.mapping(n, "a bit has a name and a diameter", "write "+bitExample) {
		return joinery.Bit{}, false
	}
	before := len(r.faults)
	f := r.fields(n, "the bit", bitKeys)
	f.need("bit", "diameter")
	bit := joinery.Bit{Place: r.place(n), Name: f.name("bit")}
	if value := f.value("bit"); value != nil {
		bit.Place = r.place(value)
	}
	bit.Kind = r.bitKind(f)
	bit.Diameter, bit.Measured = r.diameter(f), f.positive("measured")
	bit.Cutting, bit.Shank, bit.Cap = r.likely(f, "cutting"), r.likely(f, "shank"), r.likely(f, "cap")
	bit.Plunges, bit.Speed = f.answer("plunges"), r.speed(f)
	r.readOutline(f, &bit)
	if len(r.faults) == before {
		r.checkMeasured(f, bit)
		if bit.Outline == nil {
			r.doubtCutting(f, bit)
		}
	}
	return bit, len(r.faults) == before
}

// checkMeasured faults a measure a tenth or more off the label: a bit is
// seldom its size, but then it is another bit or a slip of the finger.
func (r *shopReader) checkMeasured(f *fields, bit joinery.Bit) {
	if bit.Measured > 0 && bit.Diameter > 0 && 10*(bit.Measured-bit.Diameter).Abs() >= bit.Diameter {
		r.fault(f.value("measured"), "measure the trial slot again; if it is correct, write it as the diameter too",
			"measured is more than a tenth off the diameter")
	}
}

// widestBit is more than any router takes; a wider one is a slip in the unit.
const widestBit = 100 * joinery.Millimetre

func (r *shopReader) diameter(f *fields) joinery.Length {
	d := f.positive("diameter")
	if d > widestBit {
		r.fault(f.value("diameter"), checkUnit, "no router bit is this wide")
		return 0
	}
	return d
}

func (r *shopReader) bitKind(f *fields) joinery.BitKind {
	text, n, ok := f.scalar("kind")
	if !ok {
		return joinery.Straight
	}
	kind, ok := joinery.ParseBitKind(strings.ToLower(text))
	if !ok {
		r.choice(r.place(n), "kind of bit", text, joinery.BitKindNames()...)
	}
	return kind
}
