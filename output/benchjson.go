package output

import (
	"io"

	"fencecard/joinery/measure"
	"fencecard/output/deckfile"
	"fencecard/setup/proof/attable"
)

type jsonFinding struct {
	What     string          `json:"what"`
	As       string          `json:"as"`
	Measured deckfile.Length `json:"measured"`
	Wants    deckfile.Length `json:"wants"`
	Off      deckfile.Length `json:"off"`
	Ask      string          `json:"ask,omitempty"`
	Move     string          `json:"move"`
	Makes    []jsonMade      `json:"makes"`
}

type jsonMade struct {
	What  string          `json:"what"`
	From  string          `json:"from"`
	Would deckfile.Length `json:"would"`
	Wants deckfile.Length `json:"wants"`
	Words string          `json:"words"`
}

type jsonCorrection struct {
	What     string          `json:"what"`
	Measured deckfile.Length `json:"measured"`
	Wants    deckfile.Length `json:"wants"`
	Off      deckfile.Length `json:"off"`
	Ask      string          `json:"ask,omitempty"`
	Move     string          `json:"move"`
	Assumes  string          `json:"assumes,omitempty"`
	// Where the fence, to the near edge, or the bit at full height stands after the move.
	Stands *deckfile.Length `json:"stands,omitempty"`
}

// AsSetJSON writes what the table as it stands would cut.
func AsSetJSON(w io.Writer, scale measure.Scale, as *attable.Standing) error {
	s := deckfile.Scale(scale)
	out := struct {
		Run   string        `json:"run"`
		Piece string        `json:"piece"`
		Cut   string        `json:"cut"`
		Marks *string       `json:"marks"`
		Right bool          `json:"right"`
		AsSet []jsonFinding `json:"as_set"`
	}{as.Run.Number, as.Run.Piece, as.Run.Cut, nil, as.Right(), make([]jsonFinding, len(as.Found))}
	if as.Pair != "" {
		out.Marks = &as.Pair
	}
	for i, f := range as.Found {
		out.AsSet[i] = jsonFinding{f.What, f.As, s.Length(f.Measured), s.Length(f.Wants), s.Length(f.Off()), f.Ask, f.Move, []jsonMade{}}
		for _, m := range f.Makes {
			out.AsSet[i].Makes = append(out.AsSet[i].Makes, jsonMade{m.What, m.From, s.Length(m.Would), s.Length(m.Wants), m.Words})
		}
	}
	return deckfile.Indented(w, out)
}

// CorrectionsJSON writes what a test cut teaches.
func CorrectionsJSON(w io.Writer, scale measure.Scale, l *attable.Lesson) error {
	s := deckfile.Scale(scale)
	out := struct {
		Run         string           `json:"run"`
		Piece       string           `json:"piece"`
		Cut         string           `json:"cut"`
		Bit         string           `json:"bit"`
		Diameter    *deckfile.Length `json:"diameter"`
		Corrections []jsonCorrection `json:"corrections"`
	}{Run: l.Claimed.Number, Piece: l.Claimed.Piece, Cut: l.Claimed.Cut, Bit: l.Bit.Name, Corrections: make([]jsonCorrection, len(l.Corrections))}
	if l.Diameter > 0 {
		d := s.Length(l.Diameter)
		out.Diameter = &d
	}
	for i, c := range l.Corrections {
		out.Corrections[i] = jsonCorrection{c.What, s.Length(c.Measured), s.Length(c.Wants), s.Length(c.Measured - c.Wants), c.Ask, c.Move, c.Assumes, nil}
		if c.Stands != nil {
			stands := s.Length(*c.Stands)
			out.Corrections[i].Stands = &stands
		}
	}
	return deckfile.Indented(w, out)
}
