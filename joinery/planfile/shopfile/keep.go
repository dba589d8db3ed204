package shopfile

import (
	"bytes"
	"fmt"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// KeepMeasured writes the measured diameter of a bit into a shop file, or into
// a plan with the shop in place, and returns the new file. Nothing else in it
// changes: remarks, order and line ends stay. The error is [plantext.Faults].
func KeepMeasured(name string, data []byte, bit string, diameter measure.Length, scale measure.Scale) ([]byte, error) {
	r := &shopReader{File: yamlfile.New(name, scale.Unit, scale)}
	root := r.Tree(data, "the shop file", beginShop)
	if err := r.Err(); err != nil {
		return nil, err
	}
	n := bitNamed(root, bit)
	if n == nil {
		return nil, r.cannotKeep(root, fmt.Sprintf("there is no bit %q here", bit), "add it to bits, with bit: "+bit)
	}
	kept, ok := keep(data, n, scale.Spell(diameter))
	if !ok || !keeps(name, kept, bit, diameter, scale) {
		return nil, r.cannotKeep(n, fmt.Sprintf("measured cannot be written into the bit %q as it stands", bit),
			"write measured: "+scale.Spell(diameter)+" below its diameter by hand")
	}
	return kept, nil
}

func (r *shopReader) cannotKeep(n *yaml.Node, problem, remedy string) error {
	return plantext.Faults{{Place: r.Place(n), Problem: problem, Remedy: remedy}}
}

// bitNamed finds a bit in a shop file or in a plan that has its shop in place.
func bitNamed(root *yaml.Node, name string) *yaml.Node {
	if shop := yamlfile.ValueOf(root, "shop"); shop != nil {
		root = shop
	}
	bits := yamlfile.ValueOf(root, "bits")
	if bits == nil {
		return nil
	}
	for _, bit := range bits.Content {
		if n := yamlfile.ValueOf(bit, "bit"); n != nil && yamlfile.OneLine(n.Value) == name {
			return bit
		}
	}
	return nil
}

// keep puts the text into a bit: in place of the measure that is there, else
// behind the diameter.
func keep(data []byte, bit *yaml.Node, text string) ([]byte, bool) {
	if old := yamlfile.PairOf(bit, "measured"); old.Value != nil {
		if yamlfile.Null(old.Value) {
			return insert(data, yamlfile.OffsetIn(data, old.Key)+len("measured:"), " "+text), true
		}
		from, to, ok := extent(data, old.Value)
		if !ok {
			return nil, false
		}
		return insert(append(bytes.Clone(data[:from]), data[to:]...), from, text), true
	}
	diameter := yamlfile.PairOf(bit, "diameter")
	if diameter.Value == nil {
		return nil, false
	}
	_, to, ok := extent(data, diameter.Value)
	if !ok {
		return nil, false
	}
	if bit.Style&yaml.FlowStyle != 0 {
		return insert(data, to, ", measured: "+text), true
	}
	line := to + bytes.IndexAny(append(data[to:len(data):len(data)], '\n'), "\r\n")
	indent := strings.Repeat(" ", diameter.Key.Column-1)
	return insert(data, line, yamlfile.LineEnd(data)+indent+"measured: "+text), true
}

func insert(data []byte, at int, text string) []byte {
	out := make([]byte, 0, len(data)+len(text))
	out = append(out, data[:at]...)
	out = append(out, text...)
	return append(out, data[at:]...)
}

// extent returns where a value of one line begins and ends in the file.
func extent(data []byte, n *yaml.Node) (from, to int, ok bool) {
	from = yamlfile.OffsetIn(data, n)
	written := n.Value
	switch {
	case n.Kind != yaml.ScalarNode:
		return 0, 0, false
	case n.Style&yaml.DoubleQuotedStyle != 0:
		written = `"` + strings.ReplaceAll(n.Value, `"`, `\"`) + `"`
	case n.Style&yaml.SingleQuotedStyle != 0:
		written = "'" + strings.ReplaceAll(n.Value, "'", "''") + "'"
	}
	to = from + len(written)
	return from, to, to <= len(data) && string(data[from:to]) == written
}

// keeps reads the new file and makes sure that it says what was to be kept.
func keeps(name string, data []byte, bit string, diameter measure.Length, scale measure.Scale) bool {
	r := &shopReader{File: yamlfile.New(name, scale.Unit, scale)}
	root := r.Tree(data, "the shop file", beginShop)
	if r.Err() != nil {
		return false
	}
	n := bitNamed(root, bit)
	if n == nil {
		return false
	}
	read, ok := r.readBit(n)
	return ok && read.Measured == diameter
}
