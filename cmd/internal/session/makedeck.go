package session

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/terminal"
	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/search/budget"
)

// SearchFlag is how long the fewest changes are looked for. Commands that mean a
// printed deck have it too: its numbers come from the search.
type SearchFlag time.Duration

// Flag adds the flag to a command.
func (s *SearchFlag) Flag(cmd *cobra.Command) {
	cmd.Flags().DurationVar((*time.Duration)(s), "search", budget.DefaultTime, "look for the fewest changes so long at the most, a `TIME` as 10s; 0 for none")
}

// MakeDeck makes a plan's deck. Meanwhile the first interrupt ends only the
// search.
func (s *Session) MakeDeck(ctx context.Context, plan *joinery.Plan, most SearchFlag) (*deck.Deck, error) {
	if most < 0 {
		return nil, Usage(errors.New("--search takes a time such as 5s, or 0 for no search"))
	}
	searching, stop := terminal.CallOff(ctx)
	defer stop()
	done := s.Busy("looking for the fewest changes of the table, for " + time.Duration(most).String() + " at the most; Ctrl-C takes the best so far")
	defer done()
	d, err := setup.MakeWith(searching, plan, setup.Options{Plain: most == 0, Search: budget.Limit{Time: time.Duration(most)}})
	if err != nil {
		return nil, err
	}
	switch d.Ended {
	case budget.TimeUp:
		fmt.Fprintln(s.Err, "the search for fewer changes was cut short: another run may make another deck")
	case budget.CalledOff:
		fmt.Fprintln(s.Err, "interrupted: the search for fewer changes was cut short, and these are the best cards found so far")
	}
	return d, nil
}
