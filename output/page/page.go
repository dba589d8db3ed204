package page

import (
	"bytes"
	"fmt"
	"html/template"
	"io"

	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// Write writes the page of a deck. The same deck gives the same bytes. Nothing is
// written when there is an error in making it.
func Write(w io.Writer, d *deck.Deck, about About) error {
	v, err := viewOf(d, about)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := layout().Execute(&b, v); err != nil {
		return fmt.Errorf("making the page: %w", err)
	}
	if _, err := w.Write(b.Bytes()); err != nil {
		return fmt.Errorf("writing the page: %w", err)
	}
	return nil
}

// view is all that the page says.
type view struct {
	About
	Title, Code, Unit, Sums, First string
	Rest                           template.HTML // of the run sheet, under its setups
	Setups                         []setupView
	Pieces                         []pieceView
	Script                         script
	Style                          template.CSS // in a file by itself
	Early                          template.JS
	Scripts                        []template.JS
}

func viewOf(d *deck.Deck, about About) (*view, error) {
	s := sheets.OnScreen(d, about.Pages)
	v := &view{About: about, Title: title(d), Code: d.Code, Unit: s.Unit(), Sums: s.Sums(), First: firstWords}
	var err error
	if v.Rest, err = drawn(s.RunSheet()); err != nil {
		return nil, err
	}
	v.Script = script{Code: d.Code, Plan: planKey(d), Served: about.Served, Title: v.Title}
	for i := range d.Setups {
		u, err := v.setup(s, d, i)
		if err != nil {
			return nil, err
		}
		v.Setups = append(v.Setups, u)
	}
	for i := range v.Setups[:max(0, len(v.Setups)-1)] {
		v.Setups[i].Next = v.Setups[i+1].Number
	}
	for _, c := range d.Cards() {
		p, err := pieceOf(s, &c)
		if err != nil {
			return nil, err
		}
		v.Pieces = append(v.Pieces, p)
	}
	if !about.Served {
		v.Style, v.Early, v.Scripts = inlined()
	}
	return v, nil
}

func title(d *deck.Deck) string {
	if d.Plan.Title != "" {
		return d.Plan.Title
	}
	return d.Plan.Name
}

// drawn takes a drawing into the page. It was made by the canvas, which escapes
// every word.
func drawn(svg sheets.Drawing, err error) (template.HTML, error) { return template.HTML(svg), err }
