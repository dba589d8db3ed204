package proof

import (
	"fencecard/joinery"
	"fencecard/setup"
)

// Claims is what a deck claims, and nothing of how it came about.
type Claims struct {
	Title, Unit string
	Setups      []Setup
	Changes     Changes
}

// Cards counts the cards of all setups.
func (c *Claims) Cards() int {
	n := 0
	for i := range c.Setups {
		n += len(c.Setups[i].Cards)
	}
	return n
}

// Setup is what a deck claims of one setup.
type Setup struct {
	Number  int
	Bit     Bit
	Fence   setup.Fence
	Heights []joinery.Length
	Cards   []Card
	Place   joinery.Place // in a deck that was read, else no place
}

// Bit is a bit as a setup names it.
type Bit struct {
	Name     string
	Kind     string
	Diameter joinery.Length
}

// Card is what one card claims.
type Card struct {
	Number              string
	Piece, Wood         string
	Count               int
	Cut, Kind, Part     string
	Position, Positions int
	Turned              bool
	Down, Fence, Leads  joinery.Side
	Length              joinery.Length // of the work along the feed
	Begin               setup.Begin
	End                 setup.End
	Start, Stop         *setup.Mark // nil where the card has none
	Climb               int         // from 1; cards of one climb go up together; 0 where the card does not say
	Heights             []joinery.Length
	Cap                 joinery.Length
	CapRule, Ends, Note string
	Silent              Silence       // what the card does not say
	Said                Said          // in a deck that was read
	Place               joinery.Place // in a deck that was read, else no place
}

// Said is what a card says besides its claims, which a proof passes on.
type Said struct {
	StartGuide, StopGuide string // what is brought to a mark: line, lead or tail; "" where the card does not say
	Cautions              []int  // by number; nil where the card does not say
}

// Silence is a set of things that a card in a file need not say.
type Silence uint16

// What a card may be silent about.
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

	allSilent = NoWood | NoPosition | NoPositions | NoLength | NoCap | NoCapRule | NoEnds | NoNote | NoClimb
)

// says reports whether the card says that.
func (c *Card) says(what Silence) bool { return c.Silent&what == 0 }

// Changes is what a deck claims to have to be set, and the time it takes.
type Changes struct {
	Bits, Fences, Heights, Stops int
	Time                         joinery.Time
}

// Of returns the claims of a deck, with none of what its plan knows.
func Of(d *setup.Deck) Claims {
	c := Claims{
		Title: d.Plan.Title, Unit: d.Plan.Unit.String(),
		Setups:  make([]Setup, len(d.Setups)),
		Changes: Changes{d.Changes.Bits, d.Changes.Fences, d.Changes.Heights, d.Changes.Stops, d.Changes.Time},
	}
	for i := range d.Setups {
		s := &d.Setups[i]
		c.Setups[i] = Setup{
			Number:  s.Number,
			Bit:     Bit{s.Bit.Name, s.Bit.Kind.String(), s.Bit.True()},
			Fence:   s.Fence,
			Heights: s.Heights,
			Cards:   make([]Card, len(s.Cards)),
		}
		for j := range s.Cards {
			c.Setups[i].Cards[j] = claim(&s.Cards[j])
		}
	}
	return c
}

func claim(c *setup.Card) Card {
	ends := "round"
	if c.Cut.Square {
		ends = "square"
	}
	return Card{
		Number: c.Number(),
		Piece:  c.Piece.Name, Wood: c.Piece.Wood.Name, Count: c.Piece.Count,
		Cut: c.Cut.Name, Kind: c.Cut.Kind.Name, Part: c.Channel.Part,
		Position: c.Run.Position, Positions: c.Run.Of, Turned: c.Run.Turned,
		Down: c.Run.Down, Fence: c.Run.Fence, Leads: c.Leads,
		Length: c.Length, Begin: c.Begin, End: c.End, Start: c.Start, Stop: c.Stop,
		Climb: c.Climb + 1, Heights: c.Heights, Cap: c.Cap.Depth, CapRule: c.Cap.Rule,
		Ends: ends, Note: c.Cut.Note,
	}
}
