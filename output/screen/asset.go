package screen

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/proof"
)

// AsSetText writes what the table as it stands would cut.
func AsSetText(w io.Writer, scale joinery.Scale, as *proof.Standing) error {
	t := &textWriter{scale: scale}
	title := cutOf(as.Run)
	if as.Pair != "" {
		setup, _, _ := strings.Cut(as.Run.Number, ".")
		title += ", marks " + setup + as.Pair
	}
	t.wrapped(fmt.Sprintf("%-6s", as.Run.Number), title)
	for _, f := range as.Found {
		t.found(f)
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// found writes one setting: how it was measured, what to do, and what it would
// cut.
func (t *textWriter) found(f proof.Finding) {
	const under = "           "
	says := fmt.Sprintf("%s %s", t.bare(f.Measured), f.As)
	if f.Measured != f.Wants {
		says += ", where the sheet says " + t.bare(f.Wants)
	}
	if f.Right() && allCorrect(f.Makes) {
		t.wrapped(fmt.Sprintf("%-10s ", f.What), says+": correct")
		return
	}
	t.wrapped(fmt.Sprintf("%-10s ", f.What), says)
	switch {
	case f.Ask != "":
		t.wrapped(under, f.Ask+" If not, "+f.Move)
	case f.Move != "":
		t.wrapped(under, f.Move)
	}
	for _, m := range f.Makes {
		t.wrapped(under, fmt.Sprintf("%s %s from %s: %s", m.What, t.bare(m.Would), m.From, m.Words))
	}
}

func allCorrect(made []proof.Made) bool {
	return !slices.ContainsFunc(made, func(m proof.Made) bool { return m.Words != "correct" })
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
		switch {
		case move == "":
			move = "correct"
		case c.Ask != "":
			move = c.Ask + " If not, " + move
		}
		t.wrapped(fmt.Sprintf("%-10s ", c.What), fmt.Sprintf("measured %s, should be %s: %s", t.bare(c.Measured), t.bare(c.Wants), move))
		if c.Assumes != "" {
			t.wrapped("           ", c.Assumes)
		}
	}
	_, err := io.WriteString(w, t.String())
	return err
}
