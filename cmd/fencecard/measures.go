package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"fencecard/joinery"
)

// measure is a length that a maker measures and gives by a flag.
type measure struct {
	flag, says string
	text       string // "" where it was not measured
}

// String, Set and Type make it the value of a flag.
func (m *measure) String() string        { return m.text }
func (m *measure) Set(text string) error { m.text = text; return nil }
func (m *measure) Type() string          { return "LENGTH" }

type measures []*measure

// flags adds the flags. Some have another spelling.
func (ms measures) flags(cmd *cobra.Command) {
	for _, m := range ms {
		cmd.Flags().Var(m, m.flag, m.says)
	}
	cmd.Flags().SetNormalizeFunc(func(_ *pflag.FlagSet, name string) pflag.NormalizedName {
		if other, ok := otherSpellings[name]; ok && cmd.Flags().Lookup(other) != nil {
			name = other
		}
		return pflag.NormalizedName(name)
	})
}

var otherSpellings = map[string]string{"fence": "near", "center": "centre"}

// names are the flags, as --a, --b and --c.
func (ms measures) names(last string) string {
	names := make([]string, len(ms))
	for i, m := range ms {
		names[i] = m.flag
	}
	return flagList(names, last)
}

// given tells whether anything was measured.
func (ms measures) given() bool {
	for _, m := range ms {
		if m.text != "" {
			return true
		}
	}
	return false
}

// read reads the lengths that were given, by their flags.
func (ms measures) read(unit joinery.Unit) (map[string]*joinery.Length, error) {
	read := map[string]*joinery.Length{}
	var faults joinery.Faults
	for _, m := range ms {
		if m.text != "" {
			l := flagLength(&faults, m.flag, m.text, unit)
			read[m.flag] = &l
		}
	}
	return read, faults.Err()
}

// runNamed takes the number of a run from behind the plan, or from --card.
func runNamed(args []string, card string) (plan []string, run string, err error) {
	switch {
	case len(args) < 2:
		return args, card, nil
	case isPlan(args[1]) && !isPlan(args[0]):
		return nil, "", usageError{fmt.Errorf("the plan comes first, and the run behind it: %s %s", args[1], args[0])}
	case card != "":
		return nil, "", usageError{fmt.Errorf("%q and --card %s name a run twice: leave one out", args[1], card)}
	case args[1] == "":
		return nil, "", usageError{errors.New("the number of the run is empty: write it as it is printed, such as 3.6")}
	}
	return args[:1], args[1], nil
}
