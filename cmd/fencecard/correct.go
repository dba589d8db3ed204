package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"fencecard/cmd/internal/lists"
	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/measured"
	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/shelf"
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/output"
	"fencecard/output/screen"
	"fencecard/output/wording"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/proof/attable"
	"fencecard/setup/whatif"

	"github.com/spf13/cobra"
)

// correctOptions are the flags of the correct command.
type correctOptions struct {
	atTable
	keep, force bool
}

func (a *app) correctCommand() *cobra.Command {
	var o correctOptions
	cmd := &cobra.Command{
		Long: manual.Topic("correct"),
		Example: `  fencecard correct bench.yaml 3.3 --setback 25/64 --depth 27/32
  fencecard correct bench.yaml 3.3 --width 0.372 --keep
  fencecard correct bench.yaml 3.3 --begins 17/32 --length 2-1/2 --deck deck.json`,
		Args: cobra.RangeArgs(1, 2),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.correct(ctx, args, o) }),
	}
	o.flags(a, cmd, "was tested", measured.Cut())
	cmd.Flags().BoolVar(&o.keep, "keep", false, "write the bit's true diameter into the shop file as measured")
	cmd.Flags().BoolVar(&o.force, "force", false, "keep the diameter though the answer asks about its measure")
	return cmd
}

func (a *app) correct(ctx context.Context, args []string, o correctOptions) error {
	args, asJSON, err := o.named(args)
	if err != nil {
		return err
	}
	if err := o.usage(args[0]); err != nil {
		return err
	}
	plan, err := a.ReadPlan(args)
	if err != nil {
		return err
	}
	given := o.given(plan.Unit)
	if _, err := given.TestCut(); err != nil {
		return err // before a deck is made in vain
	}
	deck, err := a.PrintedDeck(ctx, plan, o.deck)
	if err != nil {
		return err
	}
	lesson, err := given.Correct(deck, o.run)
	if err != nil {
		return err
	}
	if asJSON {
		err = output.CorrectionsJSON(a.Out, plan.Shop.Scale, &lesson)
	} else {
		err = screen.CorrectionsText(a.Out, plan.Shop.Scale, &lesson)
	}
	if err != nil {
		return err
	}
	a.tellToKeep(args[0], deck, &lesson)
	asked := slices.ContainsFunc(lesson.Corrections, func(c attable.Correction) bool { return c.What == "bit" && c.Ask != "" })
	switch {
	case !o.keep && (asked || lesson.Diameter == 0 || lesson.Diameter == lesson.Bit.True()):
		return nil
	case !o.keep: // what it would cost, before it is kept
		if err := a.tellDivided(ctx, plan, measuring(plan, &lesson), lesson.Diameter, "with that in the shop file: "); err != nil {
			a.Note("%v", err)
		}
		return nil
	case asked && !o.force:
		return errors.New("nothing was written: answer the question first; where it is what this run alone cut that you measured, say --force as well")
	}
	if err := a.keepMeasured(args[0], plan, &lesson); err != nil {
		return err
	}
	is, err := a.ReadPlan(args)
	if err != nil {
		return err
	}
	return a.tellDivided(ctx, plan, is, lesson.Diameter, "")
}

// usage finds flags that do not go together.
func (o correctOptions) usage(plan string) error {
	width := slices.ContainsFunc(o.measured, func(m *measuredFlag) bool { return m.flag == "width" && m.text != "" })
	switch {
	case o.run == "":
		return session.Usage(errors.New("which run was tested? Write its number behind the plan, as in fencecard correct bench.yaml 3.6 --depth 27/32"))
	case !o.measured.any():
		return session.Usage(fmt.Errorf("give one or more of %s, as measured on the test cut", o.measured.names("and")))
	case o.keep && !width:
		return session.Usage(errors.New("--keep needs --width: only the width of a cut shows the bit's diameter"))
	case o.keep && plan == "-":
		return session.Usage(errors.New("--keep needs a plan in a file, to find its shop file"))
	}
	return nil
}

// tellToKeep says how what the test cut taught of fence and bit is kept for the next
// batch, once it proved right, and that of the marks nothing is: they are drawn anew
// each time, from the bit's edges as it then stands, so what was off was the drawing.
func (a *app) tellToKeep(planFile string, d *deck.Deck, l *attable.Lesson) {
	at := slices.IndexFunc(d.Setups, func(s deck.Setup) bool { return strings.HasPrefix(l.Claimed.Number, strconv.Itoa(s.Number)+".") })
	if at < 0 || planFile == "-" {
		return
	}
	s, scale := &d.Setups[at], d.Plan.Shop.Scale
	var learnt []string
	marks := false
	for _, c := range l.Corrections {
		marks = marks || c.Move != "" && c.Ask == "" && (c.What == "start" || c.What == "stop")
		flag, computed, most := "--fence-stood", s.Fence.NearEdge, deck.MostLearnt
		if c.What == "height" && len(s.Heights) > 0 {
			flag, computed, most = "--height-stood", s.Heights[len(s.Heights)-1], deck.MostLearntHeight
		}
		if c.Stands != nil && (*c.Stands-computed).Abs() <= most {
			learnt = append(learnt, fmt.Sprintf("%s %q", flag, wording.WithUnit(scale, *c.Stands)))
		}
	}
	if marks {
		a.Note("marks are not kept: draw them by the sheet again next time; where they are off alike then, keep that with --note")
	}
	if learnt == nil {
		return
	}
	if strings.ContainsAny(planFile, " '\"") {
		planFile = strconv.Quote(planFile)
	}
	name := fmt.Sprintf("%q", l.Claimed.Cut)
	if s.Kept != nil && s.Kept.Name != "" {
		name = fmt.Sprintf("%q --force", s.Kept.Name)
	}
	a.Note("when the next test cut is right, keep it for all that is set like this:\nfencecard book keep %s --setup %d --name %s %s", planFile, s.Number, name, strings.Join(learnt, " "))
}

// keepMeasured writes the bit's true diameter into the file that has the bit.
func (a *app) keepMeasured(planFile string, plan *joinery.Plan, l *attable.Lesson) error {
	if l.Diameter == 0 {
		return errors.New("this cut does not show the bit's diameter: test a groove, with a wall on either side")
	}
	file := planFile
	switch plan.Shop.Name {
	case shopfile.BuiltInName:
		return errors.New("the plan uses the built-in shop, in which nothing can be kept; write a shop file with fencecard new --shop shop.yaml and name it in the plan with shop: shop.yaml")
	case planfile.ShopInPlanName:
	default:
		file = filepath.Join(filepath.Dir(planFile), plan.Shop.Name)
	}
	data, err := a.ReadFile(file)
	if err != nil {
		return err
	}
	kept, err := shopfile.KeepMeasured(file, data, l.Bit.Name, l.Diameter, plan.Shop.Scale)
	if err != nil {
		return err
	}
	if err := shelf.Replace(file, kept); err != nil {
		return fmt.Errorf("%s: %w", file, session.Cause(err))
	}
	a.Note("%s: the %s bit now measures %s; print the cards again: numbers of setups and runs may change", file, l.Bit.Name, plan.Shop.Scale.Spell(l.Diameter))
	return nil
}

// measuring is a plan whose shop has the bit as the test cut shows it.
func measuring(plan *joinery.Plan, l *attable.Lesson) *joinery.Plan {
	is := *plan
	is.Shop.Bits = slices.Clone(plan.Shop.Bits)
	if bit := is.Shop.Bit(l.Bit.Name); bit != nil {
		bit.Measured = l.Diameter
	}
	return &is
}

// tellDivided says what a plan takes more of with a bit as measured than it took. Both
// decks are made without a search, so that nothing but the bit makes the difference.
func (a *app) tellDivided(ctx context.Context, was, is *joinery.Plan, bit measure.Length, when string) error {
	before, err := setup.MakeWith(ctx, was, setup.Options{Plain: true})
	if err != nil {
		return err
	}
	after, err := setup.MakeWith(ctx, is, setup.Options{Plain: true})
	if err != nil {
		return fmt.Errorf("with the bit as measured the plan cannot be cut as it stands:\n%w", err)
	}
	for _, d := range whatif.DividedCuts(before, after) {
		a.Note("%s%s", when, d.Say(is.Shop.Scale, bit))
	}
	if more := len(after.Setups) - len(before.Setups); more > 0 {
		a.Note("%swithout a search the deck takes %s where it took %d", when, lists.Numbered(len(after.Setups), "setup"), len(before.Setups))
	}
	return nil
}
