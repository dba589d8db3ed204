package output

import (
	"encoding/json"
	"io"
	"strconv"

	"fencecard/joinery/measure"
	"fencecard/output/deckfile"
	"fencecard/setup/proof"
)

type jsonProof struct {
	Proved   bool               `json:"proved"`
	Runs     int                `json:"runs"`
	Faults   []jsonDifference   `json:"faults"`
	Warnings []deckfile.Warning `json:"warnings"`
	Removed  []jsonRemoved      `json:"removed,omitempty"`
}

// jsonRemoved lets a model of the piece made elsewhere be compared.
type jsonRemoved struct {
	Piece string      `json:"piece"`
	CM3   json.Number `json:"cm3"`
}

type jsonDifference struct {
	Run   string           `json:"run,omitempty"`
	Piece string           `json:"piece,omitempty"`
	Cut   string           `json:"cut,omitempty"`
	Field string           `json:"field"`
	Off   *deckfile.Length `json:"off,omitempty"`
	Text  string           `json:"text"`
	Place string           `json:"place,omitempty"`
}

// ProofJSON writes a proof as one JSON document.
func ProofJSON(w io.Writer, scale measure.Scale, r *proof.Report) error {
	out := jsonProof{
		Proved: r.Proved(), Runs: len(r.Results),
		Faults:   make([]jsonDifference, len(r.Faults)),
		Warnings: make([]deckfile.Warning, len(r.Warnings)),
	}
	for i, f := range r.Faults {
		out.Faults[i] = jsonDifference{Run: f.Run, Piece: f.Piece, Cut: f.Cut, Field: f.Field, Text: f.Text}
		if f.Place.Known() {
			out.Faults[i].Place = f.Place.String()
		}
		if f.Off != 0 {
			off := deckfile.Scale(scale).Length(f.Off)
			out.Faults[i].Off = &off
		}
	}
	for i, warning := range r.Warnings {
		out.Warnings[i] = deckfile.Warning{Code: warning.Code, Piece: warning.Piece, Cut: warning.Cut, Text: warning.Text}
	}
	for _, v := range r.Removed {
		out.Removed = append(out.Removed, jsonRemoved{v.Piece, json.Number(strconv.FormatFloat(v.MM3/1000, 'f', 3, 64))})
	}
	return deckfile.Indented(w, out)
}
