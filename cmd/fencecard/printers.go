package main

import (
	"errors"
	"io"
	"slices"

	"fencecard/cmd/internal/session"
	"fencecard/output"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// cardFormats are the forms of a deck, each with what writes it as the flags ask.
var cardFormats = session.Formats[func(cardsOptions) (deckWriter, error)]{
	{Format: session.PDF, Write: cardsOptions.paper},
	{Format: session.Text, Write: func(o cardsOptions) (deckWriter, error) { return output.Text, o.pages.Unused() }},
	{Format: session.JSON, Write: func(o cardsOptions) (deckWriter, error) { return output.JSON, o.pages.Unused() }},
	{Format: session.HTML, For: "a page to tick", Write: cardsOptions.page},
	{Format: session.SVG, For: "one run, setup, piece or joint", Write: cardsOptions.drawing},
}

type deckWriter = func(io.Writer, *deck.Deck) error

// paper returns the writer of pages to print.
func (o cardsOptions) paper() (deckWriter, error) {
	if o.run != "" {
		return o.oneRun(output.RunPDF)
	}
	return o.pages.Printer(output.PDF)
}

// page returns the writer of a page for a screen, which has no paper.
func (o cardsOptions) page() (deckWriter, error) {
	if !o.writes(session.PDF) && !o.writes(session.SVG) {
		if err := o.pages.Without("paper", "strips", "only", "joints"); err != nil {
			return nil, err
		}
	}
	return o.pages.Printer(output.HTML)
}

// drawing returns the writer of one run, setup, piece or joint as a drawing.
func (o cardsOptions) drawing() (deckWriter, error) {
	if err := o.pages.Without("strips", "only", "joints"); err != nil {
		return nil, err
	}
	setups, pieces := o.only.Setups, o.only.Pieces
	switch {
	case o.joint != "" && (o.run != "" || len(setups)+len(pieces) > 0):
		return nil, session.Usage(errors.New("--format svg draws one thing: keep --joint, or what is beside it"))
	case o.joint != "":
		return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return output.JointSVG(w, d, o.joint, p) })
	case o.run != "":
		return o.oneRun(output.RunSVG)
	case len(setups) == 1 && len(pieces) == 0:
		return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return output.SetupSVG(w, d, setups[0], p) })
	case len(pieces) == 1 && len(setups) == 0:
		return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return output.PieceSVG(w, d, pieces[0], p) })
	}
	return nil, session.Usage(errors.New("--format svg draws one thing: add --only-run 1.1, --only-setup 1, --only-piece NAME or --joint NAME"))
}

// oneRun returns the writer of the run asked for.
func (o cardsOptions) oneRun(print func(io.Writer, *deck.Deck, string, sheets.Pages) error) (deckWriter, error) {
	if err := o.pages.Without("strips", "only", "joints"); err != nil {
		return nil, err
	}
	return o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error { return print(w, d, o.run, p) })
}

// printer writes a deck, or the part of it that is named, to a target.
type printer struct {
	session.Target
	part  string // "run 3.6"; "" for all
	print deckWriter
}

// printers are the writers of all targets.
func (o cardsOptions) printers() ([]printer, error) {
	o.pages.Somewhere = slices.ContainsFunc(o.targets, func(t session.Target) bool { return t.Drawn })
	var all []printer
	for _, t := range o.targets {
		if err := o.fits(t.Format); err != nil {
			return nil, err
		}
		print, err := cardFormats.Of(t.Format).Write(o)
		if err != nil {
			return nil, err
		}
		all = append(all, printer{t, o.part(t.Format), print})
	}
	return all, nil
}

func (o cardsOptions) writes(format *session.Format) bool {
	return slices.ContainsFunc(o.targets, func(t session.Target) bool { return t.Format == format })
}

// fits refuses what a format has no use for.
func (o cardsOptions) fits(format *session.Format) error {
	switch {
	case format == session.SVG:
		return nil
	case o.joint != "":
		return session.Usage(errors.New("--joint is for a drawing: use --format svg; for pages of all joints use --joints"))
	case o.run != "" && format != session.PDF:
		return session.Usage(errors.New("--only-run is for pages and drawings: leave it out, or use --format pdf or svg"))
	}
	return nil
}

// part says what of a deck a format prints, "" for all.
func (o cardsOptions) part(format *session.Format) string {
	switch {
	case o.run != "":
		return "run " + o.run
	case format == session.PDF && o.pages.Only != "":
		return "only the " + o.pages.Only
	}
	return ""
}

// ending is what a file of a format is called after its plan.
func (o cardsOptions) ending(format *session.Format) string {
	name := "-cards"
	switch {
	case format == session.PDF && o.run != "":
		name = "-run-" + o.run
	case format == session.PDF && o.pages.Only != "":
		name = "-" + o.pages.Only
	case len(o.only.Setups)+len(o.only.Pieces) > 0:
		name = "-part" // not over the whole deck
	}
	return name + format.Endings[0]
}
