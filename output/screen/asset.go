package screen

import (
	"fmt"
	"io"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/proof/attable"
)

// AsSetText writes what the table as it stands would cut.
func AsSetText(w io.Writer, scale measure.Scale, as *attable.Standing) error {
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

const underWhat = "           "

// found writes one setting: how it was measured, what to do, and what it would
// cut.
func (t *textWriter) found(f attable.Finding) {
	a := wording.FindingAnswer(t.scale, f)
	t.wrapped(fmt.Sprintf("%-10s ", a.What), a.Says)
	for _, line := range append(a.Do, a.Makes...) {
		t.wrapped(underWhat, line)
	}
}

// CorrectionsText writes what a test cut teaches.
func CorrectionsText(w io.Writer, scale measure.Scale, l *attable.Lesson) error {
	t := &textWriter{scale: scale}
	t.wrapped(fmt.Sprintf("%-6s", l.Claimed.Number), cutOf(l.Claimed))
	for _, c := range l.Corrections {
		a := wording.CorrectionAnswer(t.scale, c)
		if !a.Right() {
			a.Says += ": " + a.Do[0]
		}
		t.wrapped(fmt.Sprintf("%-10s ", a.What), a.Says)
		for _, line := range a.Do[min(1, len(a.Do)):] {
			t.wrapped(underWhat, line)
		}
	}
	_, err := io.WriteString(w, t.String())
	return err
}
