package session

import "github.com/spf13/cobra"

// completer offers words for an argument or a flag.
type completer = func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective)

// Offer gives a flag its words.
func Offer(cmd *cobra.Command, flag string, words completer) {
	// The only error is a flag that does not exist.
	if err := cmd.RegisterFlagCompletionFunc(flag, words); err != nil {
		panic(err)
	}
}
