package main

import (
	"context"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/session"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/output"
	"fencecard/output/screen"
	"fencecard/setup/book"
)

// bookKeepOptions are the flags of the book keep command.
type bookKeepOptions struct {
	bookOptions
	deck  session.Printed
	setup string // its number, a deck's code behind it or not
	name  string
	notes []string
	// Where they stood after the test cut; "" where not said.
	fence, height string
	force         bool
}

func (a *app) bookKeepCommand() *cobra.Command {
	var o bookKeepOptions
	cmd := &cobra.Command{
		Use:   "keep [PLAN] --setup N --name NAME",
		Short: "Put a setup of a plan into the book",
		Long: `Put a setup of a plan into the book: its bit and fence distance, its ladder, its
runs and marks, the wood, and what you say of it. The next deck that has the
same setup carries its name, your notes and where the fence really stood.`,
		Example: `  fencecard book keep bench.yaml --setup 3 --name "seat rail mortises"
  fencecard book keep bench.yaml --setup 3@k7fw --name "seat rail mortises" --force \
      --fence-stood 33/64 --note "the offcut from the left leg is the gauge"`,
		Args: cobra.MaximumNArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.bookKeep(ctx, args, o) }),
	}
	o.flags(cmd)
	f := cmd.Flags()
	f.StringVar(&o.setup, "setup", "", "the setup, by its `NUMBER` in the deck")
	f.StringVar(&o.name, "name", "", "the `NAME` it is found by")
	f.StringArrayVar(&o.notes, "note", nil, "a note, `TEXT`; may be given again")
	f.StringVar(&o.fence, "fence-stood", "", "at what `LENGTH` the fence stood after the test cut, to the near edge of the bit")
	f.StringVar(&o.height, "height-stood", "", "at what `LENGTH` the bit stood at full height after the test cut")
	f.BoolVar(&o.force, "force", false, "keep it in the place of a setup of that name; its comments, and notes and\ncorrections you do not give anew, stay")
	o.deck.Flags(cmd)
	cmd.ValidArgsFunction = session.OfferPlan
	session.Offer(cmd, "setup", a.FromDeck(&o.deck, session.SetupWords))
	session.Required(cmd, "setup")
	session.Required(cmd, "name")
	return cmd
}

func (a *app) bookKeep(ctx context.Context, args []string, o bookKeepOptions) error {
	asJSON, err := session.AsJSON(o.format)
	if err != nil {
		return err
	}
	number, err := o.deck.Setup("setup", o.setup)
	if err != nil {
		return err
	}
	plan, err := a.ReadPlan(args)
	if err != nil {
		return err
	}
	stood, err := o.stood(plan.Unit)
	if err != nil {
		return err
	}
	o.deck.Book = o.book
	deck, err := a.PrintedDeck(ctx, plan, o.deck)
	if err != nil {
		return err
	}
	e, err := book.Keep(deck, number, book.Keeping{
		Name: o.name, Notes: o.notes, Stood: stood, From: planName(args), On: time.Now(),
	})
	if err != nil {
		return err
	}
	var twin *book.Entry
	path, err := a.ChangeBook(ctx, o.book, func(b *book.Book) (*book.Book, error) {
		twin = b.Twin(e)
		grown, err := b.Put(e, o.force)
		if err == nil {
			e, err = grown.Named(e.Name) // with what stayed of an older one
		}
		return grown, err
	})
	if err != nil {
		return err
	}
	if twin != nil {
		a.tellTwin(twin, plan.Shop.Scale)
	}
	if asJSON {
		return output.KeptSetupsJSON(a.Out, []*book.Entry{e}, nil)
	}
	if err := a.Wrote("setup %d is kept as %q (%s) in %s\n", number, e.Name, e.Code, path); err != nil {
		return err
	}
	if a.Quiet {
		return nil
	}
	return screen.KeptCuts(a.Out, e)
}

// tellTwin says that the book has the same setup by another name, and what was
// learnt there.
func (a *app) tellTwin(twin *book.Entry, scale measure.Scale) {
	says := append(twin.Learnt(scale), twin.Notes...)
	if len(says) == 0 {
		says = []string{"nothing was learnt there"}
	}
	a.Note("the same setup is already kept as %q: %s\nto add to that one, keep it with --name %[1]q --force; fencecard book forget takes one of them away",
		twin.Name, strings.Join(says, "; "))
}

// stood reads the corrections.
func (o bookKeepOptions) stood(unit measure.Unit) (book.Stood, error) {
	var stood book.Stood
	var faults plantext.Faults
	if o.fence != "" {
		l := session.FlagLength(&faults, "fence-stood", o.fence, unit)
		stood.Fence = &l
	}
	if o.height != "" {
		l := session.FlagLength(&faults, "height-stood", o.height, unit)
		stood.Height = &l
	}
	return stood, faults.Err()
}

// planName is what a plan is called in the book.
func planName(args []string) string {
	switch {
	case len(args) == 0:
		return "the built-in plan"
	case args[0] == "-":
		return "standard input"
	}
	return filepath.Base(args[0])
}
