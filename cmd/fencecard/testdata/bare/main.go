// Command bare is what starting up is measured against: a program of one
// command that does nothing.
package main

import (
	"os"

	"github.com/spf13/cobra"
)

func main() {
	root := &cobra.Command{Use: "bare", Short: "Do nothing", Run: func(*cobra.Command, []string) {}}
	if root.Execute() != nil {
		os.Exit(1)
	}
}
