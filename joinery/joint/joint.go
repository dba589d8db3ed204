package joint

import (
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// Kind is a kind of joint: what it is called, which words it takes, and how it
// comes down to cuts. A new kind is one file and one row of Kinds.
type Kind struct {
	Name    string
	Says    string   // what it is, for one who does not know the word
	Also    []string // other names for it
	Half    string   // the word that names the entering half: tenon, board, edges, lap
	Needs   []string // words it needs
	Takes   []string // words it may have, besides CommonWords
	Example string   // a joint as a maker would write it, without its name

	Shared bool // one groove may take several pieces, so that ends and places need not be as many
	Passes bool // what goes in may go on past it, so that one end may enter several pieces
	Framed bool // a board goes in all round: its tongues at the end of the grain are cut first, a bare length stops both ends of a groove
	Flat   bool // the pieces lie on one another, face to face; an end need not be named

	spans  func(Meeting) []joinery.Dimension                    // the directions that place speaks of
	make   func(*work)                                          // works out the halves
	enters func(w *work, opening measure.Length) measure.Length // how far one end goes in; nil: as the halves say
}

// CommonWords are the words that any joint may have.
var CommonWords = []string{"into", "place", "repeat", "fence", "bit", "start", "by", "ends", "after", "note"}

// Kinds lists the kinds of joint.
var Kinds = []*Kind{&MortiseAndTenon, &Housing, &Panel, &Halving, &Bridle}

// KindNamed returns the kind with that name or other name, or nil.
func KindNamed(name string) *Kind {
	for _, k := range Kinds {
		if k.Name == name || slices.Contains(k.Also, name) {
			return k
		}
	}
	return nil
}

// Keys lists every word the kind takes.
func (k *Kind) Keys() []string {
	return slices.Concat([]string{k.Half}, k.Needs, k.Takes, CommonWords)
}

// Faces reports whether an end of the entering piece can meet a side of the
// other. What is halved lies on that side, so its end points elsewhere.
func (k *Kind) Faces(end, side joinery.Side) bool {
	switch {
	case k.Flat && end == joinery.NoSide:
		return true
	case k.Flat:
		return end.Dimension() != side.Dimension()
	}
	return end == side.Opposite()
}

// String gives the kind's name.
func (k *Kind) String() string { return k.Name }

// Words are what a joint says besides its pieces and how they lie. A length of 0
// and a line without a side were not said.
type Words struct {
	Thickness measure.Length // of a tenon, and the width of its mortise
	Length    measure.Length // of a tenon
	Through   bool           // the tenon goes right through
	Deeper    measure.Length // the mortise, below the end of the tenon
	Depth     measure.Length // of a dado, groove or receiving lap
	Groove    measure.Length // its width, for a panel
	Play      measure.Length // at both cheeks together, off the tenon
	Shoulders []joinery.Cheek
	Haunch    Line // a stub of that length, at that edge of the tenon
	Room      measure.Length
	Seasons   bool           // the room is what the seasons need
	Glue      joinery.Side   // the edge that is glued, so that the room is at the other
	Tongue    Line           // how thick, and the side it is flush with
	Raised    Raised         // the edges of a raised panel, which are its tongues
	Stopped   []Line         // how far from which sides of the receiving piece
	Short     measure.Length // a panel's groove is stopped so far from both its ends
	Square    bool           // the ends of the receiving half are chiselled square
	Rounded   bool           // the edges of the tenon are rounded instead
}

// Raised is what a cut leaves of a raised panel's edges; the zero value is none.
type Raised struct {
	Leaves Line           // how thick, and the side they are flush with
	Flat   measure.Length // how far in from the edge they are no thicker; 0 where that is not known
}

// Line is a distance from a side.
type Line struct {
	Distance measure.Length
	From     joinery.Side // NoSide: not said
}

// Halves are the cuts of both pieces. The first of each half is the joint
// itself, and the others are what it brings along by hand. A Name is what such
// work is called behind the joint's own name, "" for the half itself.
type Halves struct {
	Part []joinery.Cut // of the entering piece; none where its whole end goes in
	Into []joinery.Cut // of the receiving piece
	// Mates tells that the halves are checked against each other as a joint.
	Mates bool
	// Enters is how far the entering piece reaches beyond the shoulder.
	Enters measure.Length
}

// Fault is what is wrong with a joint, at one of its words.
type Fault struct {
	Words   []string // the word at fault; the first that was written counts
	Problem string
	Remedy  string
}

// Make works out the cuts. The scale is for the lengths in messages and for
// what is rounded; the climate is that of the plan. Where there are faults,
// there are no halves.
func (k *Kind) Make(m Meeting, w Words, s measure.Scale, c timber.Climate) (Halves, []Fault) {
	if !k.Faces(m.End, m.Side) {
		return Halves{}, []Fault{m.apart(k)}
	}
	work := work{Meeting: m.settled(k), Words: w, kind: k, scale: s, climate: c}
	work.lie(k.spans(m))
	if len(work.faults) == 0 {
		k.make(&work)
	}
	if len(work.faults) > 0 {
		return Halves{}, work.faults
	}
	return work.halves, nil
}

// Enters is how far the entering piece of a meeting reaches beyond its shoulder,
// worked out without its length, which may be left to the joints: opening is what
// it measures between its shoulders.
func (k *Kind) Enters(m Meeting, w Words, opening measure.Length, s measure.Scale, c timber.Climate) (measure.Length, []Fault) {
	if k.enters == nil {
		d, part := m.Side.Dimension(), *m.Part
		if m.End != joinery.NoSide {
			d = m.End.Dimension()
		}
		part.Size[d] = opening + 2*m.Into.Size[d] + w.Length // about its true length
		m.Part = &part
		halves, faults := k.Make(m, w, s, c)
		return halves.Enters, faults
	}
	work := work{Meeting: m, Words: w, kind: k, scale: s, climate: c}
	return k.enters(&work, opening), work.faults
}
