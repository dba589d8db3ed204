package session

import (
	"context"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// Here is what the shell offers when a word is begun: plans, and what is in
// them. Nothing is told while it does; what cannot be read offers nothing.

const noFiles = cobra.ShellCompDirectiveNoFileComp

// OfferPlan offers plans for the first argument.
func OfferPlan(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, noFiles
	}
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// OfferPlanAndRun offers plans, and the runs of a plan behind it.
func (s *Session) OfferPlanAndRun(deck *Printed) completer {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) != 1 {
			return OfferPlan(cmd, args, begun)
		}
		return s.FromDeck(deck, RunWords)(cmd, args, begun)
	}
}

// RunWords are the numbers of a deck's runs, each with its piece and cut.
func RunWords(d *deck.Deck) []string {
	var words []string
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			words = append(words, cobra.CompletionWithDesc(r.Number(), r.Piece.Name+": "+r.Cut.Kind.Name+" "+r.Cut.Name))
		}
	}
	return words
}

// SetupWords are the numbers of a deck's setups, each with its bit.
func SetupWords(d *deck.Deck) []string {
	var words []string
	for i := range d.Setups {
		s := &d.Setups[i]
		words = append(words, cobra.CompletionWithDesc(strconv.Itoa(s.Number), s.Bit.Name))
	}
	return words
}

// FromDeck offers what the deck of the plan named has.
func (s *Session) FromDeck(p *Printed, words func(*deck.Deck) []string) completer {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		plan, err := s.Silently().ReadPlan(args)
		if err != nil {
			return nil, noFiles
		}
		if plan, err = setup.Batch(plan, max(1, p.Batch)); err != nil {
			return nil, noFiles
		}
		d, err := s.Silently().MadeOrRead(context.Background(), plan, *p)
		if err != nil {
			return nil, noFiles
		}
		return beginning(words(d), begun), noFiles
	}
}

// OfferPieces offers the pieces of the plan named.
func (s *Session) OfferPieces(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	plan, err := s.Silently().ReadPlan(args)
	if err != nil {
		return nil, noFiles
	}
	var names []string
	for i := range plan.Pieces {
		names = append(names, plan.Pieces[i].Name)
	}
	return beginning(names, begun), noFiles
}

// OfferWoods offers the names of woods for the first argument.
func OfferWoods(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 { // a name in several words
		return nil, noFiles
	}
	return OfferWoodFlag(cmd, nil, begun)
}

// OfferWoodFlag offers the names of woods.
func OfferWoodFlag(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	var names []string
	for _, w := range timber.Woods() {
		names = append(names, w.Name)
	}
	return beginning(names, begun), noFiles
}

// OfferKept offers the names of the setups in the book.
func (s *Session) OfferKept(flag *string) completer {
	return func(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, noFiles
		}
		b, err := s.Silently().ReadBook(*flag)
		if err != nil {
			return nil, noFiles
		}
		var names []string
		for _, e := range b.Entries() {
			names = append(names, cobra.CompletionWithDesc(e.Name, e.Code))
		}
		return beginning(names, begun), noFiles
	}
}

// beginning are the words that begin as typed.
func beginning(words []string, begun string) []string {
	var fit []string
	for _, word := range words {
		if strings.HasPrefix(strings.ToLower(word), strings.ToLower(begun)) {
			fit = append(fit, word)
		}
	}
	return fit
}
