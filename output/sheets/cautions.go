package sheets

import (
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// caution is one rule that holds everywhere. No standard is claimed.
type caution struct {
	weight deck.Weight
	text   string
}

// cautionPage is what holds at every run.
var cautionPage = []caution{
	{deck.Grave, "The manuals of router, table and bits, local rules and licensed practice come first; where they say otherwise, do as they say. This paper replaces neither, and claims no standard."},
	{deck.Grave, "Unplug the router before you change a bit, measure at it or set the fence; then turn the bit by hand once."},
	{deck.Grave, "Feed from right to left, against the turn of the bit. Never put work between bit and fence."},
	{deck.Grave, "Widen a channel only in the order of the runs, the fence moving away from the bit, or the bit climbs."},
	{deck.Grave, "Featherboards or jigs, push blocks; fence closed to the bit, all but the cut covered. Stand clear of the line of the work."},
	{deck.Grave, "No faster than the least of the speeds of bit, diameter and router. Sharp bits, the shank in to its mark, the collet tight."},
	{deck.Grave, "Eyes, ears and lungs protected, dust extracted. No gloves, loose sleeves or loose hair."},
	{deck.Noted, "Check the three orders against the pencilled marks each time. Cut all pieces of a set the same day: wood moves."},
}

// rules sets the rules that hold at every run.
func (s Setter) rules(w paper.Paper) paper.Block {
	if w < twoColumns {
		return s.rulesPhrase().Set(w)
	}
	return runOn(s.rulesPhrase(), 2, (w-4)/2, 4)
}

func (s Setter) rulesPhrase() paper.Phrase {
	var all paper.Phrase
	for _, c := range cautionPage {
		all = all.Say(s.bold(paper.Least), c.weight.String()).Say(s.Letters(paper.Least), c.text)
	}
	return all
}
