package screen

import (
	"fmt"
	"io"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/proof"
)

// ProofText writes a proof to be read on a screen of 80 columns: for each run
// its layout lines, marks and travel, and whether it proves.
func ProofText(w io.Writer, title string, scale measure.Scale, r *proof.Report) error {
	t := &textWriter{scale: scale}
	t.line(0, "%s", strings.ToUpper(title))
	for i := range r.Results {
		t.proved(&r.Results[i])
	}
	t.line(0, "")
	t.line(0, "%s", ProofLine(r))
	for _, f := range r.Faults {
		if f.Run == "" {
			t.wrapped("  - ", f.String())
		}
	}
	if len(r.Warnings) > 0 {
		t.line(0, "")
		t.line(0, "WARNINGS")
	}
	for _, warning := range r.Warnings {
		t.wrapped("  - ", warning.Text+" ["+warning.Code+"]")
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// ProofLine says in one line how the proof went.
func ProofLine(r *proof.Report) string {
	wrong := 0
	for i := range r.Results {
		if !r.Results[i].Proved() {
			wrong++
		}
	}
	all := wording.Plural(len(r.Results), "run")
	switch {
	case r.Proved():
		return all + " proved."
	case wrong == 0:
		return fmt.Sprintf("%s proved, but the deck as a whole does not.", all)
	}
	return fmt.Sprintf("%d of %s would not cut what the plan asks for.", wrong, all)
}

// cutOf names a run's piece and cut.
func cutOf(c *proof.Run) string {
	part := ""
	if c.Part != "" {
		part = ", " + wording.Quoted(c.Part)
	}
	return fmt.Sprintf("%s: %s %q%s", wording.Quoted(c.Piece), wording.Quoted(c.Kind), wording.Quoted(c.Cut), part)
}

func (t *textWriter) proved(r *proof.Result) {
	c := r.Claimed
	t.line(0, "")
	t.wrapped(fmt.Sprintf("%-6s", wording.Quoted(c.Number)), cutOf(c))
	if c.Start != nil {
		t.wrapped("      start     ", fmt.Sprintf("line %s, %s end %s the trailing edge",
			t.exactly(c.Start.Line), c.Leads, t.where(c.Start.LeadPastEdge, "past", "before")))
	}
	if c.Stop != nil {
		t.wrapped("      stop      ", fmt.Sprintf("line %s, %s end %s the leading edge",
			t.exactly(c.Stop.Line), c.Leads, t.where(c.Stop.LeadPastEdge, "past", "before")))
	}
	switch {
	case c.Start != nil && c.Stop != nil:
		t.line(6, "travel    %s", t.exactly(r.Travel))
	case c.Start == nil && c.Stop == nil:
		t.line(6, "from end to end")
	}
	if r.Proved() {
		t.line(6, "proved")
	}
	for _, f := range r.Faults {
		t.wrapped("      WRONG     ", f.Text)
	}
}
