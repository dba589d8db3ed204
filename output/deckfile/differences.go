package deckfile

import (
	"fmt"
	"slices"

	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// Differences compares what the cards of a deck that was read say besides their
// claims with what they would say now: what of the work the marks are set by,
// and the cautions; and likewise what the deck says of its joints, cautions and
// warnings. What a card does not say is not wrong. The deck is
// [proof.Deck] of the claims, with its cautions; the claims are proved.
func Differences(d *deck.Deck, claims *proof.Claims) []proof.Difference {
	var found []proof.Difference
	s := Scale(d.Plan.Shop.Scale)
	for i := range min(len(d.Setups), len(claims.Setups)) {
		runs := d.Setups[i].Runs
		for j := range min(len(runs), len(claims.Setups[i].Cards)) {
			want, said := s.card(&runs[j], d.Plan.Shop.Fence), claims.Setups[i].Cards[j].Said
			for _, diff := range differ(want, said) {
				diff.Card, diff.Piece, diff.Cut = want.Number, want.Piece, want.Cut
				found = append(found, diff)
			}
		}
	}
	return append(found, remarkDifferences(d, claims.Said)...)
}

func differ(want jsonCard, said proof.Said) []proof.Difference {
	var found []proof.Difference
	wrong := func(field string, got, want any) {
		found = append(found, proof.Difference{Field: field,
			Text: fmt.Sprintf("the card says %v for its %s; as the deck stands it should say %v", got, field, want)})
	}
	guide := func(field, got, want string) {
		if got != "" && got != want {
			wrong(field, wording.Quoted(got), want)
		}
	}
	if want.Start != nil {
		guide("start, guide", said.StartGuide, want.Start.Guide)
	}
	if want.Stop != nil {
		guide("stop, guide", said.StopGuide, want.Stop.Guide)
	}
	if said.Cautions != nil && !slices.Equal(said.Cautions, want.Cautions) {
		wrong("cautions", said.Cautions, want.Cautions)
	}
	return found
}
