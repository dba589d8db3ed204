package session

import (
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// AlsoSpelt takes flags of a command by other spellings too: the American ones, and
// those of earlier releases, which help no longer names.
func AlsoSpelt(cmd *cobra.Command, flagOf map[string]string) {
	cmd.Flags().SetNormalizeFunc(func(_ *pflag.FlagSet, name string) pflag.NormalizedName {
		if flag, ok := flagOf[name]; ok {
			name = flag
		}
		return pflag.NormalizedName(name)
	})
}
