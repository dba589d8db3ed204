package main

import (
	"context"
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// version is set when a release is built, with -ldflags "-X main.version=...".
var version = ""

func (a *app) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version",
		Example: "  fencecard version",
		Args:    cobra.NoArgs,
		RunE: a.work(func(context.Context, []string) error {
			_, err := fmt.Fprintf(a.out, "fencecard %s (%s, %s/%s)\n",
				versionText(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return err
		}),
	}
}

func versionText() string {
	if version != "" {
		return version
	}
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "development build"
	}
	return info.Main.Version
}
