package planfile

import (
	"strconv"
	"strings"

	"fencecard/joinery"
)

// readRules reads what the shop keeps to besides its table and bits.
func (r *shopReader) readRules(f *fields, shop *joinery.Shop) {
	replace(f, "base", &shop.Base, r.likely)
	if f.written("speed") {
		shop.Speed = r.speed(f)
	}
	if f.has("clearances") && r.mapping(f.value("clearances"), "the clearances are at the cheeks and beyond the end of a tenon", "write "+example("clearances")) {
		g := r.fields(f.value("clearances"), "the list of clearances", clearanceKeys)
		replace(g, "cheek", &shop.Clearance.Cheek, r.likely)
		replace(g, "length", &shop.Clearance.Length, r.likely)
	}
	if f.has("rules") && r.mapping(f.value("rules"), "each rule has its own length", "write "+example("rules")) {
		g := r.fields(f.value("rules"), "the list of rules", ruleKeys)
		replace(g, "shortest-piece", &shop.Rules.ShortPiece, r.likely)
		replace(g, "hand-distance", &shop.Rules.HandDistance, r.likely)
		replace(g, "thinnest-floor", &shop.Rules.ThinFloor, r.likely)
	}
}

// replace reads the value of a key into its place, which stays as it is where
// the key was not written.
func replace[T any](f *fields, key string, into *T, read func(f *fields, key string) T) {
	if f.written(key) {
		*into = read(f, key)
	}
}

// No router turns slower or faster at its top speed, rpm (common practice, no
// source).
const (
	slowest = 1_000
	fastest = 60_000
)

// speed reads a highest speed in rpm; 0 where it was not written.
func (r *shopReader) speed(f *fields) int {
	text, n, ok := f.scalar("speed")
	if !ok {
		return 0
	}
	rpm, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(text, "rpm")))
	if err != nil || rpm < slowest || rpm > fastest {
		r.fault(n, "write the highest speed in rpm as a whole number, such as 22000", "%s is no speed of a router", quoted(text))
		return 0
	}
	return rpm
}
