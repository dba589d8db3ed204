package wording

import (
	"slices"
	"strconv"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// FitTrial is what is tried in scrap where a width comes from two settings.
type FitTrial struct {
	Says  string // "with setup 3 wide"
	Width measure.Length
}

// FitTrials are the trials of fit that end at a setup: at every run that is the last of
// those that give a channel its width, each pair of settings once.
func FitTrials(d *deck.Deck, u *deck.Setup) []FitTrial {
	var all []FitTrial
	seen := map[deck.Trial]bool{}
	for i := range u.Runs {
		r := &u.Runs[i]
		t, ok := deck.TrialOf(r.Channel, r.Piece.Size, r.Step)
		if !ok || seen[t] || r.Step.Position < r.Step.Of {
			continue
		}
		seen[t] = true
		all = append(all, FitTrial{fitWith(d, r), r.Channel.Width})
	}
	return all
}

// fitWith names the setups that the other runs of a channel are made at, those that the
// deck has: a part of one, or a setup from the book, knows nothing of the rest.
func fitWith(d *deck.Deck, last *deck.Run) string {
	if last.Step.Turned {
		return "turned, both runs wide"
	}
	var others []string
	for i := range d.Setups {
		u := &d.Setups[i]
		if slices.ContainsFunc(u.Runs, func(r deck.Run) bool {
			return r.Cut == last.Cut && r.Channel.Part == last.Channel.Part && r.Setup != last.Setup
		}) {
			others = append(others, strconv.Itoa(u.Number))
		}
	}
	switch rest := last.Step.Of - 1; {
	case len(others) < rest:
		return map[bool]string{true: "with its other setup wide", false: "with its other setups wide"}[rest == 1]
	case rest == 1:
		return "with setup " + others[0] + " wide"
	}
	return "with setups " + plantext.List(others, "and") + " wide"
}
