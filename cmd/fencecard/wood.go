package main

import (
	"context"
	"fmt"
	"strings"

	"fencecard/cmd/internal/session"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
	"fencecard/output"
	"fencecard/output/screen"

	"github.com/spf13/cobra"
)

// woodOptions are the flags of the wood command.
type woodOptions struct {
	format string
	shop   string
}

func (a *app) woodCommand() *cobra.Command {
	var o woodOptions
	cmd := &cobra.Command{
		Long: `Show the table of woods: side hardness, shrinkage and change of dimension, each
figure marked as published or from memory. With NAME, show one wood and the
greatest depth of one pass in it for each bit of the shop.

A name may be written as people write it: white ash; ash, white; Fraxinus
americana.`,
		Example: `  fencecard wood
  fencecard wood white oak
  fencecard wood "ash, white" --format json
  fencecard wood emc --temp 70F --rh 65
  fencecard wood change "white oak" --width 9.15 --from 8 --to 11`,
		Args: cobra.ArbitraryArgs,
		RunE: a.work(func(_ context.Context, args []string) error { return a.wood(args, o) }),
	}
	session.FormatFlag(cmd, &o.format)
	session.ShopFlag(cmd, &o.shop)
	cmd.ValidArgsFunction = session.OfferWoods
	cmd.AddCommand(a.emcCommand(), a.changeCommand())
	return cmd
}

func (a *app) wood(args []string, o woodOptions) error {
	asJSON, err := session.AsJSON(o.format)
	if err != nil {
		return err
	}
	shop, err := a.ReadShop(o.shop, measure.Inches)
	if err != nil {
		return err
	}
	if len(args) == 0 {
		woods := append(shop.Woods, timber.Woods()...)
		if asJSON {
			return output.WoodsJSON(a.Out, woods)
		}
		return screen.Woods(a.Out, woods)
	}
	wood, remark, err := findWood(strings.Join(args, " "), shop.Woods)
	if err != nil {
		return err
	}
	if asJSON {
		return output.WoodJSON(a.Out, wood, &shop, remark)
	}
	return screen.Wood(a.Out, wood, &shop, remark)
}

// findWood looks a wood up, or says which could be meant.
func findWood(name string, own []timber.Wood) (wood timber.Wood, remark string, err error) {
	wood, suggestion, ok := timber.FindWood(name, own...)
	if ok {
		return wood, suggestion, nil
	}
	f := plantext.Fault{Problem: fmt.Sprintf("%q is no wood of the table", name), Remedy: "fencecard wood lists them"}
	if suggestion != "" {
		f.Remedy = "write " + suggestion
	}
	return wood, "", plantext.Faults{f}
}
