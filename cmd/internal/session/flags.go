package session

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
)

// Here are the flags that several commands have, and the reading of their
// values.

// ShopFlag is the flag that names a shop file.
func ShopFlag(cmd *cobra.Command, shop *string) {
	cmd.Flags().StringVar(shop, "shop", "", "the shop file `FILE`, for its bits and its own woods")
}

// UnitNamed reads the value of a --unit flag.
func UnitNamed(name string) (measure.Unit, error) {
	for _, u := range []measure.Unit{measure.Inches, measure.Millimetres} {
		if u.String() == name {
			return u, nil
		}
	}
	return measure.Inches, Usage(fmt.Errorf("--unit is in or mm, not %q", name))
}

// FlagLength reads a length given to a flag, in the plan's unit.
func FlagLength(faults *plantext.Faults, flag, text string, unit measure.Unit) measure.Length {
	l, err := measure.ParseSpelled(text, unit)
	var bad *measure.LengthError
	if errors.As(err, &bad) {
		faults.Add(plantext.Fault{Problem: fmt.Sprintf("--%s: %q %s", flag, bad.Text, bad.Problem), Remedy: bad.Remedy})
	}
	return l
}

// Choices offers a flag's values to the shell.
func Choices(cmd *cobra.Command, flag string, values ...string) {
	// The only error is a flag that does not exist.
	if err := cmd.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp)); err != nil {
		panic(err)
	}
}

// Required marks a flag that must be given.
func Required(cmd *cobra.Command, flag string) {
	// The only error is a flag that does not exist.
	if err := cmd.MarkFlagRequired(flag); err != nil {
		panic(err)
	}
}
