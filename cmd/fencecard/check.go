package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/measured"
	"fencecard/cmd/internal/session"
	"fencecard/joinery"
	"fencecard/joinery/plantext"
	"fencecard/output"
	"fencecard/output/deckfile"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/proof"
)

func (a *app) checkCommand() *cobra.Command {
	var o atTable
	cmd := &cobra.Command{
		Long: manual.Topic("check"),
		Example: `  fencecard check bench.yaml
  fencecard check bench.yaml --deck deck.json
  fencecard check bench.yaml 3.3 --near 25/64 --back-stop 3-1/4
  fencecard check bench.yaml 3.3@k7fw --far 49/64 --start 15/32 --stop 3`,
		Args: cobra.MaximumNArgs(2),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.check(ctx, args, o) }),
	}
	o.flags(a, cmd, "the table is set for", measured.Table())
	return cmd
}

func (a *app) check(ctx context.Context, args []string, o atTable) error {
	args, asJSON, err := o.named(args)
	if err != nil {
		return err
	}
	if err := o.checkUsage(); err != nil {
		return err
	}
	plan, err := a.ReadPlan(args)
	if err != nil {
		return err
	}
	plan, err = setup.Batch(plan, o.deck.Batch)
	if err != nil {
		return err
	}
	data, err := a.deckData(ctx, plan, o.deck)
	if err != nil {
		return err
	}
	defer session.CollectSooner()() // a deck of somebody else's may have thousands of faults
	claims, err := deckfile.Read(o.deck.File, data, plan.Shop.Scale)
	var faults plantext.Faults
	if o.deck.File != "" && asJSON && errors.As(err, &faults) {
		report := proof.Unread(faults)
		return a.tellProof(plan, &report, asJSON)
	}
	if err != nil {
		return err
	}
	deck, report := session.ProveAll(plan, claims)
	if report.Proved() {
		if err := a.AsPrinted(deck, o.deck); err != nil {
			return err
		}
		if o.run != "" {
			printed := proof.Of(deck)
			return a.asSet(plan, &printed, o)
		}
	}
	if deck != nil {
		report.Removed = proof.Volumes(plan, claims)
	}
	return a.tellProof(plan, &report, asJSON)
}

// checkUsage finds flags of check that do not go together.
func (o *atTable) checkUsage() error {
	switch {
	case o.measured.any() && o.run == "":
		return session.Usage(errors.New("which run is the table set for? Write its number behind the plan, as in fencecard check bench.yaml 3.6 --near 25/64"))
	case o.run != "" && !o.measured.any():
		return session.Usage(fmt.Errorf("say what you measured on the table for run %s: one or more of %s", plantext.Brief(o.run, 24), o.measured.names("and")))
	}
	return nil
}

// deckData reads the deck to be proved, or writes a fresh one, so that both go
// the same way.
func (a *app) deckData(ctx context.Context, plan *joinery.Plan, p session.Printed) ([]byte, error) {
	if p.File != "" {
		return a.ReadFile(p.File)
	}
	deck, err := a.MakeDeck(ctx, plan, p.Search)
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
		_, err = a.Out.Write(page.Bytes())
	}
	if err == nil && !r.Proved() {
		err = errors.New(screen.ProofLine(r))
	}
	return err
}

func (a *app) asSet(plan *joinery.Plan, claims *proof.Claims, o atTable) error {
	as, err := o.given(plan.Unit).AsSet(plan, claims, o.run)
	if err != nil {
		return err
	}
	tell := screen.AsSetText
	if o.format == "json" {
		tell = output.AsSetJSON
	}
	if err := tell(a.Out, plan.Shop.Scale, &as); err != nil {
		return err
	}
	if !as.Right() {
		return fmt.Errorf("run %s is not to be cut yet: do first what is said of it", o.run)
	}
	return nil
}
