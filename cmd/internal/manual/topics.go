// Package manual is the help: of a command, on a topic, and the manual page.
package manual

import (
	"embed"
	"fmt"
	"strings"

	"fencecard/setup/remark"
)

//go:embed topics/*.txt
var topicFiles embed.FS

// Topic returns a page of the manual, the file topics/NAME.txt. A command of
// the same name carries it in its own help.
func Topic(name string) string {
	text, err := topicFiles.ReadFile("topics/" + name + ".txt")
	if err != nil {
		panic(err) // an embedded file is missing from the build
	}
	return strings.TrimSpace(string(text))
}

// WarningTopic lists the warnings from their table.
func WarningTopic() string {
	var b strings.Builder
	b.WriteString(`A warning does not stop the work. It is shown on the screen with its place in the
plan and stands on the run sheet; the word behind it, listed here, is its name, and
the words beside it say what to change.

`)
	for _, c := range remark.WarningCodes() {
		fmt.Fprintf(&b, "  %-18s  %s\n", c.Code, c.Says)
	}
	b.WriteString("\nThe cautions of a card are listed behind its deck.")
	return b.String()
}
