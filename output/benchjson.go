package output

import (
	"io"

	"fencecard/joinery"
	"fencecard/output/deckfile"
	"fencecard/setup/proof"
)

type jsonFinding struct {
	What  string          `json:"what"`
	From  string          `json:"from"`
	Would deckfile.Length `json:"would"`
	Wants deckfile.Length `json:"wants"`
	Off   deckfile.Length `json:"off"`
	Move  string          `json:"move"`
}

type jsonCorrection struct {
	What     string          `json:"what"`
	Measured deckfile.Length `json:"measured"`
	Wants    deckfile.Length `json:"wants"`
	Off      deckfile.Length `json:"off"`
	Move     string          `json:"move"`
	Assumes  string          `json:"assumes,omitempty"`
}

// AsSetJSON writes what the table as it stands would cut.
func AsSetJSON(w io.Writer, scale joinery.Scale, card string, found []proof.Finding) error {
	s := deckfile.Scale(scale)
	out := struct {
		Card  string        `json:"card"`
		Right bool          `json:"right"`
		AsSet []jsonFinding `json:"as_set"`
	}{card, true, make([]jsonFinding, len(found))}
	for i, f := range found {
		out.Right = out.Right && f.Right()
		out.AsSet[i] = jsonFinding{f.What, f.From, s.Length(f.Would), s.Length(f.Wants), s.Length(f.Off()), f.Move}
	}
	return deckfile.Indented(w, out)
}

// CorrectionsJSON writes what a test cut teaches.
func CorrectionsJSON(w io.Writer, scale joinery.Scale, l *proof.Lesson) error {
	s := deckfile.Scale(scale)
	out := struct {
		Card        string           `json:"card"`
		Piece       string           `json:"piece"`
		Cut         string           `json:"cut"`
		Bit         string           `json:"bit"`
		Diameter    *deckfile.Length `json:"diameter"`
		Corrections []jsonCorrection `json:"corrections"`
	}{Card: l.Card.Number, Piece: l.Card.Piece, Cut: l.Card.Cut, Bit: l.Bit.Name, Corrections: make([]jsonCorrection, len(l.Corrections))}
	if l.Diameter > 0 {
		d := s.Length(l.Diameter)
		out.Diameter = &d
	}
	for i, c := range l.Corrections {
		out.Corrections[i] = jsonCorrection{c.What, s.Length(c.Measured), s.Length(c.Wants), s.Length(c.Measured - c.Wants), c.Move, c.Assumes}
	}
	return deckfile.Indented(w, out)
}
