package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// pageFlags are the flags that say how a deck is put on paper.
type pageFlags struct {
	cmd     *cobra.Command
	paper   string
	perPage int
	units   string
	scale   string
	strips  bool
	only    string

	somewhere bool // of several formats one has pages
}

// pageFlagNames are the flags that need pages.
var pageFlagNames = []string{"paper", "per-page", "units", "scale", "strips", "only"}

func (p *pageFlags) add(cmd *cobra.Command) {
	p.cmd = cmd
	f := cmd.Flags()
	f.StringVar(&p.paper, "paper", "letter", "letter, a4, legal, a5, or index for cards of 4 x 6 in")
	f.IntVar(&p.perPage, "per-page", 1, "cards on a page: 1, 2 or 4")
	f.StringVar(&p.units, "units", "", "print lengths in in, mm or both; left out: as the shop's scale")
	f.StringVar(&p.scale, "scale", "", "print lengths to the nearest `DIVISION`, such as 1/32 or 0.5 mm; left out: the shop's")
	f.BoolVar(&p.strips, "strips", false, "add full-size strips to stick along the fence")
	f.StringVar(&p.only, "only", "", "leave out everything but this: strips")
	choices(cmd, "paper", "letter", "a4", "legal", "a5", "index")
	choices(cmd, "per-page", "1", "2", "4")
	choices(cmd, "units", "in", "mm", "both")
	choices(cmd, "only", "strips")
}

// printer returns what prints a deck on the paper asked for, by a function of
// the package output.
func (p *pageFlags) printer(print func(io.Writer, *deck.Deck, sheets.Pages) error) (func(io.Writer, *deck.Deck) error, error) {
	o, err := p.options()
	if err != nil {
		return nil, usageError{err}
	}
	return func(w io.Writer, d *deck.Deck) error {
		o := o
		if p.scale != "" {
			var err error
			// A bare number is in the unit of the shop's own scale.
			if o.Scale, err = joinery.ParseScale(p.scale, d.Plan.Shop.Scale.Unit); err != nil {
				return fmt.Errorf("--scale: %w", err)
			}
		}
		return print(w, d, o)
	}, nil
}

func (p *pageFlags) options() (o sheets.Pages, err error) {
	var ok bool
	if o.Paper, ok = sheets.ParsePaper(strings.ToLower(p.paper)); !ok {
		return o, fmt.Errorf("--paper is letter, a4, legal, a5 or index, not %q", p.paper)
	}
	switch p.perPage {
	case 1, 2, 4:
		o.PerPage = p.perPage
	default:
		return o, fmt.Errorf("--per-page is 1, 2 or 4, not %d", p.perPage)
	}
	if p.units != "" {
		if o.Units, ok = sheets.ParseUnits(p.units); !ok {
			return o, fmt.Errorf("--units is in, mm or both, not %q", p.units)
		}
	}
	if p.only != "" {
		if o.Only, ok = sheets.ParseOnly(p.only); !ok {
			return o, fmt.Errorf("--only is strips, not %q", p.only)
		}
	}
	o.Strips = p.strips
	return o, o.Check()
}

// unused is the error of page flags given for a format without pages.
func (p *pageFlags) unused() error {
	if p.somewhere {
		return nil
	}
	return p.without(pageFlagNames...)
}

// without is the error of flags given that a format has no use for.
func (p *pageFlags) without(names ...string) error {
	var given []string
	for _, name := range names {
		if p.cmd.Flags().Changed(name) {
			given = append(given, "--"+name)
		}
	}
	if len(given) == 0 {
		return nil
	}
	return usageError{fmt.Errorf("%s: only pages have that; leave it out, or use --format pdf", strings.Join(given, ", "))}
}

// ending is what a file of pages is called after its plan.
func (p *pageFlags) ending() string {
	if p.only == "strips" {
		return "-strips.pdf"
	}
	return "-cards.pdf"
}

// tellReplaced says once which letters the pages print otherwise.
func (a *app) tellReplaced(d *deck.Deck) {
	if words := sheets.Replaced(d); words != "" {
		fmt.Fprintln(a.err, words)
	}
}
