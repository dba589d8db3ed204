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

// page builds a page of help out of the manual.
func page(name string) func(*app) *cobra.Command {
	return func(*app) *cobra.Command { return &cobra.Command{Long: topic(name)} }
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
