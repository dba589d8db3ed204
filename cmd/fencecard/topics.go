package main

import (
	"embed"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/setup/remark"
)

//go:embed topics/*.txt
var topicFiles embed.FS

// topic returns a page of the manual, the file topics/NAME.txt. A command of
// the same name carries it in its own help.
func topic(name string) string {
	text, err := topicFiles.ReadFile("topics/" + name + ".txt")
	if err != nil {
		panic(err) // an embedded file is missing from the build
	}
	return strings.TrimSpace(string(text))
}

// topicCommands are the pages without a command of their name: cobra lists a
// command without work as a help topic.
func topicCommands() []*cobra.Command {
	return []*cobra.Command{
		{Use: "plan", Short: "How a plan is written", Long: topic("plan")},
		{Use: "joints", Short: "How a joint is written once, and both its cuts follow", Long: topic("joints")},
		{Use: "safety", Short: "What can hurt you at a router table", Long: topic("safety")},
		{Use: "warnings", Short: "What every warning says", Long: warningTopic()},
	}
}

// warningTopic lists the warnings from their table.
func warningTopic() string {
	var b strings.Builder
	b.WriteString(`A warning does not stop the work. It is told on standard error with its place in
the plan, on the run sheet, and in the text and JSON of a deck, where its code
stands; the words beside it say what to change.

`)
	for _, c := range remark.WarningCodes() {
		fmt.Fprintf(&b, "  %-18s  %s\n", c.Code, c.Says)
	}
	b.WriteString("\nThe cautions of a card are listed behind its deck.")
	return b.String()
}
