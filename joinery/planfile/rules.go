package planfile

import (
	"errors"
	"strconv"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

var (
	clearanceKeys = []string{"cheek", "length"}
	ruleKeys      = []string{"shortest-piece", "hand-distance", "thinnest-floor"}
)

// readRules reads what the shop keeps to besides its table and bits.
func (r *reader) readRules(f *fields, shop *joinery.Shop) {
	replace(f, "base", &shop.Base, f.likely)
	if f.written("speed") {
		shop.Speed = f.speed()
	}
	if f.has("clearances") && r.mapping(f.value("clearances"), "the clearances are at the cheeks and beyond the end of a tenon", "write "+example("clearances")) {
		g := r.fields(f.value("clearances"), "the list of clearances", clearanceKeys)
		replace(g, "cheek", &shop.Clearance.Cheek, g.likely)
		replace(g, "length", &shop.Clearance.Length, g.likely)
	}
	if f.has("rules") && r.mapping(f.value("rules"), "each rule has its own length", "write "+example("rules")) {
		g := r.fields(f.value("rules"), "the list of rules", ruleKeys)
		replace(g, "shortest-piece", &shop.Rules.ShortPiece, g.likely)
		replace(g, "hand-distance", &shop.Rules.HandDistance, g.likely)
		replace(g, "thinnest-floor", &shop.Rules.ThinFloor, g.likely)
	}
}

// replace reads the value of a key into its place, which stays as it is where
// the key was not written.
func replace[T any](f *fields, key string, into *T, read func(key string) T) {
	if f.written(key) {
		*into = read(key)
	}
}

// No router turns slower or faster at its top speed, rpm (common practice, no
// source).
const (
	slowest = 1_000
	fastest = 60_000
)

// speed reads a highest speed in rpm; 0 where it was not written.
func (f *fields) speed() int {
	text, n, ok := f.scalar("speed")
	if !ok {
		return 0
	}
	rpm, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(text, "rpm")))
	if err != nil || rpm < slowest || rpm > fastest {
		f.r.fault(n, "write the highest speed in rpm as a whole number, such as 22000", "%s is no speed of a router", quoted(text))
		return 0
	}
	return rpm
}

// because adds what another package found wrong, at a node.
func (r *reader) because(n *yaml.Node, err error) {
	var f joinery.Fault
	if !errors.As(err, &f) {
		f.Problem = err.Error()
	}
	f.Place = r.place(n)
	r.add(f)
}
