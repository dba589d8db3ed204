package manual

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// Help is the help of a command. It shows what to type before what it means:
// whoever asks for help at the table has read the rest once. Written out here it
// takes half the time of a template.
func Help(cmd *cobra.Command) string {
	h := &help{}
	h.part("", cmd.Short)
	if cmd.Runnable() {
		h.part("", "  "+cmd.UseLine())
	}
	h.part("Examples:", cmd.Example)
	h.part("", cmd.Long)
	h.part("Commands:", commandList(cmd, func(c *cobra.Command) (string, bool) { return c.Name(), c.IsAvailableCommand() }))
	h.part("Flags:", flagList(cmd.LocalFlags()))
	h.part("Flags of every command:", flagList(cmd.InheritedFlags()))
	h.part("Help topics:", commandList(cmd, func(c *cobra.Command) (string, bool) { return c.CommandPath(), c.IsAdditionalHelpTopicCommand() }))
	if cmd.HasAvailableSubCommands() {
		h.part("", "'"+cmd.CommandPath()+" COMMAND --help' tells more of a command.")
	}
	return h.String()
}

type help struct{ strings.Builder }

// part writes a part under its heading, if it has anything, apart from the one
// before.
func (h *help) part(heading, text string) {
	if text = strings.TrimRight(text, " \n"); text == "" {
		return
	}
	if h.Len() > 0 {
		h.WriteString("\n")
	}
	if heading != "" {
		h.WriteString(heading + "\n")
	}
	h.WriteString(text + "\n")
}

// commandList lists some commands below one, the names in a column.
func commandList(parent *cobra.Command, listed func(*cobra.Command) (string, bool)) string {
	var all columns
	for _, c := range parent.Commands() {
		if name, ok := listed(c); ok {
			all = append(all, [2]string{name, c.Short})
		}
	}
	return all.String()
}

// flagList lists flags, what each takes beside its name. The library's own list has
// the types of Go there, and that a flag may be given as true.
func flagList(flags *pflag.FlagSet) string {
	var all columns
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		name := "    --" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", --" + f.Name
		}
		value, says := pflag.UnquoteUsage(f)
		if value != "" {
			name += " " + value
		}
		if value != "" && !slices.Contains([]string{"", "0", "[]"}, f.DefValue) {
			says += " (" + f.DefValue + " where not given)"
		}
		all = append(all, [2]string{name, says})
	})
	return all.String()
}

// columns are lines of a name and what it means, the names in a column.
type columns [][2]string

func (all columns) String() string {
	wide := 0
	for _, line := range all {
		wide = max(wide, len(line[0]))
	}
	var b strings.Builder
	for _, line := range all {
		says := strings.ReplaceAll(line[1], "\n", "\n"+strings.Repeat(" ", 2+wide+3))
		fmt.Fprintf(&b, "  %-*s   %s\n", wide, line[0], says)
	}
	return b.String()
}
