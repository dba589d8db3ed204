package proof

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// Claims is what a deck claims, and nothing of how it came about.
type Claims struct {
	// Part tells that the claims are some of those a plan wants: what they leave
	// is cut elsewhere.
	Part bool
	// FromBook tells that they are those of a setup book, whose shop is no longer known:
	// caps are those that the setup was kept with, and its screws stand where they stood.
	FromBook bool

	Title, Unit string
	Setups      []Setup
	Changes     Changes
	Said        Remarks // in a deck that was read
}

// Remarks is what a deck says besides its setups, which a proof passes on: the
// JSON of its lists, "" where it does not say.
type Remarks struct{ Code, Cards, Joints, Cautions, Warnings string }

// Runs counts the runs of all setups.
func (c *Claims) Runs() int {
	n := 0
	for i := range c.Setups {
		n += len(c.Setups[i].Runs)
	}
	return n
}

// Setup is what a deck claims of one setup.
type Setup struct {
	Number  int
	Bit     Bit
	Fence   deck.Fence
	Heights []measure.Length
	// Carriage is the thickness of the base under the work, 0 without a carriage;
	// BitHeights are above the table, none without one.
	Carriage   measure.Length
	BitHeights []measure.Length
	Runs       []Run
	Kept       *deck.Kept     // what the setup book said of it; nil where it is not kept
	Marks      string         // the JSON of its pairs, in a deck that was read; "" where it does not say
	Place      plantext.Place // in a deck that was read, else no place
}

// Bit is a bit as a setup names it.
type Bit struct {
	Name     string
	Kind     string
	Diameter measure.Length
}

// Run is what one run claims.
type Run struct {
	Number              string
	Piece, Wood         string
	Count               int
	Cut, Kind, Part     string
	Position, Positions int
	Turned              bool
	Down, Fence, Leads  joinery.Side
	Length              measure.Length // of the work along the feed
	Begin               deck.Begin
	End                 deck.End
	Start, Stop         *deck.Mark  // nil where the run has none
	Pivot               *deck.Pivot // nil where the work is not dropped
	Hole                *deck.Hole  // nil where no start hole is bored
	Screw               *deck.Screw // nil where it does not say where a screw goes
	Raised              bool        // the bit is raised into the clamped work
	Guided              bool
	Nibble              *deck.Nibble // nil where one pass does at every height
	Climb               int          // from 1; runs of one climb go up together; 0 where the run does not say
	Heights             []measure.Length
	Areas               []float64 // in mm2, what each pass of a shaped edge takes
	Cap                 measure.Length
	CapRule, Ends, Note string
	Silent              Silence        // what the run does not say
	Said                Said           // in a deck that was read
	Place               plantext.Place // in a deck that was read, else no place
}

// Said is what a run says besides its claims, which a proof passes on.
type Said struct {
	StartGuide, StopGuide string   // what is brought to a mark: line, lead or tail; "" where the run does not say
	Cautions              []int    // by number; nil where the run does not say
	Card                  int      // the number of its piece card; 0 where it does not say
	Pair                  *string  // the letter of its pair; nil for none, or where it does not say
	Up                    string   // the side that is up; "" where it does not say
	TowardYou             []string // the side that faces you, under each name that it has; none where it does not say
}

// Silence is a set of things that a run in a file need not say.
type Silence uint16

// What a run may be silent about.
const (
	NoWood Silence = 1 << iota
	NoPosition
	NoPositions
	NoLength
	NoCap
	NoCapRule
	NoEnds
	NoNote
	NoClimb
	NoPivot
	NoGuided

	AllSilent = NoWood | NoPosition | NoPositions | NoLength | NoCap | NoCapRule | NoEnds | NoNote | NoClimb | NoPivot | NoGuided
)

// says reports whether the run says that.
func (c *Run) says(what Silence) bool { return c.Silent&what == 0 }

// Changes is what a deck claims to have to be set and cut, the time it takes,
// and how sure it is that nothing takes less.
type Changes struct {
	Bits, Fences, Heights, Stops, Passes, Fits int
	Time                                       joinery.Time
	Proved                                     bool         // nothing takes less
	Bound                                      joinery.Time // no deck takes less; 0 where it does not know
}

// Of returns the claims of a deck, with none of what its plan knows.
func Of(d *deck.Deck) Claims {
	c := Claims{
		Part: d.Part, FromBook: d.FromBook, Title: d.Plan.Title, Unit: d.Plan.Unit.String(),
		Setups:  make([]Setup, len(d.Setups)),
		Changes: changesOf(d),
	}
	for i := range d.Setups {
		s := &d.Setups[i]
		c.Setups[i] = Setup{
			Number:  s.Number,
			Bit:     Bit{s.Bit.Name, s.Bit.Kind.String(), s.Bit.True()},
			Fence:   s.Fence,
			Heights: s.Heights, Carriage: s.Carriage, Kept: s.Kept,
			Runs: make([]Run, len(s.Runs)),
		}
		if s.Carriage > 0 {
			c.Setups[i].BitHeights = s.BitHeights()
		}
		for j := range s.Runs {
			c.Setups[i].Runs[j] = claim(&s.Runs[j])
		}
	}
	return c
}

func changesOf(d *deck.Deck) Changes {
	c := d.Changes
	return Changes{c.Bits, c.Fences, c.Heights, c.Stops, c.Passes, c.Fits, c.Time, c.Proved, c.Bound}
}

func claim(r *deck.Run) Run {
	ends := "round"
	if r.Cut.Square {
		ends = "square"
	}
	return Run{
		Number: r.Number(),
		Piece:  r.Piece.Name, Wood: r.Piece.Wood.Name, Count: r.Piece.Count,
		Cut: r.Cut.Name, Kind: r.Cut.Kind.Common(), Part: r.Channel.Part,
		Position: r.Step.Position, Positions: r.Step.Of, Turned: r.Step.Turned,
		Down: r.Step.Down, Fence: r.Step.Fence, Leads: r.Leads,
		Length: r.Length, Begin: r.Begin, End: r.End, Start: r.Start, Stop: r.Stop, Pivot: r.Pivot,
		Guided: r.Guided, Nibble: r.Nibble, Hole: r.Hole, Raised: r.Raised, Screw: r.Screw,
		Climb: r.Climb + 1, Heights: r.Heights, Areas: r.Areas(), Cap: r.Cap.Depth, CapRule: r.Cap.Rule,
		Ends: ends, Note: r.Cut.Note,
	}
}
