package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/search"
)

// searchFlag is how long the fewest changes are looked for. Commands that mean a
// printed deck have it too: its numbers come from the search.
type searchFlag time.Duration

func (s *searchFlag) flag(cmd *cobra.Command) {
	cmd.Flags().DurationVar((*time.Duration)(s), "search", search.DefaultTime, "look for the fewest changes for this long at the most; 0 for none")
}

// makeDeck makes a plan's deck. Meanwhile the first interrupt ends only the
// search.
func (a *app) makeDeck(ctx context.Context, plan *joinery.Plan, most searchFlag) (*deck.Deck, error) {
	if most < 0 {
		return nil, usageError{errors.New("--search takes a time such as 5s, or 0 for no search")}
	}
	searching, stop := callOff(ctx)
	defer stop()
	done := a.busy("looking for the fewest changes of the table, for " + time.Duration(most).String() + " at the most; Ctrl-C takes the best so far")
	defer done()
	d, err := setup.MakeWith(searching, plan, setup.Options{Plain: most == 0, Search: search.Limit{Time: time.Duration(most)}})
	if err != nil {
		return nil, err
	}
	switch d.Ended {
	case search.TimeUp:
		fmt.Fprintln(a.err, "the search for fewer changes was cut short: another run may make another deck")
	case search.CalledOff:
		fmt.Fprintln(a.err, "interrupted: the search for fewer changes was cut short, and these are the best cards found so far")
	}
	return d, nil
}
