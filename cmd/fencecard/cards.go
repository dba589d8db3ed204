package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"fencecard/joinery"
	"fencecard/output"
	"fencecard/output/paper"
	"fencecard/output/screen"
	"fencecard/output/sheets"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
	"fencecard/setup/search"
	"fencecard/setup/whatif"
)

// cardsOptions are the flags of the cards command.
type cardsOptions struct {
	format string
	out    string
	force  bool
	batch  int
	only   deck.Only
	book   string
	search searchFlag
	code   string
	why    bool
	card   string
	pages  pageFlags
}

func (a *app) cardsCommand() *cobra.Command {
	var o cardsOptions
	cmd := &cobra.Command{
		Use:   "cards [PLAN]",
		Short: "Print the cards of a plan",
		Long: `Print the cards of a plan, grouped by setup, in running order.

Without PLAN the built-in boot bench is printed. PLAN may be - for standard
input. Cards go to NAME-cards.pdf in the current folder, text and JSON to
standard output. 'fencecard help plan' tells how a plan is written.

` + topic("cards"),
		Example: `  fencecard cards                              the built-in boot bench
  fencecard cards bench.yaml                   cards in bench-cards.pdf
  fencecard cards bench.yaml --paper a4 --strips
  fencecard cards bench.yaml --only strips     full-size strips in bench-strips.pdf
  fencecard cards bench.yaml --format text     to read on the screen
  fencecard cards bench.yaml --format json --out deck.json
  fencecard cards bench.yaml --format svg --card 1.1 --out card.svg
  fencecard cards bench.yaml --batch 12        for twelve benches
  fencecard cards bench.yaml --only-piece "front left leg" --deck-code k7fw --out again.pdf`,
		Args: cobra.MaximumNArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.cards(ctx, args, o) }),
	}
	f := cmd.Flags()
	cmd.ValidArgsFunction = offerPlan
	f.StringVar(&o.format, "format", "pdf", "pdf, text or json; svg for one card's drawing")
	f.StringVar(&o.card, "card", "", "the `NUMBER` of the card to draw as svg, such as 1.1")
	o.search.flag(cmd)
	codeFlag(cmd, &o.code)
	f.BoolVar(&o.why, "explain", false, "say why each setup is there and what would spare one")
	f.StringVarP(&o.out, "out", "o", "", "write to this `FILE`; - for standard output")
	f.BoolVar(&o.force, "force", false, "write over a file that is already there")
	f.IntVar(&o.batch, "batch", 1, "cards for `N` of the whole work: every count multiplied")
	f.StringArrayVar(&o.only.Pieces, "only-piece", nil, "only the cards of the piece `NAME`; may be given again")
	offer(cmd, "only-piece", a.offerPieces)
	f.IntSliceVar(&o.only.Setups, "only-setup", nil, "only the cards of the setup `NUMBER`; may be given again")
	offer(cmd, "only-setup", a.fromDeck(&printed{search: o.search, batch: o.batch}, setupWords))
	bookFlag(cmd, &o.book)
	choices(cmd, "format", "pdf", "text", "json", "svg")
	o.pages.add(cmd)
	return cmd
}

func (a *app) cards(ctx context.Context, args []string, o cardsOptions) error {
	meant := printed{code: o.code}
	card, err := meant.named(o.card)
	if err != nil {
		return err
	}
	o.card, o.code = card, meant.code
	printer, err := o.printer()
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
	var page bytes.Buffer
	if err := printer(&page, d); err != nil {
		return err
	}
	if o.format == "pdf" || o.format == "svg" {
		a.tellReplaced(d)
	}
	to := o.out
	if to == "" && o.format == "pdf" {
		to = plan.Name + o.pages.ending()
	}
	if to == "" || to == "-" {
		_, err = a.out.Write(page.Bytes())
		return err
	}
	if err := a.writeFile(to, page.Bytes(), o.force); err != nil {
		return err
	}
	if a.quiet {
		return nil
	}
	return screen.Summary(a.out, to, d, paper.PageCount(page.Bytes()))
}

// deckFor makes the deck of a plan as asked for: a batch, or a part of it, with
// what the setup book says.
func (a *app) deckFor(ctx context.Context, plan *joinery.Plan, o cardsOptions) (*deck.Deck, error) {
	plan, err := setup.Batch(plan, o.batch)
	if err != nil {
		return nil, err
	}
	d, err := a.makeDeck(ctx, plan, o.search)
	if err != nil {
		return nil, err
	}
	if o.code != "" {
		if err := a.is(d, printed{code: o.code}); err != nil {
			return nil, err
		}
	}
	if d.Ended != search.Through && o.format != "json" {
		fmt.Fprintln(a.err, "it cannot be made anew: to check or correct this deck, or print a part of it, write it as JSON too")
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
	if o.out == "-" || o.out == "" && o.format != "pdf" {
		to = a.err
	}
	return screen.Explain(to, d, why)
}

// drawing returns the writer of one card's drawing.
func (o cardsOptions) drawing() (func(io.Writer, *deck.Deck) error, error) {
	if o.card == "" {
		return nil, usageError{errors.New("--format svg draws one card: add its number, such as --card 1.1")}
	}
	if err := o.pages.without("per-page", "strips", "only"); err != nil {
		return nil, err
	}
	return o.pages.printer(func(w io.Writer, d *deck.Deck, p sheets.Pages) error {
		return output.CardSVG(w, d, o.card, p)
	})
}

// printer returns the writer of the chosen format.
func (o cardsOptions) printer() (func(io.Writer, *deck.Deck) error, error) {
	if o.card != "" && o.format != "svg" {
		return nil, usageError{errors.New("--card is for --format svg")}
	}
	switch o.format {
	case "pdf":
		return o.pages.printer(output.PDF)
	case "svg":
		return o.drawing()
	case "text":
		return output.Text, o.pages.unused()
	case "json":
		return output.JSON, o.pages.unused()
	}
	return nil, usageError{fmt.Errorf("--format is pdf, text, json or svg, not %q", o.format)}
}
