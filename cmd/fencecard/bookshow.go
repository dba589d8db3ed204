package main

import (
	"bytes"
	"context"
	"io"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/session"
	"fencecard/output"
	"fencecard/output/screen"
	"fencecard/output/sheets"
	"fencecard/setup/book"
	"fencecard/setup/deck"
)

// bookShowOptions are the flags of the book show command.
type bookShowOptions struct {
	bookOptions
	out   string
	force bool
	pages session.PageFlags
}

func (a *app) bookShowCommand() *cobra.Command {
	var o bookShowOptions
	cmd := &cobra.Command{
		Use:   "show NAME",
		Short: "Show or print one kept setup",
		Long: `Show one kept setup, by its name or its code: as text, as JSON, or as a PDF with
its setup sheet and its full-scale strip. The PDF goes to
setup-CODE.pdf in the current folder unless --out says otherwise; --strips=false
leaves the strip out.`,
		Example: `  fencecard book show "seat rail mortises"
  fencecard book show 7k3f-9m2q --format pdf`,
		Args: cobra.ExactArgs(1),
		RunE: a.work(func(_ context.Context, args []string) error { return a.bookShow(args[0], o) }),
	}
	session.BookFlag(cmd, &o.book)
	f := cmd.Flags()
	keptFormats.Flag(cmd, &o.format)
	f.StringVarP(&o.out, "out", "o", "", keptFormats.OutSays())
	f.BoolVar(&o.force, "force", false, "write over a file that is already there")
	cmd.ValidArgsFunction = a.OfferKept(&o.book)
	o.pages.Add(cmd)
	o.pages.Strips = true
	return cmd
}

func (a *app) bookShow(word string, o bookShowOptions) error {
	var files []string
	if o.out != "" {
		files = []string{o.out}
	}
	targets, err := keptFormats.Targets(files, o.format, o.pages.Cmd.Flags().Changed("format"))
	if err != nil {
		return err
	}
	to := targets[0]
	print, err := keptFormats.Of(to.Format).Write(o)
	if err != nil {
		return err
	}
	b, err := a.OpenBook(o.book)
	if err != nil {
		return err
	}
	e, err := b.NamedOrCoded(word)
	if err != nil {
		return err
	}
	var page bytes.Buffer
	if err := print(&page, e); err != nil {
		return err
	}
	if to.Drawn {
		session.TellReplaced(a.Err, e.Deck())
	}
	if to.File == "" && to.Stamped {
		to.File = "setup-" + e.Code + to.Endings[0]
	}
	if err := a.Write(to, page.Bytes(), "setup "+e.Code, o.force); err != nil || to.OnScreen() {
		return err
	}
	return a.Wrote("%s: %q (%s)\n", to.File, e.Name, e.Code)
}

// keptFormats are the forms of a kept setup, each with what writes it.
var keptFormats = session.Formats[func(bookShowOptions) (keptWriter, error)]{
	{Format: session.Text, Write: func(o bookShowOptions) (keptWriter, error) { return screen.KeptSetup, o.pages.Unused() }},
	{Format: session.JSON, Write: func(o bookShowOptions) (keptWriter, error) { return keptJSON, o.pages.Unused() }},
	{Format: session.PDF, Write: bookShowOptions.pdf},
}

type keptWriter = func(io.Writer, *book.Entry) error

func keptJSON(w io.Writer, e *book.Entry) error {
	return output.KeptSetupsJSON(w, []*book.Entry{e}, nil)
}

func (o bookShowOptions) pdf() (keptWriter, error) {
	pages, err := o.pages.Printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error {
		if p.Only == sheets.Everything {
			p.Only = sheets.OnlySetups
		}
		return output.PDF(w, d, p)
	})
	return func(w io.Writer, e *book.Entry) error { return pages(w, e.Deck()) }, err
}
