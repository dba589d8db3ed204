package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
	"fencecard/joinery/timber"
	"fencecard/output"
	"fencecard/output/screen"
)

// shopOptions are the flags of the shop command.
type shopOptions struct {
	format, unit string
	woods        []string
}

func (a *app) shopCommand() *cobra.Command {
	var o shopOptions
	cmd := &cobra.Command{
		Long: `Show what a shop allows: for every bit its top speed and rim speed, its deepest
and widest cut, and the greatest depth of one pass in each of your woods.

Without FILE the built-in example shop is shown. Without --wood it is the woods
of the shop file, or else one wood of each hardness.

` + manual.Topic("shop"),
		Example: `  fencecard shop
  fencecard shop shop.yaml --wood "white oak" --wood MDF
  fencecard new --shop shop.yaml               a shop file to begin with`,
		Args: cobra.MaximumNArgs(1),
		RunE: a.work(func(_ context.Context, args []string) error { return a.shop(args, o) }),
	}
	session.FormatFlag(cmd, &o.format)
	cmd.Flags().StringVar(&o.unit, "unit", "in", "the `UNIT` of a bare number where the file names none, in or mm")
	cmd.Flags().StringArrayVar(&o.woods, "wood", nil, "show the caps in this `WOOD`; may be given again")
	session.Choices(cmd, "unit", "in", "mm")
	cmd.ValidArgsFunction = session.OfferPlan
	session.Offer(cmd, "wood", session.OfferWoodFlag)
	return cmd
}

// oneOfEach has a wood of each hardness, for shops that name none of their own.
var oneOfEach = []string{"yellow-poplar", "black walnut", "white oak", "hickory, shagbark", "MDF", "plywood"}

func (a *app) shop(args []string, o shopOptions) error {
	asJSON, err := session.AsJSON(o.format)
	if err != nil {
		return err
	}
	unit, err := session.UnitNamed(o.unit)
	if err != nil {
		return err
	}
	shop, err := a.ReadShop(strings.Join(args, ""), unit)
	if err != nil {
		return err
	}
	woods, err := o.chosen(shop.Woods)
	if err != nil {
		return err
	}
	if len(args) == 0 {
		a.Note("fencecard: no shop file named, showing the built-in example shop")
	}
	if asJSON {
		return output.ShopJSON(a.Out, &shop, woods)
	}
	return screen.Shop(a.Out, &shop, woods)
}

// chosen are the woods named by flag, else the shop's own, else one of each
// hardness.
func (o shopOptions) chosen(own []timber.Wood) ([]timber.Wood, error) {
	names := o.woods
	if names == nil && len(own) > 0 {
		return own, nil
	}
	if names == nil {
		names = oneOfEach
	}
	woods := make([]timber.Wood, len(names))
	for i, name := range names {
		w, _, err := findWood(name, own)
		if err != nil {
			return nil, err
		}
		woods[i] = w
	}
	return woods, nil
}
