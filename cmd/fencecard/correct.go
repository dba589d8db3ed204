package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/shelf"
	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/output"
	"fencecard/output/screen"
	"fencecard/setup/proof"
)

// correctOptions are the flags of the correct command.
type correctOptions struct {
	format string
	deck   printed
	card   string
	keep   bool
	// As the maker measures them on the test cut; "" where not.
	setback, width, begins, length, depth string
}

func (a *app) correctCommand() *cobra.Command {
	var o correctOptions
	cmd := &cobra.Command{
		Use:   "correct PLAN",
		Short: "From a test cut, say how to move fence, marks and bit",
		Long:  topic("correct"),
		Example: `  fencecard correct bench.yaml --card 3.3 --setback 25/64 --depth 27/32
  fencecard correct bench.yaml --card 3.3 --width 0.372 --keep
  fencecard correct bench.yaml --card 3.3 --begins 17/32 --length 2-1/2 --deck deck.json`,
		Args: cobra.ExactArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.correct(ctx, args, o) }),
	}
	f := cmd.Flags()
	formatFlag(cmd, &o.format)
	o.deck.flags(cmd)
	f.StringVar(&o.card, "card", "", "the card, by its `NUMBER`, that was tested")
	f.StringVar(&o.setback, "setback", "", "as measured: from the side at the fence to the near wall")
	f.StringVar(&o.width, "width", "", "as measured: from wall to wall, of one run")
	f.StringVar(&o.begins, "begins", "", "as measured: from the leading end of the work to where the cut begins")
	f.StringVar(&o.length, "length", "", "as measured: along the work, round ends included")
	f.StringVar(&o.depth, "depth", "", "as measured: at the last height")
	f.BoolVar(&o.keep, "keep", false, "write the bit's true diameter into the shop file as measured")
	required(cmd, "card")
	return cmd
}

func (a *app) correct(ctx context.Context, args []string, o correctOptions) error {
	asJSON, err := asJSON(o.format)
	switch {
	case err != nil:
		return err
	case o.setback == "" && o.width == "" && o.begins == "" && o.length == "" && o.depth == "":
		return usageError{errors.New("give one or more of --setback, --width, --begins, --length and --depth, as measured on the test cut")}
	case o.keep && o.width == "":
		return usageError{errors.New("--keep needs --width: only the width of a slot shows the bit's diameter")}
	case o.keep && args[0] == "-":
		return usageError{errors.New("--keep needs a plan in a file, to find its shop file")}
	}
	if o.card, err = o.deck.named(o.card); err != nil {
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
	lesson, err := proof.Correct(deck.Plan, &claims, o.card, cut)
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
	return a.keepMeasured(args[0], plan, &lesson)
}

func (o correctOptions) testCut(unit joinery.Unit) (proof.TestCut, error) {
	var cut proof.TestCut
	var faults joinery.Faults
	for _, m := range []struct {
		flag, text string
		to         *joinery.Length
	}{{"setback", o.setback, &cut.Setback}, {"width", o.width, &cut.Width}, {"begins", o.begins, &cut.Begins}, {"length", o.length, &cut.Length}, {"depth", o.depth, &cut.Depth}} {
		if m.text == "" {
			continue
		}
		*m.to = flagLength(&faults, m.flag, m.text, unit)
		if *m.to < 0 || *m.to == 0 && len(faults) == 0 {
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
	_, err = fmt.Fprintf(a.err, "%s: the %s bit now measures %s; print the cards again: numbers of setups and cards may change\n", file, l.Bit.Name, plan.Shop.Scale.Spell(l.Diameter))
	return err
}
