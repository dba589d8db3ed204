package main

import (
	"context"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/shelf"
	"fencecard/output"
	"fencecard/output/screen"
	"fencecard/setup/book"
)

func (a *app) bookCommand() *cobra.Command {
	cmd := &cobra.Command{
		Long: manual.Topic("book"),
		Example: `  fencecard book keep bench.yaml --setup 3 --name "seat rail mortises"
  fencecard book list
  fencecard book show "seat rail mortises" --format pdf
  fencecard book match bench.yaml`,
	}
	cmd.AddCommand(a.bookKeepCommand(), a.bookListCommand(), a.bookShowCommand(), a.bookForgetCommand(), a.bookMatchCommand())
	return cmd
}

// bookOptions are the flags that every book command has.
type bookOptions struct {
	book   string
	format string
}

func (o *bookOptions) flags(cmd *cobra.Command) {
	session.BookFlag(cmd, &o.book)
	session.FormatFlag(cmd, &o.format)
}

func (a *app) bookListCommand() *cobra.Command {
	var o bookOptions
	cmd := &cobra.Command{
		Use:   "list",
		Short: "List the kept setups",
		Example: `  fencecard book list
  fencecard book list --format json --book batch.txt`,
		Args: cobra.NoArgs,
		RunE: a.work(func(context.Context, []string) error {
			asJSON, err := session.AsJSON(o.format)
			if err != nil {
				return err
			}
			b, err := a.OpenBook(o.book)
			if err != nil {
				return err
			}
			if asJSON {
				return output.KeptSetupsJSON(a.Out, b.Entries(), b.Damage())
			}
			return screen.KeptSetups(a.Out, b.Entries())
		}),
	}
	o.flags(cmd)
	return cmd
}

func (a *app) bookForgetCommand() *cobra.Command {
	var o bookOptions
	cmd := &cobra.Command{
		Use:   "forget NAME",
		Short: "Take a setup out of the book",
		Long: `Take a setup out of the book, by its name or its code. The book as it was
before stays beside it, its name ending in .bak.`,
		Example: `  fencecard book forget "seat rail mortises"
  fencecard book forget 7k3f-9m2q`,
		Args: cobra.ExactArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.bookForget(ctx, args[0], o) }),
	}
	o.flags(cmd)
	cmd.ValidArgsFunction = a.OfferKept(&o.book)
	return cmd
}

func (a *app) bookForget(ctx context.Context, word string, o bookOptions) error {
	asJSON, err := session.AsJSON(o.format)
	if err != nil {
		return err
	}
	// A book without the setup is not touched, nor is a folder made for it.
	before, err := a.ReadBook(o.book)
	if err != nil {
		return err
	}
	if _, err := before.Forget(word); err != nil {
		return err
	}
	var gone []*book.Entry
	path, err := a.ChangeBook(ctx, o.book, func(b *book.Book) (*book.Book, error) {
		if e, err := b.NamedOrCoded(word); err == nil {
			gone = []*book.Entry{e}
		}
		return b.Forget(word)
	})
	if err != nil {
		return err
	}
	if asJSON {
		return output.KeptSetupsJSON(a.Out, gone, nil)
	}
	return a.Wrote("forgot %q; the book as it was is in %s%s\n", word, path, shelf.BackupEnding)
}

func (a *app) bookMatchCommand() *cobra.Command {
	var o bookOptions
	var p session.Printed
	cmd := &cobra.Command{
		Use:   "match [PLAN]",
		Short: "Find the setups of a plan in the book",
		Long: `For every setup of a plan, show the kept setup that equals it and what was
learnt there, or the close ones: the same bit, and the fence within 1/32 in
(0.8 mm). For a close one, show what would have to change in the plan to use
the fence as it was kept, and whether the joints allow it: the plan is made
anew with the change, and whatever then stops it or is warned of is told.`,
		Example: `  fencecard book match bench.yaml
  fencecard book match bench.yaml --format json`,
		Args: cobra.MaximumNArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.bookMatch(ctx, args, o, p) }),
	}
	o.flags(cmd)
	p.Flags(cmd)
	cmd.ValidArgsFunction = session.OfferPlan
	return cmd
}

func (a *app) bookMatch(ctx context.Context, args []string, o bookOptions, p session.Printed) error {
	asJSON, err := session.AsJSON(o.format)
	if err != nil {
		return err
	}
	if _, err := p.TakeCode(""); err != nil {
		return err
	}
	plan, err := a.ReadPlan(args)
	if err != nil {
		return err
	}
	p.Book = o.book
	deck, err := a.PrintedDeck(ctx, plan, p)
	if err != nil {
		return err
	}
	b, err := a.OpenBook(o.book)
	if err != nil {
		return err
	}
	matches, err := b.Match(deck)
	if err != nil {
		return err
	}
	if asJSON {
		return output.MatchesJSON(a.Out, deck, matches)
	}
	return screen.Matches(a.Out, deck, matches)
}
