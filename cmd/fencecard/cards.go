package main

import (
	"bytes"
	"context"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/bench"
	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
	"fencecard/setup/search"
	"fencecard/setup/whatif"
)

// cardsOptions are the flags of the cards command.
type cardsOptions struct {
	format string
	out    []string
	force  bool
	only   deck.Only
	setups []string // numbers, a deck's code behind them or not
	book   string
	again  printed // the same as one that was printed
	why    bool
	card   string
	joint  string
	pages  pageFlags

	targets []target // from format and out
}

func (a *app) cardsCommand() *cobra.Command {
	var o cardsOptions
	cmd := &cobra.Command{
		Long: `Print the deck of a plan: a run sheet, a sheet for every setup in running
order, and a card for every piece.

Without PLAN the built-in boot bench is printed. PLAN may be - for standard
input. Pages go to NAME-cards.pdf in the current folder, text and JSON to
standard output. 'fencecard help plan' tells how a plan is written.

` + topic("cards"),
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
	cmd.ValidArgsFunction = offerPlan
	f.StringVar(&o.format, "format", "pdf", "pdf, text or json; html for a page to tick; svg for one run, setup, piece or joint")
	f.StringVar(&o.joint, "joint", "", "with --format svg: draw the joint `NAME`, its halves apart and together")
	f.StringVar(&o.card, "card", "", "another spelling of --only-run")
	o.again.flags(cmd)
	f.BoolVar(&o.why, "explain", false, "say why each setup is there and what would spare one")
	f.StringArrayVarP(&o.out, "out", "o", nil, "write to this `FILE`, by its ending as pdf, json, txt, html or svg; - for standard\noutput; may be given again")
	f.BoolVar(&o.force, "force", false, "write over a file that is already there")
	f.StringArrayVar(&o.only.Pieces, "only-piece", nil, "only the runs and the card of the piece `NAME`; may be given again")
	offer(cmd, "only-piece", a.offerPieces)
	f.StringSliceVar(&o.setups, "only-setup", nil, "only the setup `NUMBER`; may be given again")
	offer(cmd, "only-setup", a.fromDeck(&o.again, setupWords))
	f.StringVar(&o.card, "only-run", "", "one run, by its `NUMBER`, such as 3.6, as large as the page")
	offer(cmd, "only-run", a.fromDeck(&o.again, runWords))
	bookFlag(cmd, &o.book)
	choices(cmd, "format", "pdf", "text", "json", "html", "svg")
	o.pages.add(cmd)
	return cmd
}

func (a *app) cards(ctx context.Context, args []string, o cardsOptions) error {
	var err error
	if o.card, err = o.again.named(o.card); err != nil {
		return err
	}
	for _, text := range o.setups {
		number, err := o.again.setup("only-setup", text)
		if err != nil {
			return err
		}
		o.only.Setups = append(o.only.Setups, number)
	}
	if o.targets, err = targetsOf(o.out, o.format, o.pages.cmd.Flags().Changed("format")); err != nil {
		return err
	}
	printers, err := o.printers()
	if err != nil {
		return err
	}
	plan, err := a.readPlan(args)
	if err != nil {
		return err
	}
	d, err := a.deckFor(ctx, plan, o)
	if err != nil {
		return err
	}
	for _, w := range remark.Once(d) {
		fmt.Fprintln(a.err, screen.WarningLine(w))
	}
	if slices.ContainsFunc(printers, func(p printer) bool { return p.format == "pdf" || p.format == "svg" || p.format == "html" }) {
		a.tellReplaced(d)
	}
	for _, p := range printers {
		if p.file == "" && p.stamped() {
			o.format = p.format
			p.file = plan.Name + o.ending()
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
	done := a.busy("laying out the pages")
	err := p.print(&page, d)
	done()
	if err != nil {
		return err
	}
	if err := a.write(p.target, page.Bytes(), bench.PrintedFor(d), force); err != nil {
		return err
	}
	to := a.out
	switch {
	case a.quiet, p.onScreen() && p.format == "text":
		return nil
	case p.onScreen():
		to, p.file = a.err, "standard output"
	}
	pages := paper.PageCount(page.Bytes())
	if p.part != "" {
		return screen.PartSummary(to, p.file, p.part, d, pages)
	}
	return screen.Summary(to, p.file, d, pages)
}

// deckFor makes the deck of a plan as asked for: a batch, or a part of it, with
// what the setup book says.
func (a *app) deckFor(ctx context.Context, plan *joinery.Plan, o cardsOptions) (*deck.Deck, error) {
	plan, err := setup.Batch(plan, o.again.batch)
	if err != nil {
		return nil, err
	}
	d, err := a.madeOrRead(ctx, plan, o.again)
	if err != nil {
		return nil, err
	}
	if o.again.code != "" {
		if err := a.is(d, o.again); err != nil {
			return nil, err
		}
	}
	if d.Ended != search.Through && !o.writes("json") {
		fmt.Fprintln(a.err, "it cannot be made anew: to check, correct or print this deck again, write it as JSON too, as with --out cards.pdf --out deck.json")
	}
	matches, err := a.markKept(d, o.book)
	if err != nil {
		return nil, err
	}
	if o.why {
		if err := a.explain(ctx, d, o); err != nil {
			return nil, err
		}
	}
	if d, err = d.Only(o.only); err != nil {
		return nil, err
	}
	a.offerNear(d, matches)
	return d, nil
}

// explain says why each setup is there: beside the cards where these go to
// standard output, else there.
func (a *app) explain(ctx context.Context, d *deck.Deck, o cardsOptions) error {
	trying, stop := callOff(ctx)
	defer stop()
	why, err := whatif.Explain(trying, d)
	if err != nil {
		return err
	}
	to := a.out
	if slices.ContainsFunc(o.targets, target.onScreen) {
		to = a.err
	}
	return screen.Explain(to, d, why)
}
