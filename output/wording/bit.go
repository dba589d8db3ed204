package wording

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// KindOf is what kind of bit it is, where its name does not tell: "up-cut" of one
// called "six". Else it is "", and of a bit whose outline is its maker's own.
func KindOf(b *joinery.Bit) string {
	plain := strings.NewReplacer("-", "", " ", "")
	kind := b.Kind.String()
	if b.Kind == joinery.OwnOutline || strings.Contains(plain.Replace(strings.ToLower(b.Name)), plain.Replace(kind)) {
		return ""
	}
	return kind
}

// WidthFrom says where a bit's width comes from: "measured", "as labelled" or, where it
// follows from its form, what is known of that: "wide: radius 1/4, pilot 1/2".
func WidthFrom(b *joinery.Bit, say func(measure.Length) string) string {
	switch o := b.Outline; {
	case o != nil && o.Radius > 0:
		return "wide: radius " + say(o.Radius) + ", pilot " + say(b.Pilot)
	case o != nil:
		return "wide: by its outline, pilot " + say(b.Pilot)
	case b.Measured > 0:
		return "measured"
	}
	return "as labelled"
}

// Collet says which collet a bit wants: "collet 8 mm"; "" where its
// shank is not known.
func Collet(b *joinery.Bit, scale measure.Scale) string {
	if b.Shank == 0 {
		return ""
	}
	return "collet " + ColletSize(b.Shank, scale)
}

// ColletSize names a shank as collets are sold, in whole millimetres or in fractions
// of an inch, whatever the deck is in.
func ColletSize(shank measure.Length, scale measure.Scale) string {
	for _, sold := range []measure.Scale{{Unit: measure.Millimetres, Division: measure.Millimetre}, {Unit: measure.Inches, Division: measure.Inch / 16}} {
		if sold.On(shank) {
			return sold.Say(shank)
		}
	}
	return scale.Say(shank)
}
