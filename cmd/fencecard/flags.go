package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"fencecard/joinery"
)

// Here are the flags that several commands have, and the reading of their
// values.

// formatFlag is the flag of commands that print text or JSON.
func formatFlag(cmd *cobra.Command, format *string) {
	cmd.Flags().StringVar(format, "format", "text", "text or json")
	choices(cmd, "format", "text", "json")
}

// asJSON checks the value of that flag.
func asJSON(format string) (bool, error) {
	if format != "text" && format != "json" {
		return false, usageError{fmt.Errorf("--format is text or json, not %q", format)}
	}
	return format == "json", nil
}

func shopFlag(cmd *cobra.Command, shop *string) {
	cmd.Flags().StringVar(shop, "shop", "", "the shop file `FILE`, for its bits and its own woods")
}

// unitNamed reads the value of a --unit flag.
func unitNamed(name string) (joinery.Unit, error) {
	for _, u := range []joinery.Unit{joinery.Inches, joinery.Millimetres} {
		if u.String() == name {
			return u, nil
		}
	}
	return joinery.Inches, usageError{fmt.Errorf("--unit is in or mm, not %q", name)}
}

// flagLength reads a length given to a flag, in the plan's unit.
func flagLength(faults *joinery.Faults, flag, text string, unit joinery.Unit) joinery.Length {
	l, err := joinery.ParseSpelled(text, unit)
	var bad *joinery.LengthError
	if errors.As(err, &bad) {
		faults.Add(joinery.Fault{Problem: fmt.Sprintf("--%s: %q %s", flag, bad.Text, bad.Problem), Remedy: bad.Remedy})
	}
	return l
}

// choices offers a flag's values to the shell.
func choices(cmd *cobra.Command, flag string, values ...string) {
	// The only error is a flag that does not exist.
	if err := cmd.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp)); err != nil {
		panic(err)
	}
}

// required marks a flag that must be given.
func required(cmd *cobra.Command, flag string) {
	// The only error is a flag that does not exist.
	if err := cmd.MarkFlagRequired(flag); err != nil {
		panic(err)
	}
}
