package output

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/proof"
)

// ProofText writes a proof to be read on a screen of 80 columns: for each card
// its layout lines, marks and travel, and whether it proves.
func ProofText(w io.Writer, title string, scale joinery.Scale, r *proof.Report) error {
	t := &textWriter{scale: scale}
	t.line(0, "%s", strings.ToUpper(title))
	for i := range r.Results {
		t.proved(&r.Results[i])
	}
	t.line(0, "")
	t.line(0, "%s", ProofLine(r))
	for _, f := range r.Faults {
		if f.Card == "" {
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
	all := plural(len(r.Results), "card")
	switch {
	case r.Proved():
		return all + " proved."
	case wrong == 0:
		return fmt.Sprintf("%s proved, but the deck as a whole does not.", all)
	}
	return fmt.Sprintf("%d of %s would not cut what the plan asks for.", wrong, all)
}

// mostQuoted is how much of what somebody else wrote is repeated, in characters.
const mostQuoted = 200

func quoted(text string) string { return joinery.Brief(text, mostQuoted) }

// cutOf names a card's piece and cut.
func cutOf(c *proof.Card) string {
	part := ""
	if c.Part != "" {
		part = ", " + quoted(c.Part)
	}
	return fmt.Sprintf("%s: %s %q%s", quoted(c.Piece), quoted(c.Kind), quoted(c.Cut), part)
}

func (t *textWriter) proved(r *proof.Result) {
	c := r.Card
	t.line(0, "")
	t.wrapped(fmt.Sprintf("%-6s", quoted(c.Number)), cutOf(c))
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

type jsonProof struct {
	Proved   bool             `json:"proved"`
	Cards    int              `json:"cards"`
	Faults   []jsonDifference `json:"faults"`
	Warnings []jsonWarning    `json:"warnings"`
	Removed  []jsonRemoved    `json:"removed,omitempty"`
}

// jsonRemoved lets a model of the piece made elsewhere be compared.
type jsonRemoved struct {
	Piece string      `json:"piece"`
	CM3   json.Number `json:"cm3"`
}

type jsonDifference struct {
	Card  string      `json:"card,omitempty"`
	Piece string      `json:"piece,omitempty"`
	Cut   string      `json:"cut,omitempty"`
	Field string      `json:"field"`
	Off   *jsonLength `json:"off,omitempty"`
	Text  string      `json:"text"`
	Place string      `json:"place,omitempty"`
}

// ProofJSON writes a proof as one JSON document.
func ProofJSON(w io.Writer, scale joinery.Scale, r *proof.Report) error {
	out := jsonProof{
		Proved: r.Proved(), Cards: len(r.Results),
		Faults:   make([]jsonDifference, len(r.Faults)),
		Warnings: make([]jsonWarning, len(r.Warnings)),
	}
	for i, f := range r.Faults {
		out.Faults[i] = jsonDifference{Card: f.Card, Piece: f.Piece, Cut: f.Cut, Field: f.Field, Text: f.Text}
		if f.Place.Known() {
			out.Faults[i].Place = f.Place.String()
		}
		if f.Off != 0 {
			off := jsonScale(scale).length(f.Off)
			out.Faults[i].Off = &off
		}
	}
	for i, warning := range r.Warnings {
		out.Warnings[i] = jsonWarning{warning.Code, warning.Piece, warning.Cut, warning.Text}
	}
	for _, v := range r.Removed {
		out.Removed = append(out.Removed, jsonRemoved{v.Piece, json.Number(strconv.FormatFloat(v.MM3/1000, 'f', 3, 64))})
	}
	return indented(w, out)
}
