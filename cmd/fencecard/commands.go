package main

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
)

// entry is a command or a page of help as a list of them names it. The rest is
// built when it is asked for: building all flags of all commands would be half
// the time in which the program starts.
type entry struct {
	use, short string
	build      func(*app) *cobra.Command
}

// commands are those below the root.
func commands() []entry {
	return []entry{
		{"cards [PLAN]", "Print the setup sheets and piece cards of a plan", (*app).cardsCommand},
		{"bench [PLAN]", "Show the sheets in a browser, to read, tick and try at the table", (*app).benchCommand},
		{"new FILE", "Write a starter plan or shop file, or a plan from a list of pieces", (*app).newCommand},
		{"expand PLAN", "Print a plan with its joints and repeats spelt out as cuts", (*app).expandCommand},
		{"shop [FILE]", "Show what a shop file allows, bit by bit", (*app).shopCommand},
		{"wood [NAME]", "Show the table of woods, or one wood and what it allows", (*app).woodCommand},
		{"check [PLAN] [RUN]", "Prove a deck against its plan, or say what the table as set would cut", (*app).checkCommand},
		{"correct PLAN RUN", "From a test cut, say how to move fence, marks and bit", (*app).correctCommand},
		{"book", "Keep setups that worked, and find them again", (*app).bookCommand},
		{"version", "Print the version", (*app).versionCommand},
		{"man", "Write the manual page", (*app).manCommand},
	}
}

// pages are the pages of help without a command of their name: cobra lists a
// command without work as a help topic.
func pages() []entry {
	return []entry{
		{"plan", "How a plan is written", topicPage("plan")},
		{"joints", "How a joint is written once, and both its cuts follow", topicPage("joints")},
		{"safety", "What can hurt you at a router table", topicPage("safety")},
		{"words", "What the words of plan, sheet and page mean", topicPage("words")},
		{"warnings", "What every warning says", func(*app) *cobra.Command { return &cobra.Command{Long: manual.WarningTopic()} }},
	}
}

// unlisted are for those who make packages.
var unlisted = []string{"man"}

// errUnbuilt would tell of a command that ran although nobody had asked for it.
var errUnbuilt = errors.New("this command was listed, not built")

// whole is the entry with its flags and words.
func (e entry) whole(a *app) *cobra.Command {
	c := e.build(a)
	c.Use, c.Short = e.use, e.short
	c.Hidden = slices.Contains(unlisted, c.Name())
	return c
}

// named is what a list of commands shows of the entry.
func (e entry) named() *cobra.Command {
	return &cobra.Command{Use: e.use, Short: e.short, Hidden: slices.Contains(unlisted, e.name())}
}

// name is the word that asks for the entry.
func (e entry) name() string {
	name, _, _ := strings.Cut(e.use, " ")
	return name
}

// everything wants all commands whole.
func everything(string) bool { return true }

// wantedBy says which commands a command line can mean: those it names, and all
// where it asks for help or completion.
func wantedBy(args []string) func(name string) bool {
	for _, arg := range args {
		if arg == "help" || arg == "completion" || strings.HasPrefix(arg, "__complete") {
			return everything
		}
	}
	return func(name string) bool { return slices.Contains(args, name) }
}

// topicPage builds a page of help out of the manual.
func topicPage(name string) func(*app) *cobra.Command {
	return func(*app) *cobra.Command { return &cobra.Command{Long: manual.Topic(name)} }
}

// flagsOf are the flags of a command by its name, nil where there is none.
func flagsOf(name string) *pflag.FlagSet {
	for _, e := range commands() {
		if e.name() == name {
			return e.whole(&app{Session: &session.Session{}}).Flags()
		}
	}
	return nil
}
