package main

import (
	"context"
	"fmt"
	"io"
	"sync"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/terminal"
	"fencecard/cmd/internal/typed"
	"fencecard/setup/search/budget"
)

// Exit codes.
const (
	exitDone  = 0
	exitFault = 1 // the plan or the work is at fault
	exitUsage = 2 // the command line is
)

// exitStatuses are the exit codes as the manual page tells them. An interrupt
// ends the process by its signal, of which shells make 130.
var exitStatuses = []manual.ExitStatus{
	{Code: exitDone, Says: "All went well."},
	{Code: exitFault, Says: "The plan or the work is at fault."},
	{Code: exitUsage, Says: "The command line is at fault."},
	{Code: 130, Says: "Interrupted, as by Ctrl-C. While the fewest changes are looked for, the first interrupt ends only the search."},
}

// app is the program as one command line runs it.
type app struct {
	*session.Session
	screen  io.Writer // the terminal of the messages as it is, nil for none
	version bool      // the version was asked for by a flag
	started bool      // a command's own work began: an error is no longer usage
	pressed bool      // started by a press on the program, without a command
	serving sync.WaitGroup
}

// run is the whole program but for the process around it.
func run(ctx context.Context, args []string, s streams) int {
	byPress := len(args) == 0 && terminal.Pressed(s.in, s.out, s.err)
	out := &terminal.Watched{To: s.out}
	told, width := terminal.Messages(s.err)
	var screen io.Writer
	if width > 0 {
		screen = s.err
	}
	s.out, s.err = out, told
	a := &app{Session: &session.Session{In: s.in, Out: s.out, Err: s.err, Watched: width > 0}, screen: screen, pressed: byPress}
	root := a.rootCommand(wantedBy(args))
	root.SetArgs(typed.JoinLengths(args))
	cmd, err := root.ExecuteContextC(ctx)
	switch {
	case out.Err != nil:
		fmt.Fprintf(s.err, "standard output: %v\n", session.Cause(out.Err))
		return exitFault
	case err == nil:
		return exitDone
	case !a.started || session.IsUsage(err):
		fmt.Fprintf(s.err, "fencecard: %s\nTry '%s --help'.\n", terminal.Abridged(typed.Words(cmd, err, flagsOf)), cmd.CommandPath())
		return exitUsage
	}
	fmt.Fprintln(s.err, terminal.Abridged(err.Error()))
	return exitFault
}

// rootCommand is the program with the commands that are wanted, and the names of
// the others.
func (a *app) rootCommand(wanted func(name string) bool) *cobra.Command {
	cobra.MousetrapHelpText = ""
	root := &cobra.Command{
		Use:   "fencecard",
		Short: "Setup sheets and piece cards for cutting joints at the router table",
		Long: `fencecard reads a plan of the pieces on your bench and the joints to be cut in
them at the router table, and prints a sheet for every setup and a card for
every piece: which side goes down, which to the fence, which end leads, how far
the fence stands from the bit, how high the bit is raised, and where the work is
dropped on and lifted off.`,
		Example: `  fencecard cards                                 the deck of the built-in boot bench
  fencecard new bench.yaml                        a starter plan to write over
  fencecard cards bench.yaml                      its deck, in bench-cards.pdf
  fencecard check bench.yaml 3.6 --near 25/64     does the table stand right for run 3.6?`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          noSubcommand,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if a.version {
				return a.Tell("%s\n", versionLine())
			}
			if a.pressed {
				a.started = true
				return a.bench(cmd.Context(), nil, benchOptions{batch: 1, search: session.SearchFlag(budget.DefaultTime)})
			}
			return cmd.Help()
		},
		CompletionOptions: cobra.CompletionOptions{HiddenDefaultCmd: false},
	}
	root.SuggestionsMinimumDistance = 2
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { fmt.Fprint(a.Out, manual.Help(cmd)) })
	root.PersistentFlags().BoolVarP(&a.Quiet, "quiet", "q", false, "say nothing but what is wrong or warned of")
	root.Flags().BoolVar(&a.version, "version", false, "print the version")
	root.SetIn(a.In)
	root.SetOut(a.Out)
	root.SetErr(a.Err)
	for _, e := range commands() {
		if wanted(e.name()) {
			root.AddCommand(e.whole(a))
			continue
		}
		name := e.named()
		name.RunE = func(*cobra.Command, []string) error { return errUnbuilt }
		root.AddCommand(name)
	}
	for _, e := range pages() {
		if wanted(e.name()) {
			root.AddCommand(e.whole(a))
		} else {
			root.AddCommand(e.named())
		}
	}
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	refuseUnknown(root)
	return root
}

// noSubcommand turns a word that is no command into a usage error.
func noSubcommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	err := fmt.Errorf("%q is not a command of %s", args[0], cmd.CommandPath())
	if near := cmd.SuggestionsFor(args[0]); len(near) > 0 {
		err = fmt.Errorf("%w; did you mean %q?", err, near[0])
	}
	return err
}

// refuseUnknown mends cobra, which takes "fencecard group nope" and "help nope"
// for success.
func refuseUnknown(cmd *cobra.Command) {
	for _, c := range cmd.Commands() {
		if c.HasSubCommands() && c.Run == nil && c.RunE == nil || c.Name() == "completion" {
			c.Args = noSubcommand
			c.RunE = func(c *cobra.Command, _ []string) error { return c.Help() }
		}
		if c.Name() == "help" {
			c.Args = func(help *cobra.Command, args []string) error {
				if found, rest, err := cmd.Find(args); err != nil || len(rest) > 0 && found != help {
					return fmt.Errorf("there is no help on %q", args)
				}
				return nil
			}
		}
		refuseUnknown(c)
	}
}

// work wraps a command's own work, so that errors before it are usage errors.
func (a *app) work(f func(ctx context.Context, args []string) error) func(*cobra.Command, []string) error {
	return func(cmd *cobra.Command, args []string) error {
		a.started = true
		return f(cmd.Context(), args)
	}
}
