package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/session"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/output"
	"fencecard/output/screen"
)

// changeOptions are the flags of the wood change command.
type changeOptions struct {
	format, shop string
	width, unit  string
	from, to     float64
	rhFrom, rhTo float64
	temp         string
	byHumidity   bool
	unitGiven    bool
}

func (a *app) changeCommand() *cobra.Command {
	var o changeOptions
	cmd := &cobra.Command{
		Use:   "change NAME",
		Short: "How much a width of wood swells or shrinks",
		Long: `Work out how much a width of wood changes from one moisture content to another:
along the growth rings (tangential, a flat-sawn board) and across them (radial,
a quarter-sawn board). From 6 to 14 % it goes by the wood's coefficient, outside
by its shrinkage. Give the moisture content itself, or the humidity of the air.`,
		Example: `  fencecard wood change "white oak" --width 9.15 --from 8 --to 11
  fencecard wood change beech --width "230 mm" --rh-from 30 --rh-to 65 --temp 21C`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.byHumidity, o.unitGiven = cmd.Flags().Changed("rh-from"), cmd.Flags().Changed("unit")
			return a.work(func(context.Context, []string) error { return a.change(strings.Join(args, " "), o) })(cmd, args)
		},
	}
	session.FormatFlag(cmd, &o.format)
	session.ShopFlag(cmd, &o.shop)
	cmd.ValidArgsFunction = session.OfferWoods
	f := cmd.Flags()
	f.StringVar(&o.width, "width", "", "the `WIDTH` across the grain, as 9.15 or \"230 mm\"")
	f.StringVar(&o.unit, "unit", "in", "the `UNIT` of a bare width and of the answer, in or mm; else the unit that the width has")
	f.Float64Var(&o.from, "from", 0, "moisture content at the start, in `PERCENT`")
	f.Float64Var(&o.to, "to", 0, "moisture content at the end, in `PERCENT`")
	f.Float64Var(&o.rhFrom, "rh-from", 0, "relative humidity at the start, in `PERCENT`")
	f.Float64Var(&o.rhTo, "rh-to", 0, "relative humidity at the end, in `PERCENT`")
	f.StringVar(&o.temp, "temp", "70F", "the `TEMPERATURE` of the air, with --rh-from and --rh-to")
	session.Required(cmd, "width")
	cmd.MarkFlagsRequiredTogether("from", "to")
	cmd.MarkFlagsRequiredTogether("rh-from", "rh-to")
	cmd.MarkFlagsMutuallyExclusive("from", "rh-from")
	cmd.MarkFlagsOneRequired("from", "rh-from")
	session.Choices(cmd, "unit", "in", "mm")
	return cmd
}

func (a *app) change(name string, o changeOptions) error {
	asJSON, err := session.AsJSON(o.format)
	if err != nil {
		return err
	}
	c, err := a.workOutChange(name, o)
	if err != nil {
		return err
	}
	if asJSON {
		return output.ChangeJSON(a.Out, c)
	}
	return screen.Change(a.Out, c)
}

func (a *app) workOutChange(name string, o changeOptions) (c screen.WoodChange, err error) {
	unit, err := session.UnitNamed(o.unit)
	if err != nil {
		return c, err
	}
	shop, err := a.ReadShop(o.shop, unit)
	if err != nil {
		return c, err
	}
	c.Unit, c.From, c.To = unit, o.from, o.to
	if !o.unitGiven {
		c.Unit = measure.UnitOf(o.width, unit)
	}
	if c.Wood, _, err = findWood(name, shop.Woods); err != nil {
		return c, err
	}
	if c.Width, err = measure.ParseLength(o.width, unit); err != nil {
		return c, err
	}
	if o.byHumidity {
		if c.From, c.To, err = moistures(o); err != nil {
			return c, err
		}
	}
	tangential, err := c.Wood.Change(c.Width, c.From, c.To, timber.Tangential)
	if err != nil {
		return c, err
	}
	c.Tangential = &tangential
	// Some rows of the table have no radial figure; that stops nothing.
	if radial, err := c.Wood.Change(c.Width, c.From, c.To, timber.Radial); err == nil {
		c.Radial = &radial
	}
	return c, nil
}

// moistures turns the two humidities into moisture contents.
func moistures(o changeOptions) (from, to float64, err error) {
	air, err := timber.ParseTemperature(o.temp)
	if err != nil {
		return 0, 0, err
	}
	if from, err = timber.Moisture(air, o.rhFrom); err != nil {
		return 0, 0, err
	}
	to, err = timber.Moisture(air, o.rhTo)
	return from, to, err
}
