package main

import (
	"embed"
	"strings"

	"github.com/spf13/cobra"
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
		{Use: "safety", Short: "What can hurt you at a router table", Long: topic("safety")},
	}
}
