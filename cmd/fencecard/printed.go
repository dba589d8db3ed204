package main

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery"
	"fencecard/output/deckfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
	"fencecard/setup/remark"
)

// printed says which deck a command means: the one that lies on paper. It is
// made anew as it was made then, or read from the JSON written then.
type printed struct {
	search searchFlag
	batch  int
	file   string
	code   string
}

func (p *printed) flags(cmd *cobra.Command) {
	p.search.flag(cmd)
	f := cmd.Flags()
	f.IntVar(&p.batch, "batch", 1, "for `N` of the whole work: every count multiplied")
	f.StringVar(&p.code, "deck-code", "", "refuse another deck than the one of this `CODE`, which its papers bear")
	f.StringVar(&p.file, "deck", "", "the deck as it was written to this JSON `FILE`, in place of one made anew")
	cmd.MarkFlagsMutuallyExclusive("deck", "search")
	offer(cmd, "deck", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
	})
}

// named takes the code of a deck off a number that has one, such as
// "3.1@k7fw", and checks how it is written.
func (p *printed) named(number string) (string, error) {
	number, code, has := strings.Cut(strings.TrimSpace(number), "@")
	if has && p.code != "" && !strings.EqualFold(p.code, code) {
		return "", usageError{fmt.Errorf("--deck-code %s and %s@%s name two decks: leave one out", p.code, number, code)}
	}
	if has {
		p.code = code
	}
	if (has || p.code != "") && !deck.IsCode(p.code) {
		return "", usageError{fmt.Errorf("%q is no code of a deck: write the four letters and digits that stand after the word deck on its papers", p.code)}
	}
	return strings.TrimSpace(number), nil
}

// setup reads the number of a setup, which may have a deck's code behind it.
func (p *printed) setup(flag, text string) (int, error) {
	number, err := p.named(text)
	if err != nil {
		return 0, err
	}
	n, err := strconv.Atoi(number)
	if err != nil {
		return 0, usageError{fmt.Errorf("--%s takes the number of a setup, such as 3 or 3@k7fw, not %q", flag, text)}
	}
	return n, nil
}

// is refuses a deck of another code than was named. Where none was, it says
// which deck is meant.
func (a *app) is(d *deck.Deck, p printed) error {
	if p.code == "" {
		a.note("deck %s", d.Code)
		return nil
	}
	if strings.EqualFold(p.code, d.Code) {
		return nil
	}
	fault := joinery.Fault{
		Problem: fmt.Sprintf("this is not deck %s: the plan makes deck %s now", strings.ToLower(p.code), d.Code),
		Remedy: "give the --search and --batch that its papers were printed with, or its JSON with --deck FILE; " +
			"if the plan or its shop changed since, print it again",
	}
	if p.file != "" {
		fault.Problem = fmt.Sprintf("this is not deck %s: %s holds deck %s", strings.ToLower(p.code), p.file, d.Code)
		fault.Remedy = "give the JSON that was written with those papers"
	}
	return joinery.Faults{fault}
}

// printedDeck makes or reads the deck that is meant. One that is read must
// prove.
func (a *app) printedDeck(ctx context.Context, plan *joinery.Plan, p printed) (*deck.Deck, error) {
	plan, err := setup.Batch(plan, p.batch)
	if err != nil {
		return nil, err
	}
	d, err := a.madeOrRead(ctx, plan, p)
	if err != nil {
		return nil, err
	}
	return d, a.is(d, p)
}

func (a *app) madeOrRead(ctx context.Context, plan *joinery.Plan, p printed) (*deck.Deck, error) {
	if p.file == "" {
		return a.makeDeck(ctx, plan, p.search)
	}
	data, err := a.readFile(p.file)
	if err != nil {
		return nil, err
	}
	defer collectSooner()() // a deck of somebody else's may have thousands of faults
	claims, err := deckfile.Read(p.file, data, plan.Shop.Scale)
	if err != nil {
		return nil, err
	}
	d, report := proveAll(plan, claims)
	if err := report.Err(); err != nil {
		return nil, fmt.Errorf("%w\nthe deck in %s does not prove; fencecard check --deck tells more", err, p.file)
	}
	return d, nil
}

// proveAll proves a deck's claims and what it says besides, and returns the deck
// where the claims prove.
func proveAll(plan *joinery.Plan, claims *proof.Claims) (*deck.Deck, proof.Report) {
	report := proof.Check(plan, claims)
	if !report.Proved() {
		return nil, report
	}
	d := proof.Deck(plan, claims)
	remark.Add(d)
	report.Warnings = d.Warnings
	report.Add(deckfile.Differences(d, claims))
	return d, report
}
