package main

import (
	"bytes"
	"context"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/bench"
	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/terminal"
	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckpart"
	"fencecard/setup/remark"
	"fencecard/setup/search/budget"
	"fencecard/setup/whatif"
)

// cardsOptions are the flags of the cards command.
type cardsOptions struct {
	format string
	out    []string
	force  bool
	only   deckpart.Only
	setups []string        // numbers, a deck's code behind them or not
	again  session.Printed // the same as one that was printed
	why    bool
	run    string
	joint  string
	pages  session.PageFlags

	targets []session.Target // from format and out
}

func (a *app) cardsCommand() *cobra.Command {
	var o cardsOptions
	cmd := &cobra.Command{
		Long: `Print the deck of a plan: a run sheet, a sheet for every setup in running
order, and a card for every piece.

Without PLAN the built-in boot bench is printed. PLAN may be - for standard
input. Pages go to NAME-cards.pdf in the current folder, text and JSON to
standard output. 'fencecard help plan' tells how a plan is written.

` + manual.Topic("cards"),
		Example: `  fencecard cards                              the built-in boot bench
  fencecard cards bench.yaml                   the deck in bench-cards.pdf
  fencecard cards bench.yaml --paper a4 --strips
  fencecard cards bench.yaml --only strips     full-size strips in bench-strips.pdf
  fencecard cards bench.yaml --joints          a drawing of every joint as well
  fencecard cards --format svg --joint "seat rail"
  fencecard cards bench.yaml --format text     to read on the screen
  fencecard cards bench.yaml --format html     a page for a tablet, in bench-cards.html
  fencecard cards bench.yaml --out bench.pdf --out deck.json
  fencecard cards bench.yaml --deck deck.json  that deck again, as it was
  fencecard cards bench.yaml --only-run 1.1 --out run.svg
  fencecard cards bench.yaml --batch 12        for twelve benches
  fencecard cards bench.yaml --only-piece "front left leg" --deck-code k7fw --out again.pdf
  fencecard cards bench.yaml --only-run 3.6    one run as large as the page`,
		Args: cobra.MaximumNArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.cards(ctx, args, o) }),
	}
	f := cmd.Flags()
	cmd.ValidArgsFunction = session.OfferPlan
	cardFormats.Flag(cmd, &o.format)
	f.StringVar(&o.joint, "joint", "", "with --format svg: draw the joint `NAME`, its halves apart and together")
	o.again.Flags(cmd)
	f.BoolVar(&o.why, "explain", false, "say why each setup is there and what would spare one")
	f.StringArrayVarP(&o.out, "out", "o", nil, cardFormats.OutSays()+";\nmay be given again")
	f.BoolVar(&o.force, "force", false, "write over a file that is already there")
	f.StringArrayVar(&o.only.Pieces, "only-piece", nil, "only the runs and the card of the piece `NAME`; may be given again")
	session.Offer(cmd, "only-piece", a.OfferPieces)
	f.StringSliceVar(&o.setups, "only-setup", nil, "only the setup `NUMBER`; may be given again")
	session.Offer(cmd, "only-setup", a.FromDeck(&o.again, session.SetupWords))
	f.StringVar(&o.run, "only-run", "", "one run, by its `NUMBER`, such as 3.6, as large as the page")
	session.Offer(cmd, "only-run", a.FromDeck(&o.again, session.RunWords))
	session.AlsoSpelt(cmd, map[string]string{"card": "only-run"})
	session.BookFlag(cmd, &o.again.Book)
	o.pages.Add(cmd)
	return cmd
}

func (a *app) cards(ctx context.Context, args []string, o cardsOptions) error {
	var err error
	if o.run, err = o.again.TakeCode(o.run); err != nil {
		return err
	}
	for _, text := range o.setups {
		number, err := o.again.Setup("only-setup", text)
		if err != nil {
			return err
		}
		o.only.Setups = append(o.only.Setups, number)
	}
	if o.targets, err = cardFormats.Targets(o.out, o.format, o.pages.Cmd.Flags().Changed("format")); err != nil {
		return err
	}
	printers, err := o.printers()
	if err != nil {
		return err
	}
	plan, err := a.ReadPlan(args)
	if err != nil {
		return err
	}
	d, err := a.deckFor(ctx, plan, o)
	if err != nil {
		return err
	}
	for _, w := range remark.Once(d) {
		fmt.Fprintln(a.Err, screen.WarningLine(w))
	}
	if slices.ContainsFunc(printers, func(p printer) bool { return p.Drawn }) {
		session.TellReplaced(a.Err, d)
	}
	for _, p := range printers {
		if p.File == "" && p.Stamped {
			p.File = plan.Name + o.ending(p.Format)
		}
		if err := a.print(p, d, o.force); err != nil {
			return err
		}
	}
	return nil
}

// print writes a deck to one file, and a summary beside it: where the deck itself
// goes to standard output, on standard error. Text begins with its own.
func (a *app) print(p printer, d *deck.Deck, force bool) error {
	var page bytes.Buffer
	done := a.Busy("laying out the pages")
	err := p.print(&page, d)
	done()
	if err != nil {
		return err
	}
	if err := a.Write(p.Target, page.Bytes(), bench.PrintedFor(d), force); err != nil {
		return err
	}
	to := a.Out
	switch {
	case a.Quiet, p.OnScreen() && p.Format == session.Text:
		return nil
	case p.OnScreen():
		to, p.File = a.Err, "standard output"
	}
	pages := paper.PageCount(page.Bytes())
	if p.part != "" {
		return screen.PartSummary(to, p.File, p.part, d, pages)
	}
	return screen.Summary(to, p.File, d, pages)
}

// deckFor makes the deck of a plan as asked for: a batch, or a part of it, with
// what the setup book says.
func (a *app) deckFor(ctx context.Context, plan *joinery.Plan, o cardsOptions) (*deck.Deck, error) {
	plan, err := setup.Batch(plan, o.again.Batch)
	if err != nil {
		return nil, err
	}
	d, err := a.MadeOrRead(ctx, plan, o.again)
	if err != nil {
		return nil, err
	}
	if d.Ended != budget.Through && !o.writes(session.JSON) {
		fmt.Fprintln(a.Err, "it cannot be made anew: to check, correct or print this deck again, write it as JSON too, as with --out cards.pdf --out deck.json")
	}
	found, err := a.MarkKept(d, o.again)
	if err != nil {
		return nil, err
	}
	if o.again.Code != "" {
		if err := a.Is(d, o.again); err != nil {
			return nil, err
		}
	}
	if o.why {
		if err := a.explain(ctx, d, o); err != nil {
			return nil, err
		}
	}
	if d, err = deckpart.Of(d, o.only); err != nil {
		return nil, err
	}
	a.TellFound(d, found, o.run)
	return d, nil
}

// explain says why each setup is there: beside the cards where these go to
// standard output, else there.
func (a *app) explain(ctx context.Context, d *deck.Deck, o cardsOptions) error {
	trying, stop := terminal.CallOff(ctx)
	defer stop()
	why, err := whatif.Explain(trying, d)
	if err != nil {
		return err
	}
	to := a.Out
	if slices.ContainsFunc(o.targets, session.Target.OnScreen) {
		to = a.Err
	}
	return screen.Explain(to, d, why)
}
