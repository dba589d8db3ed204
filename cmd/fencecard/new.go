package main

import (
	"context"

	"github.com/spf13/cobra"

	"fencecard/joinery/examples"
)

func (a *app) newCommand() *cobra.Command {
	var shop, force bool
	cmd := &cobra.Command{
		Use:   "new FILE",
		Short: "Write a starter plan or shop file",
		Long: `Write a starter plan, with comments, that runs as it is and is meant to be
written over. With --shop, write a starter shop file instead: your table, your
fence and your bits. FILE may be - for standard output.`,
		Example: `  fencecard new bench.yaml
  fencecard new --shop shop.yaml`,
		Args: cobra.ExactArgs(1),
		RunE: a.work(func(_ context.Context, args []string) error {
			text, what, next := examples.StarterPlan, "a starter plan", "fencecard cards "+args[0]
			if shop {
				text, what, next = examples.StarterShop, "a starter shop file", "name it in a plan: shop: "+args[0]
			}
			if args[0] == "-" {
				_, err := a.out.Write(text)
				return err
			}
			if err := a.writeFile(args[0], text, force); err != nil {
				return err
			}
			return a.tell("%s: %s\nNext: %s\n", args[0], what, next)
		}),
	}
	cmd.Flags().BoolVar(&shop, "shop", false, "write a shop file instead of a plan")
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is already there")
	return cmd
}
