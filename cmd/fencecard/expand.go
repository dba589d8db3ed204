package main

import (
	"context"
	"path/filepath"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/session"
	"fencecard/joinery/planfile"
)

func (a *app) expandCommand() *cobra.Command {
	return &cobra.Command{
		Long: `Print a plan with every joint and every repeat spelt out as cuts, and with every
length that was left to joints. It makes the same deck. Remarks stay where they
were, and one above each cut of a joint names the joint. PLAN may be - for
standard input.

What is printed is a plan like any other: keep it where a cut is to differ from
what the joint makes of it. 'fencecard help joints' tells how joints are written.`,
		Example: `  fencecard expand bench.yaml
  fencecard expand bench.yaml > bench-cuts.yaml`,
		Args:              cobra.ExactArgs(1),
		ValidArgsFunction: session.OfferPlan,
		RunE: a.work(func(_ context.Context, args []string) error {
			name := args[0]
			data, err := a.ReadFile(name)
			if err != nil {
				return err
			}
			folder := filepath.Dir(name)
			if name == "-" {
				name, folder = "stdin", "."
			}
			text, err := planfile.Expand(name, data, a.ShopIn(folder))
			if err != nil {
				return err
			}
			_, err = a.Out.Write(text)
			return err
		}),
	}
}
