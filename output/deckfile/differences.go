package deckfile

import (
	"fmt"
	"slices"

	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// Differences compares what the runs of a deck that was read say besides their
// claims with what they would say now: what of the work the marks are set by,
// and the cautions; and likewise what the deck says of its joints, cautions and
// warnings. What a run does not say is not wrong. The deck is
// [proof.Deck] of the claims, with its cautions; the claims are proved.
func Differences(d *deck.Deck, claims *proof.Claims) []proof.Difference {
	var found []proof.Difference
	want := deckToJSON(d)
	if code := claims.Said.Code; code != "" && code != d.Code {
		found = append(found, proof.Difference{Field: "code",
			Text: fmt.Sprintf("the deck calls itself %s; by what it says its code is %s", wording.Quoted(code), d.Code)})
	}
	for i := range min(len(d.Setups), len(claims.Setups)) {
		runs := want.Setups[i].Runs
		if text := firstDifference("pair", claims.Setups[i].Marks, listOf(want.Setups[i].Marks)); text != "" {
			found = append(found, proof.Difference{Field: "marks", Text: fmt.Sprintf("setup %d: %s", d.Setups[i].Number, text)})
		}
		for j := range min(len(runs), len(claims.Setups[i].Runs)) {
			want, said := runs[j], claims.Setups[i].Runs[j].Said
			for _, diff := range differ(want, said) {
				diff.Run, diff.Piece, diff.Cut = want.Number, want.Piece, want.Cut
				found = append(found, diff)
			}
		}
	}
	return append(found, remarkDifferences(d, claims.Said)...)
}

func differ(want jsonRun, said proof.Said) []proof.Difference {
	var found []proof.Difference
	wrong := func(field string, got, want any) {
		found = append(found, proof.Difference{Field: field,
			Text: fmt.Sprintf("the run says %v for its %s; as the deck stands it should say %v", got, field, want)})
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
	if said.Card != 0 && said.Card != want.Card {
		wrong("piece card", said.Card, want.Card)
	}
	if said.Pair != nil && (want.Marks == nil || *said.Pair != *want.Marks) {
		wrong("pair of marks", wording.Quoted(*said.Pair), orNone(want.Marks))
	}
	guide("side that is up", said.Up, want.Up)
	for _, side := range said.TowardYou {
		guide("side toward you", side, want.TowardYou)
	}
	if said.Cautions != nil && !slices.Equal(said.Cautions, want.Cautions) {
		wrong("cautions", said.Cautions, want.Cautions)
	}
	return found
}

func orNone(text *string) string {
	if text == nil {
		return "none"
	}
	return *text
}
