package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/manual"
)

// manCommand writes the manual page, for packagers. It is made of what the
// commands say of themselves, when it is asked for.
func (a *app) manCommand() *cobra.Command {
	return &cobra.Command{
		Long:    "Write the manual page in the form that man reads.",
		Example: "  fencecard man > fencecard.1",
		Args:    cobra.NoArgs,
		RunE: a.work(func(context.Context, []string) error {
			_, err := io.WriteString(a.Out, manual.Page(a.rootCommand(everything), versionText(), exitStatuses))
			return err
		}),
	}
}
