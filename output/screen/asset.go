package screen

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
