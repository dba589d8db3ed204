package session

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery/measure"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// PageFlags are the flags that say how a deck is put on paper.
type PageFlags struct {
	Cmd    *cobra.Command
	paper  string
	units  string
	scale  string
	Strips bool
	Only   string
	joints bool

	Somewhere bool // of several formats one has pages
}

// pageFlagNames are the flags that need pages.
var pageFlagNames = []string{"paper", "units", "scale", "strips", "only", "joints"}

// Add adds them to a command.
func (p *PageFlags) Add(cmd *cobra.Command) {
	p.Cmd = cmd
	f := cmd.Flags()
	f.StringVar(&p.paper, "paper", "letter", "the size of `PAPER`: letter, a4, legal, a5, or index for cards of 4 x 6 in")
	f.StringVar(&p.units, "units", "", "print lengths in these `UNITS`, in, mm or both; left out: as the shop's scale")
	f.StringVar(&p.scale, "scale", "", "print lengths to the nearest `DIVISION`, such as 1/32 or 0.5 mm; left out: the shop's")
	f.BoolVar(&p.Strips, "strips", false, "add full-size strips to stick along the fence")
	f.BoolVar(&p.joints, "joints", false, "add a drawing of every joint, its halves apart and together")
	f.StringVar(&p.Only, "only", "", "leave out everything but this `PART`: sheets, cards or strips")
	Choices(cmd, "paper", "letter", "a4", "legal", "a5", "index")
	Choices(cmd, "units", "in", "mm", "both")
	Choices(cmd, "only", "sheets", "cards", "strips")
}

// Printer returns what prints a deck on the paper asked for, by a function of
// the package output.
func (p *PageFlags) Printer(print func(io.Writer, *deck.Deck, sheets.Pages) error) (func(io.Writer, *deck.Deck) error, error) {
	o, err := p.options()
	if err != nil {
		return nil, Usage(err)
	}
	return func(w io.Writer, d *deck.Deck) error {
		o := o
		if p.scale != "" {
			var err error
			// A bare number is in the unit of the shop's own scale.
			if o.Scale, err = measure.ParseScale(p.scale, d.Plan.Shop.Scale.Unit); err != nil {
				return fmt.Errorf("--scale: %w", err)
			}
		}
		return print(w, d, o)
	}, nil
}

func (p *PageFlags) options() (o sheets.Pages, err error) {
	var ok bool
	if o.Paper, ok = sheets.ParsePaper(strings.ToLower(p.paper)); !ok {
		return o, fmt.Errorf("--paper is letter, a4, legal, a5 or index, not %q", p.paper)
	}
	if p.units != "" {
		if o.Units, ok = sheets.ParseUnits(p.units); !ok {
			return o, fmt.Errorf("--units is in, mm or both, not %q", p.units)
		}
	}
	if p.Only != "" {
		if o.Only, ok = sheets.ParseOnly(p.Only); !ok {
			return o, fmt.Errorf("--only is sheets, cards or strips, not %q", p.Only)
		}
	}
	o.Strips, o.Joints = p.Strips, p.joints
	return o, nil
}

// Unused is the error of page flags given for a format without pages.
func (p *PageFlags) Unused() error {
	if p.Somewhere {
		return nil
	}
	return p.Without(pageFlagNames...)
}

// Without is the error of flags given that a format has no use for.
func (p *PageFlags) Without(names ...string) error {
	var given []string
	for _, name := range names {
		if p.Cmd.Flags().Changed(name) {
			given = append(given, "--"+name)
		}
	}
	if len(given) == 0 {
		return nil
	}
	return Usage(fmt.Errorf("%s: only pages have that; leave it out, or use --format pdf", strings.Join(given, ", ")))
}

// TellReplaced says once which letters the pages print otherwise.
func TellReplaced(to io.Writer, d *deck.Deck) {
	if words := sheets.Replaced(d); words != "" {
		fmt.Fprintln(to, words)
	}
}
