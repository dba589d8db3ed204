package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
)

// BitKind is the kind of a router bit.
type BitKind uint8

// The kinds of bit a shop file may name.
const (
	Straight BitKind = iota
	UpCut
	DownCut
	RoundOver
	Cove
	Chamfer
	OwnOutline // as drawn by the maker
)

var bitKindNames = [...]string{"straight", "up-cut", "down-cut", "round-over", "cove", "chamfer", "outline"}

// BitKindNames lists the kinds by the names that a shop file uses.
func BitKindNames() []string { return bitKindNames[:] }

// Shape is the form of outline of such a bit; false for one that cuts straight
// walls.
func (k BitKind) Shape() (Shape, bool) {
	if k < RoundOver {
		return 0, false
	}
	return Shape(k - RoundOver), true
}

// ParseBitKind returns the kind with that name.
func ParseBitKind(name string) (BitKind, bool) {
	for i, n := range bitKindNames {
		if n == name {
			return BitKind(i), true
		}
	}
	return 0, false
}

// String gives the name a shop file uses, such as "up-cut".
func (k BitKind) String() string { return bitKindNames[k] }

// Answer is yes, no, or not said.
type Answer uint8

// The three answers.
const (
	NotSaid Answer = iota
	Yes
	No
)

// Bit is a router bit of the shop. A length of 0 means the shop does not say.
type Bit struct {
	Name     string
	Kind     BitKind
	Diameter measure.Length // as labelled
	Measured measure.Length // as measured from a trial groove; it counts, the label does not
	Cutting  measure.Length // length of the cutting edge
	Shank    measure.Length // diameter of the shank
	Plunges  Answer         // whether work may be dropped onto it
	Cap      measure.Length // the shop's own greatest depth of one pass
	Speed    int            // the highest speed its maker allows, rpm; 0 when not said
	Outline  *Outline       // of a bit that shapes edges; nil for one that cuts straight walls
	Pilot    measure.Length // diameter of the pilot over the outline
	Place    plantext.Place
}

// Bit returns the shop's bit of that name, or nil.
func (s *Shop) Bit(name string) *Bit {
	for i := range s.Bits {
		if s.Bits[i].Name == name {
			return &s.Bits[i]
		}
	}
	return nil
}

// True returns the diameter that counts: the measured one where it is known.
func (b Bit) True() measure.Length {
	if b.Measured > 0 {
		return b.Measured
	}
	return b.Diameter
}

// CutsLike reports whether two bits cut alike: of one kind and one true
// diameter, with one outline below one pilot, whatever they are called.
func (b *Bit) CutsLike(other *Bit) bool {
	return b.Kind == other.Kind && b.True() == other.True() && b.Pilot == other.Pilot && b.Outline.Same(other.Outline)
}
