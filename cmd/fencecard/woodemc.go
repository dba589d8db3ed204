package main

import (
	"context"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/session"
	"fencecard/joinery/timber"
	"fencecard/output"
	"fencecard/output/screen"
)

// emcOptions are the flags of the wood emc command.
type emcOptions struct {
	format   string
	temp     string
	humidity float64
}

func (a *app) emcCommand() *cobra.Command {
	var o emcOptions
	cmd := &cobra.Command{
		Use:   "emc",
		Short: "Moisture content that wood comes to in some air",
		Long: `Work out the moisture content, in percent, that wood comes to in time in air of
a temperature and a relative humidity (the equilibrium moisture content), by
the Hailwood-Horrobin equation.`,
		Example: `  fencecard wood emc --temp 70F --rh 65
  fencecard wood emc --temp 21C --rh 30 --format json`,
		Args: cobra.NoArgs,
		RunE: a.work(func(context.Context, []string) error { return a.emc(o) }),
	}
	session.FormatFlag(cmd, &o.format)
	cmd.Flags().StringVar(&o.temp, "temp", "70F", "the `TEMPERATURE` of the air, as 70F or 21C")
	cmd.Flags().Float64Var(&o.humidity, "rh", 0, "relative humidity in `PERCENT`")
	session.Required(cmd, "rh")
	return cmd
}

func (a *app) emc(o emcOptions) error {
	asJSON, err := session.AsJSON(o.format)
	if err != nil {
		return err
	}
	air, err := timber.ParseTemperature(o.temp)
	if err != nil {
		return err
	}
	moisture, err := timber.Moisture(air, o.humidity)
	if err != nil {
		return err
	}
	if asJSON {
		return output.EMCJSON(a.Out, air, o.humidity, moisture)
	}
	return screen.EMC(a.Out, air, o.humidity, moisture)
}
