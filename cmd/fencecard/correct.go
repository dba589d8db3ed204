package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/shelf"
	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/output"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/proof"
	"fencecard/setup/whatif"
)

// correctOptions are the flags of the correct command.
type correctOptions struct {
	format   string
	deck     printed
	run      string
	keep     bool
	measured measures
}

func (a *app) correctCommand() *cobra.Command {
	o := correctOptions{measured: measures{
		{flag: "setback", says: "as measured: from the side at the fence to the near wall"},
		{flag: "width", says: "as measured: from wall to wall, of one run; at an end of the work, from the end to the shoulder"},
		{flag: "begins", says: "as measured: from the leading end of the work to where the cut begins"},
		{flag: "length", says: "as measured: along the work, round ends included"},
		{flag: "depth", says: "as measured: at the last height"},
	}}
	cmd := &cobra.Command{
		Long: topic("correct"),
		Example: `  fencecard correct bench.yaml 3.3 --setback 25/64 --depth 27/32
  fencecard correct bench.yaml 3.3 --width 0.372 --keep
  fencecard correct bench.yaml 3.3 --begins 17/32 --length 2-1/2 --deck deck.json`,
		Args: cobra.RangeArgs(1, 2),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.correct(ctx, args, o) }),
	}
	formatFlag(cmd, &o.format)
	o.deck.flags(cmd)
	cmd.ValidArgsFunction = a.offerPlanAndRun(&o.deck)
	cmd.Flags().StringVar(&o.run, "card", "", "the run that was tested, by its `NUMBER`: the same as RUN")
	offer(cmd, "card", a.fromDeck(&o.deck, runWords))
	o.measured.flags(cmd)
	cmd.Flags().BoolVar(&o.keep, "keep", false, "write the bit's true diameter into the shop file as measured")
	return cmd
}

func (a *app) correct(ctx context.Context, args []string, o correctOptions) error {
	asJSON, err := asJSON(o.format)
	if err != nil {
		return err
	}
	if args, o.run, err = runNamed(args, o.run); err != nil {
		return err
	}
	if o.run, err = o.deck.named(o.run); err != nil {
		return err
	}
	if err := o.usage(args[0]); err != nil {
		return err
	}
	plan, err := a.readPlan(args)
	if err != nil {
		return err
	}
	cut, err := o.testCut(plan.Unit)
	if err != nil {
		return err
	}
	deck, err := a.printedDeck(ctx, plan, o.deck)
	if err != nil {
		return err
	}
	claims := proof.Of(deck)
	lesson, err := proof.Correct(deck.Plan, &claims, o.run, cut)
	if err != nil {
		return err
	}
	if asJSON {
		err = output.CorrectionsJSON(a.out, plan.Shop.Scale, &lesson)
	} else {
		err = screen.CorrectionsText(a.out, plan.Shop.Scale, &lesson)
	}
	if err != nil || !o.keep {
		return err
	}
	if err := a.keepMeasured(args[0], plan, &lesson); err != nil {
		return err
	}
	return a.tellDivided(ctx, args[0], plan, lesson.Diameter)
}

// usage finds flags that do not go together.
func (o correctOptions) usage(plan string) error {
	width := slices.ContainsFunc(o.measured, func(m *measure) bool { return m.flag == "width" && m.text != "" })
	switch {
	case o.run == "":
		return usageError{errors.New("which run was tested? Write its number behind the plan, as in fencecard correct bench.yaml 3.6 --depth 27/32")}
	case !o.measured.given():
		return usageError{fmt.Errorf("give one or more of %s, as measured on the test cut", o.measured.names("and"))}
	case o.keep && !width:
		return usageError{errors.New("--keep needs --width: only the width of a slot shows the bit's diameter")}
	case o.keep && plan == "-":
		return usageError{errors.New("--keep needs a plan in a file, to find its shop file")}
	}
	return nil
}

func (o correctOptions) testCut(unit joinery.Unit) (proof.TestCut, error) {
	read, err := o.measured.read(unit)
	if err != nil {
		return proof.TestCut{}, err
	}
	var cut proof.TestCut
	var faults joinery.Faults
	for _, m := range []struct {
		flag string
		to   *joinery.Length
	}{{"setback", &cut.Setback}, {"width", &cut.Width}, {"begins", &cut.Begins}, {"length", &cut.Length}, {"depth", &cut.Depth}} {
		l := read[m.flag]
		if l == nil {
			continue
		}
		*m.to = *l
		if *l <= 0 {
			faults.Add(joinery.Fault{Problem: "--" + m.flag + ": a test cut measures more than 0", Remedy: "leave --" + m.flag + " out where there is nothing to measure"})
		}
	}
	return cut, faults.Err()
}

// keepMeasured writes the bit's true diameter into the file that has the bit.
func (a *app) keepMeasured(planFile string, plan *joinery.Plan, l *proof.Lesson) error {
	if l.Diameter == 0 {
		return errors.New("this cut does not show the bit's diameter: test a slot with a wall on either side")
	}
	file := planFile
	switch plan.Shop.Name {
	case planfile.BuiltInShopName:
		return errors.New("the plan uses the built-in shop, in which nothing can be kept; write a shop file with fencecard new --shop shop.yaml and name it in the plan with shop: shop.yaml")
	case planfile.ShopInPlanName:
	default:
		file = filepath.Join(filepath.Dir(planFile), plan.Shop.Name)
	}
	data, err := a.readFile(file)
	if err != nil {
		return err
	}
	kept, err := planfile.KeepMeasured(file, data, l.Bit.Name, l.Diameter, plan.Shop.Scale)
	if err != nil {
		return err
	}
	if err := shelf.Replace(file, kept); err != nil {
		return fmt.Errorf("%s: %w", file, cause(err))
	}
	a.note("%s: the %s bit now measures %s; print the cards again: numbers of setups and runs may change", file, l.Bit.Name, plan.Shop.Scale.Spell(l.Diameter))
	return nil
}

// tellDivided says what the plan takes more of with the bit as measured. Both decks
// are made without a search, so that nothing but the bit makes the difference.
func (a *app) tellDivided(ctx context.Context, planFile string, was *joinery.Plan, bit joinery.Length) error {
	is, err := a.readPlan([]string{planFile})
	if err != nil {
		return err
	}
	before, err := setup.MakeWith(ctx, was, setup.Options{Plain: true})
	if err != nil {
		return err
	}
	after, err := setup.MakeWith(ctx, is, setup.Options{Plain: true})
	if err != nil {
		return fmt.Errorf("with the bit as measured the plan cannot be cut as it stands:\n%w", err)
	}
	for _, d := range whatif.DividedCuts(before, after) {
		a.note("%s", d.Say(is.Shop.Scale, bit))
	}
	if more := len(after.Setups) - len(before.Setups); more > 0 {
		a.note("without a search the deck takes %s where it took %d", numbered(len(after.Setups), "setup"), len(before.Setups))
	}
	return nil
}
