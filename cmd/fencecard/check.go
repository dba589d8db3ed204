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
	"fencecard/output/deckfile"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/proof"
)

// checkOptions are the flags of the check command.
type checkOptions struct {
	format string
	deck   printed
	card   string
	// As the maker measures them on the table; "" where not.
	fence, start, stop, height string
}

func (a *app) checkCommand() *cobra.Command {
	var o checkOptions
	cmd := &cobra.Command{
		Use:   "check [PLAN]",
		Short: "Prove the cards against the plan, or say what the table as set would cut",
		Long:  topic("check"),
		Example: `  fencecard check bench.yaml
  fencecard check bench.yaml --deck deck.json
  fencecard check bench.yaml --card 3.3 --fence 25/64 --start 15/32 --stop 3-1/4
  fencecard check bench.yaml --card 3.3@k7fw --fence 25/64`,
		Args: cobra.MaximumNArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.check(ctx, args, o) }),
	}
	f := cmd.Flags()
	formatFlag(cmd, &o.format)
	o.deck.flags(cmd)
	f.StringVar(&o.card, "card", "", "the card, by its `NUMBER`, that the table is set for")
	f.StringVar(&o.fence, "fence", "", "as measured: fence face to the near edge of the bit")
	f.StringVar(&o.start, "start", "", "as measured: leading end past the trailing edge of the bit at the start")
	f.StringVar(&o.stop, "stop", "", "as measured: leading end past the leading edge of the bit at the stop")
	f.StringVar(&o.height, "height", "", "as measured: height of the bit above the table")
	return cmd
}

func (a *app) check(ctx context.Context, args []string, o checkOptions) error {
	asJSON, err := asJSON(o.format)
	if err != nil {
		return err
	}
	if o.card, err = o.deck.named(o.card); err != nil {
		return err
	}
	if err := o.usage(); err != nil {
		return err
	}
	plan, err := a.readPlan(args)
	if err != nil {
		return err
	}
	plan, err = setup.Batch(plan, o.deck.batch)
	if err != nil {
		return err
	}
	data, err := a.deckData(ctx, plan, o.deck)
	if err != nil {
		return err
	}
	defer collectSooner()() // a deck of somebody else's may have thousands of faults
	claims, err := deckfile.Read(o.deck.file, data, plan.Shop.Scale)
	var faults joinery.Faults
	if o.deck.file != "" && asJSON && errors.As(err, &faults) {
		report := proof.Unread(faults)
		return a.tellProof(plan, &report, asJSON)
	}
	if err != nil {
		return err
	}
	deck, report := proveAll(plan, claims)
	if report.Proved() {
		if err := a.is(deck, o.deck); err != nil {
			return err
		}
		if o.card != "" {
			return a.asSet(plan, claims, o)
		}
	}
	if deck != nil {
		report.Removed = proof.Volumes(plan, claims)
	}
	return a.tellProof(plan, &report, asJSON)
}

// usage finds flags that do not go together.
func (o checkOptions) usage() error {
	measured := o.fence != "" || o.start != "" || o.stop != "" || o.height != ""
	switch {
	case measured && o.card == "":
		return usageError{errors.New("--fence, --start, --stop and --height need --card: which card is the table set for?")}
	case o.card != "" && !measured:
		return usageError{errors.New("--card needs one or more of --fence, --start, --stop and --height, as measured on the table")}
	}
	return nil
}

// deckData reads the deck to be proved, or writes a fresh one, so that both go
// the same way.
func (a *app) deckData(ctx context.Context, plan *joinery.Plan, p printed) ([]byte, error) {
	if p.file != "" {
		return a.readFile(p.file)
	}
	deck, err := a.makeDeck(ctx, plan, p.search)
	if err != nil {
		return nil, err
	}
	var page bytes.Buffer
	err = output.JSON(&page, deck)
	return page.Bytes(), err
}

// tellProof prints a proof; an error is returned where it failed.
func (a *app) tellProof(plan *joinery.Plan, r *proof.Report, asJSON bool) error {
	var page bytes.Buffer
	var err error
	if asJSON {
		err = output.ProofJSON(&page, plan.Shop.Scale, r)
	} else {
		err = screen.ProofText(&page, plan.Title, plan.Shop.Scale, r)
	}
	if err == nil {
		_, err = a.out.Write(page.Bytes())
	}
	if err == nil && !r.Proved() {
		err = errors.New(screen.ProofLine(r))
	}
	return err
}

func (a *app) asSet(plan *joinery.Plan, claims *proof.Claims, o checkOptions) error {
	var s proof.Settings
	var faults joinery.Faults
	for _, m := range []struct {
		flag, text string
		to         **joinery.Length
	}{{"fence", o.fence, &s.Fence}, {"start", o.start, &s.Start}, {"stop", o.stop, &s.Stop}, {"height", o.height, &s.Height}} {
		if m.text != "" {
			l := flagLength(&faults, m.flag, m.text, plan.Unit)
			*m.to = &l
		}
	}
	if err := faults.Err(); err != nil {
		return err
	}
	found, err := proof.AsSet(plan, claims, o.card, s)
	if err != nil {
		return err
	}
	tell := screen.AsSetText
	if o.format == "json" {
		tell = func(w io.Writer, s joinery.Scale, f []proof.Finding) error { return output.AsSetJSON(w, s, o.card, f) }
	}
	if err := tell(a.out, plan.Shop.Scale, found); err != nil {
		return err
	}
	for _, f := range found {
		if !f.Right() {
			return fmt.Errorf("card %s is not set as it wants yet", o.card)
		}
	}
	return nil
}
