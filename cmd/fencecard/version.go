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
		Example: "  fencecard version",
		Args:    cobra.NoArgs,
		RunE: a.work(func(context.Context, []string) error {
			_, err := fmt.Fprintln(a.Out, versionLine())
			return err
		}),
	}
}

// versionLine is the version, and what it was built with and for.
func versionLine() string {
	return fmt.Sprintf("fencecard %s (%s, %s/%s)", versionText(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
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
