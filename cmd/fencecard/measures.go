package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/measured"
	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/typed"
	"fencecard/joinery/measure"
)

// atTable is what check and correct have alike: the run of a deck, and what a maker
// measured there and gives by flags.
type atTable struct {
	format   string
	deck     session.Printed
	run      string
	measured measures
}

// flags adds the flags; tested says what of the run is asked about.
func (o *atTable) flags(a *app, cmd *cobra.Command, tested string, all []measured.Measure) {
	session.FormatFlag(cmd, &o.format)
	o.deck.Flags(cmd)
	session.BookFlag(cmd, &o.deck.Book)
	cmd.ValidArgsFunction = a.OfferPlanAndRun(&o.deck)
	cmd.Flags().StringVar(&o.run, "run", "", "the run that "+tested+", by its `NUMBER`: the same as RUN")
	session.Offer(cmd, "run", a.FromDeck(&o.deck, session.RunWords))
	for _, m := range all {
		o.measured = append(o.measured, &measuredFlag{flag: m.Name, says: m.Says})
	}
	o.measured.flags(cmd)
}

// named takes the run off the arguments, and reads how the answer is written.
func (o *atTable) named(args []string) (plan []string, inJSON bool, err error) {
	if inJSON, err = session.AsJSON(o.format); err != nil {
		return nil, false, err
	}
	if plan, o.run, err = runNamed(args, o.run); err != nil {
		return nil, false, err
	}
	o.run, err = o.deck.TakeCode(o.run)
	return plan, inJSON, err
}

// given is what was measured, in the plan's unit.
func (o *atTable) given(unit measure.Unit) measured.Given {
	values := map[string]string{}
	for _, m := range o.measured {
		values[m.flag] = m.text
	}
	return measured.Given{Values: values, Unit: unit, Called: func(name string) string { return "--" + name }}
}

// measuredFlag is a length that a maker measures and gives by a flag.
type measuredFlag struct {
	flag, says string
	text       string // "" where it was not measured
}

// String, Set and Type make it the value of a flag.
func (m *measuredFlag) String() string        { return m.text }
func (m *measuredFlag) Set(text string) error { m.text = text; return nil }
func (m *measuredFlag) Type() string          { return "LENGTH" }

type measures []*measuredFlag

func (ms measures) flags(cmd *cobra.Command) {
	spelt := map[string]string{"card": "run"}
	for _, m := range ms {
		cmd.Flags().Var(m, m.flag, m.says)
		if other, ok := otherSpellings[m.flag]; ok {
			spelt[other] = m.flag
		}
	}
	session.AlsoSpelt(cmd, spelt)
}

var otherSpellings = map[string]string{"near": "fence", "centre": "center"}

// names are the flags, as --a, --b and --c.
func (ms measures) names(last string) string {
	names := make([]string, len(ms))
	for i, m := range ms {
		names[i] = m.flag
	}
	return typed.FlagList(names, last)
}

// any tells whether anything was measured.
func (ms measures) any() bool {
	for _, m := range ms {
		if m.text != "" {
			return true
		}
	}
	return false
}

// runNamed takes the number of a run from behind the plan, or from --run.
func runNamed(args []string, flag string) (plan []string, run string, err error) {
	switch {
	case len(args) < 2:
		return args, flag, nil
	case session.IsPlan(args[1]) && !session.IsPlan(args[0]):
		return nil, "", session.Usage(fmt.Errorf("the plan comes first, and the run behind it: %s %s", args[1], args[0]))
	case flag != "":
		return nil, "", session.Usage(fmt.Errorf("%q and --run %s name a run twice: leave one out", args[1], flag))
	case args[1] == "":
		return nil, "", session.Usage(errors.New("the number of the run is empty: write it as it is printed, such as 3.6"))
	}
	return args[:1], args[1], nil
}
