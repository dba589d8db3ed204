package main

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"fencecard/cmd/internal/session"
	"fencecard/output"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// drawing returns the writer of one run, setup, piece or joint as a drawing.
func (o cardsOptions) drawing() (func(io.Writer, *deck.Deck) error, error) {
	if err := o.pages.Without("strips", "only", "joints"); err != nil {
		return nil, err
	}
	setups, pieces := o.only.Setups, o.only.Pieces
	switch {
	case o.joint != "" && (o.card != "" || len(setups)+len(pieces) > 0):
		return nil, session.Usage(errors.New("--format svg draws one thing: keep --joint, or what is beside it"))
	case o.joint != "":
		return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return output.JointSVG(w, d, o.joint, p) })
	case o.card != "":
		return o.oneRun(output.RunSVG)
	case len(setups) == 1 && len(pieces) == 0:
		return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return output.SetupSVG(w, d, setups[0], p) })
	case len(pieces) == 1 && len(setups) == 0:
		return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return output.PieceSVG(w, d, pieces[0], p) })
	}
	return nil, session.Usage(errors.New("--format svg draws one thing: add --only-run 1.1, --only-setup 1, --only-piece NAME or --joint NAME"))
}

// oneRun returns the writer of the run asked for.
func (o cardsOptions) oneRun(print func(io.Writer, *deck.Deck, string, sheets.Pages) error) (func(io.Writer, *deck.Deck) error, error) {
	if err := o.pages.Without("strips", "only", "joints"); err != nil {
		return nil, err
	}
	return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return print(w, d, o.card, p) })
}

// printer writes a deck, or the part of it that is named, to a target.
type printer struct {
	session.Target
	part  string // "run 3.6"; "" for all
	print func(io.Writer, *deck.Deck) error
}

// printers are the writers of all targets.
func (o cardsOptions) printers() ([]printer, error) {
	o.pages.Somewhere = o.writes("pdf") || o.writes("svg") || o.writes("html")
	var all []printer
	for _, t := range o.targets {
		o.format = t.Format
		print, err := o.printer()
		if err != nil {
			return nil, err
		}
		all = append(all, printer{t, o.part(), print})
	}
	return all, nil
}

func (o cardsOptions) writes(format string) bool {
	return slices.ContainsFunc(o.targets, func(t session.Target) bool { return t.Format == format })
}

// part says what of a deck the chosen format prints, "" for all.
func (o cardsOptions) part() string {
	switch {
	case o.card != "":
		return "run " + o.card
	case o.format == "pdf" && o.pages.Only != "":
		return "only the " + o.pages.Only
	}
	return ""
}

// printer returns the writer of the chosen format.
func (o cardsOptions) printer() (func(io.Writer, *deck.Deck) error, error) {
	if o.joint != "" && o.format != "svg" {
		return nil, session.Usage(errors.New("--joint is for a drawing: use --format svg; for pages of all joints use --joints"))
	}
	switch {
	case o.card == "" || o.format == "svg":
	case o.format == "pdf":
		return o.oneRun(output.RunPDF)
	default:
		return nil, session.Usage(errors.New("--only-run is for pages and drawings: leave it out, or use --format pdf or svg"))
	}
	switch o.format {
	case "pdf":
		return o.pages.Printer(output.PDF)
	case "svg":
		return o.drawing()
	case "text":
		return output.Text, o.pages.Unused()
	case "json":
		return output.JSON, o.pages.Unused()
	case "html":
		return o.page()
	}
	return nil, session.Usage(fmt.Errorf("--format is pdf, text, json, html or svg, not %q", o.format))
}

// page returns the writer of a page for a screen, which has no paper.
func (o cardsOptions) page() (func(io.Writer, *deck.Deck) error, error) {
	if !o.writes("pdf") && !o.writes("svg") {
		if err := o.pages.Without("paper", "strips", "only", "joints"); err != nil {
			return nil, err
		}
	}
	return o.pages.Printer(output.HTML)
}

// ending is what a file of pages is called after its plan.
func (o cardsOptions) ending() string {
	switch {
	case o.format == "html" && len(o.only.Setups)+len(o.only.Pieces) > 0:
		return "-part.html"
	case o.format == "html":
		return "-cards.html"
	case o.card != "":
		return "-run-" + o.card + ".pdf"
	case o.pages.Only != "":
		return "-" + o.pages.Only + ".pdf"
	case len(o.only.Setups)+len(o.only.Pieces) > 0:
		return "-part.pdf" // not over the whole deck
	}
	return "-cards.pdf"
}
