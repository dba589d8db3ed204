package output

import (
	"fmt"
	"io"

	"fencecard/joinery"
	"fencecard/setup/proof"
)

// AsSetText writes what the table as it stands would cut.
func AsSetText(w io.Writer, scale joinery.Scale, found []proof.Finding) error {
	t := &textWriter{scale: scale}
	last := ""
	for _, f := range found {
		t.wrapped(fmt.Sprintf("%-10s ", f.What), fmt.Sprintf("%s from %s, this card wants %s: %s",
			t.bare(f.Would), f.From, t.bare(f.Wants), f.Words))
		if f.Move != "" && f.Move != last { // both walls follow the fence
			t.wrapped("           ", f.Move)
		}
		last = f.Move
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// bare is a length on a card, or finer where the rule would round it.
func (t *textWriter) bare(l joinery.Length) string {
	if t.scale.On(l) {
		return t.scale.Format(l)
	}
	return t.scale.Fine(l) + " " + t.scale.Unit.String()
}

// CorrectionsText writes what a test cut teaches.
func CorrectionsText(w io.Writer, scale joinery.Scale, l *proof.Lesson) error {
	t := &textWriter{scale: scale}
	t.wrapped(fmt.Sprintf("%-6s", l.Card.Number), cutOf(l.Card))
	for _, c := range l.Corrections {
		move := c.Move
		if move == "" {
			move = "correct"
		}
		t.wrapped(fmt.Sprintf("%-10s ", c.What), fmt.Sprintf("measured %s, should be %s: %s", t.bare(c.Measured), t.bare(c.Wants), move))
		if c.Assumes != "" {
			t.wrapped("           ", c.Assumes)
		}
	}
	_, err := io.WriteString(w, t.String())
	return err
}

type jsonFinding struct {
	What  string     `json:"what"`
	From  string     `json:"from"`
	Would jsonLength `json:"would"`
	Wants jsonLength `json:"wants"`
	Off   jsonLength `json:"off"`
	Move  string     `json:"move"`
}

type jsonCorrection struct {
	What     string     `json:"what"`
	Measured jsonLength `json:"measured"`
	Wants    jsonLength `json:"wants"`
	Off      jsonLength `json:"off"`
	Move     string     `json:"move"`
	Assumes  string     `json:"assumes,omitempty"`
}

// AsSetJSON writes what the table as it stands would cut.
func AsSetJSON(w io.Writer, scale joinery.Scale, card string, found []proof.Finding) error {
	s := jsonScale(scale)
	out := struct {
		Card  string        `json:"card"`
		Right bool          `json:"right"`
		AsSet []jsonFinding `json:"as_set"`
	}{card, true, make([]jsonFinding, len(found))}
	for i, f := range found {
		out.Right = out.Right && f.Right()
		out.AsSet[i] = jsonFinding{f.What, f.From, s.length(f.Would), s.length(f.Wants), s.length(f.Off()), f.Move}
	}
	return indented(w, out)
}

// CorrectionsJSON writes what a test cut teaches.
func CorrectionsJSON(w io.Writer, scale joinery.Scale, l *proof.Lesson) error {
	s := jsonScale(scale)
	out := struct {
		Card        string           `json:"card"`
		Piece       string           `json:"piece"`
		Cut         string           `json:"cut"`
		Bit         string           `json:"bit"`
		Diameter    *jsonLength      `json:"diameter"`
		Corrections []jsonCorrection `json:"corrections"`
	}{Card: l.Card.Number, Piece: l.Card.Piece, Cut: l.Card.Cut, Bit: l.Bit.Name, Corrections: make([]jsonCorrection, len(l.Corrections))}
	if l.Diameter > 0 {
		d := s.length(l.Diameter)
		out.Diameter = &d
	}
	for i, c := range l.Corrections {
		out.Corrections[i] = jsonCorrection{c.What, s.length(c.Measured), s.length(c.Wants), s.length(c.Measured - c.Wants), c.Move, c.Assumes}
	}
	return indented(w, out)
}
