package manual

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
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
	h.part("Flags:", cmd.LocalFlags().FlagUsages())
	h.part("Flags of every command:", cmd.InheritedFlags().FlagUsages())
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
	wide := 0
	for _, c := range parent.Commands() {
		if name, ok := listed(c); ok {
			wide = max(wide, len(name))
		}
	}
	var b strings.Builder
	for _, c := range parent.Commands() {
		if name, ok := listed(c); ok {
			fmt.Fprintf(&b, "  %-*s   %s\n", wide, name, c.Short)
		}
	}
	return b.String()
}
