package main

import (
	"context"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// Here is what the shell offers when a word is begun: plans, and what is in
// them. Nothing is told while it does; what cannot be read offers nothing.

// completer offers words for an argument or a flag.
type completer = func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective)

const noFiles = cobra.ShellCompDirectiveNoFileComp

// offerPlan offers plans for the first argument.
func offerPlan(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, noFiles
	}
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// offerPlanAndRun offers plans, and the runs of a plan behind it.
func (a *app) offerPlanAndRun(deck *printed) completer {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) != 1 {
			return offerPlan(cmd, args, begun)
		}
		return a.fromDeck(deck, runWords)(cmd, args, begun)
	}
}

// runWords are the numbers of a deck's runs, each with its piece and cut.
func runWords(d *deck.Deck) []string {
	var words []string
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			words = append(words, cobra.CompletionWithDesc(r.Number(), r.Piece.Name+": "+r.Cut.Kind.Name+" "+r.Cut.Name))
		}
	}
	return words
}

// setupWords are the numbers of a deck's setups, each with its bit.
func setupWords(d *deck.Deck) []string {
	var words []string
	for i := range d.Setups {
		s := &d.Setups[i]
		words = append(words, cobra.CompletionWithDesc(strconv.Itoa(s.Number), s.Bit.Name))
	}
	return words
}

// fromDeck offers what the deck of the plan named has.
func (a *app) fromDeck(p *printed, words func(*deck.Deck) []string) completer {
	return func(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		plan, err := a.silently().readPlan(args)
		if err != nil {
			return nil, noFiles
		}
		if plan, err = setup.Batch(plan, max(1, p.batch)); err != nil {
			return nil, noFiles
		}
		d, err := a.silently().madeOrRead(context.Background(), plan, *p)
		if err != nil {
			return nil, noFiles
		}
		return beginning(words(d), begun), noFiles
	}
}

// offerPieces offers the pieces of the plan named.
func (a *app) offerPieces(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	plan, err := a.silently().readPlan(args)
	if err != nil {
		return nil, noFiles
	}
	var names []string
	for i := range plan.Pieces {
		names = append(names, plan.Pieces[i].Name)
	}
	return beginning(names, begun), noFiles
}

// offerWoods offers the names of woods for the first argument.
func offerWoods(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 { // a name in several words
		return nil, noFiles
	}
	return offerWoodFlag(cmd, nil, begun)
}

func offerWoodFlag(_ *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
	var names []string
	for _, w := range joinery.Woods() {
		names = append(names, w.Name)
	}
	return beginning(names, begun), noFiles
}

// offerKept offers the names of the setups in the book.
func (a *app) offerKept(flag *string) completer {
	return func(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, noFiles
		}
		b, err := a.silently().readBook(*flag)
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

// silently is a program that says nothing: a shell would print it into the line.
func (a *app) silently() *app {
	return &app{streams: streams{a.in, io.Discard, io.Discard}, quiet: true}
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

// offer gives a flag its words.
func offer(cmd *cobra.Command, flag string, words completer) {
	// The only error is a flag that does not exist.
	if err := cmd.RegisterFlagCompletionFunc(flag, words); err != nil {
		panic(err)
	}
}
