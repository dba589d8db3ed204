package main

import (
	"context"
	"errors"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/lists"
	"fencecard/cmd/internal/manual"
	"fencecard/joinery/examples"
)

// newOptions are the flags of the new command.
type newOptions struct {
	shop, force bool
	list        lists.Options
}

func (a *app) newCommand() *cobra.Command {
	var o newOptions
	cmd := &cobra.Command{
		Long: `Write a starter plan, with comments, that runs as it is and is meant to be
written over. With --shop, write a starter shop file instead: your table, your
fence and your bits. With --from, make the plan of a list of pieces that you
keep in a spreadsheet. FILE may be - for standard output.

` + manual.Topic("list"),
		Example: `  fencecard new bench.yaml
  fencecard new --shop shop.yaml
  fencecard new table.yaml --from pieces.csv
  fencecard new table.yaml --from pieces.csv --defaults
  fencecard new table.yaml --from pieces.csv --unit in --column wood=wood
  fencecard new --from pieces.csv --against bench.yaml`,
		Args: func(cmd *cobra.Command, args []string) error {
			if o.list.Against != "" && len(args) > 0 {
				return errors.New("--against writes nothing and takes no FILE: fencecard new --from LIST --against PLAN")
			}
			if o.list.Against != "" {
				return nil
			}
			return cobra.ExactArgs(1)(cmd, args)
		},
		RunE: a.work(func(ctx context.Context, args []string) error {
			if err := o.list.Check(o.shop); err != nil {
				return err
			}
			switch {
			case o.list.Against != "":
				return lists.Compare(a.Session, o.list)
			case o.list.From != "":
				return lists.Make(a.Session, args[0], o.list, o.force)
			}
			return a.newStarter(args[0], o)
		}),
	}
	f := cmd.Flags()
	f.BoolVar(&o.shop, "shop", false, "write a shop file instead of a plan")
	f.BoolVar(&o.force, "force", false, "write over a file that is already there")
	o.list.Add(cmd)
	return cmd
}

// newStarter writes one of the files to begin with.
func (a *app) newStarter(name string, o newOptions) error {
	text, what, next := examples.StarterPlan, "a starter plan", "fencecard cards "+name
	if o.shop {
		text, what, next = examples.StarterShop, "a starter shop file", "name it in a plan: shop: "+name
	}
	if name == "-" {
		_, err := a.Out.Write(text)
		return err
	}
	if err := a.WriteFile(name, text, o.force); err != nil {
		return err
	}
	return a.Wrote("%s: %s\nNext: %s\n", name, what, next)
}
