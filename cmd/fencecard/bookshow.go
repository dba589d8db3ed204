package main

import (
	"bytes"
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"fencecard/output"
	"fencecard/setup/book"
)

// bookShowOptions are the flags of the book show command.
type bookShowOptions struct {
	bookOptions
	out   string
	force bool
}

func (a *app) bookShowCommand() *cobra.Command {
	var o bookShowOptions
	cmd := &cobra.Command{
		Use:   "show NAME",
		Short: "Show or print one kept setup",
		Long: `Show one kept setup, by its name or its code: as text, as JSON, or as a PDF with
its header card, its cards and its full-scale strip. The PDF goes to
setup-CODE.pdf in the current folder unless --out says otherwise.`,
		Example: `  fencecard book show "seat rail mortises"
  fencecard book show 7k3f-9m2q --format pdf`,
		Args: cobra.ExactArgs(1),
		RunE: a.work(func(_ context.Context, args []string) error { return a.bookShow(args[0], o) }),
	}
	bookFlag(cmd, &o.book)
	f := cmd.Flags()
	f.StringVar(&o.format, "format", "text", "text, json or pdf")
	f.StringVarP(&o.out, "out", "o", "", "write to this `FILE`; - for standard output")
	f.BoolVar(&o.force, "force", false, "write over a file that is already there")
	choices(cmd, "format", "text", "json", "pdf")
	return cmd
}

func (a *app) bookShow(word string, o bookShowOptions) error {
	if o.format != "pdf" {
		if _, err := asJSON(o.format); err != nil {
			return usageError{fmt.Errorf("--format is text, json or pdf, not %q", o.format)}
		}
	}
	b, err := a.openBook(o.book)
	if err != nil {
		return err
	}
	e, err := b.Find(word)
	if err != nil {
		return err
	}
	var page bytes.Buffer
	to := o.out
	switch o.format {
	case "json":
		err = output.KeptSetupsJSON(&page, []*book.Entry{e}, nil)
	case "pdf":
		err = output.PDF(&page, e.Deck(), output.Pages{Strips: true})
		if to == "" {
			to = "setup-" + e.Code + ".pdf"
		}
	default:
		err = output.KeptSetup(&page, e)
	}
	if err != nil {
		return err
	}
	if to == "" || to == "-" {
		_, err = a.out.Write(page.Bytes())
		return err
	}
	if err := writeFile(to, page.Bytes(), o.force); err != nil {
		return err
	}
	_, err = fmt.Fprintf(a.out, "%s: %q (%s)\n", to, e.Name, e.Code)
	return err
}
