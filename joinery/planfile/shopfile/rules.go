package shopfile

import (
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
)

// readRules reads what the shop keeps to besides its table and bits.
func (r *shopReader) readRules(f *yamlfile.Fields, shop *joinery.Shop) {
	replace(f, "base", &shop.Base, r.likely)
	if f.Written("speed") {
		shop.Speed = r.speed(f)
	}
	if f.Has("clearances") && r.Mapping(f.Value("clearances"), "the clearances are at the cheeks and beyond the end of a tenon", "write "+keys.Example("clearances")) {
		g := r.Fields(f.Value("clearances"), "the list of clearances", keys.Clearances)
		replace(g, "cheek", &shop.Clearance.Cheek, r.likely)
		replace(g, "length", &shop.Clearance.Length, r.likely)
	}
	if f.Has("rules") && r.Mapping(f.Value("rules"), "each rule has its own length", "write "+keys.Example("rules")) {
		g := r.Fields(f.Value("rules"), "the list of rules", keys.Rules)
		replace(g, "shortest-piece", &shop.Rules.ShortPiece, r.likely)
		replace(g, "hand-distance", &shop.Rules.HandDistance, r.likely)
		replace(g, "thinnest-floor", &shop.Rules.ThinFloor, r.likely)
	}
}

// replace reads the value of a key into its place, which stays as it is where
// the key was not written.
func replace[T any](f *yamlfile.Fields, key string, into *T, read func(f *yamlfile.Fields, key string) T) {
	if f.Written(key) {
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
func (r *shopReader) speed(f *yamlfile.Fields) int {
	text, n, ok := f.Scalar("speed")
	if !ok {
		return 0
	}
	rpm, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(text, "rpm")))
	if err != nil || rpm < slowest || rpm > fastest {
		r.Fault(n, "write the highest speed in rpm as a whole number, such as 22000", "%s is no speed of a router", yamlfile.Quoted(text))
		return 0
	}
	return rpm
}
