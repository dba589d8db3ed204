package main

import (
	"io"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
)

// What is listed by name alone must read as what is built whole, and a command
// must be built wherever its name stands among flags.
func TestCommandsAreBuiltWhenNamed(t *testing.T) {
	a := &app{Session: &session.Session{In: strings.NewReader(""), Out: io.Discard, Err: io.Discard}}
	none := a.rootCommand(func(string) bool { return false })
	require.Equal(t, manual.Help(a.rootCommand(everything)), manual.Help(none))
	for _, c := range none.Commands() {
		if c.RunE != nil && c.Name() != "help" && c.Name() != "completion" {
			require.ErrorIs(t, c.RunE(c, nil), errUnbuilt, c.Name())
		}
	}
	for _, line := range []string{"cards", "--out x.pdf cards", "-q cards --out x.pdf", "help cards", "__complete cards --", "completion bash"} {
		found, _, err := a.rootCommand(wantedBy(strings.Fields(line))).Find([]string{"cards"})
		require.NoError(t, err)
		require.NotNil(t, found.Flags().Lookup("out"), line)
	}
}

// A maker is told what to write behind a flag, not of what type of the language it is.
func TestFlagsNameTheirValuesForAMaker(t *testing.T) {
	a := &app{Session: &session.Session{In: strings.NewReader(""), Out: io.Discard, Err: io.Discard}}
	seen := 0
	var look func(c *cobra.Command)
	look = func(c *cobra.Command) {
		c.LocalFlags().VisitAll(func(f *pflag.Flag) {
			if value, _ := pflag.UnquoteUsage(f); value != "" {
				seen++
				require.Equal(t, strings.ToUpper(value), value, "%s --%s", c.CommandPath(), f.Name)
			}
		})
		for _, below := range c.Commands() {
			if below.Name() != "completion" {
				look(below)
			}
		}
	}
	look(a.rootCommand(everything))
	require.Greater(t, seen, 50)
}
