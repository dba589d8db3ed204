package wording

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/setup/proof/attable"
)

// Answer is what is said of one thing that was measured.
type Answer struct {
	What  string   // "fence", "start", "bit"
	Says  string   // what was measured and what it should be
	Do    []string // what to do, and what that takes for granted; none where all is right
	Makes []string // what it would cut; none where all of that is right, too
}

// Right reports whether nothing need be moved.
func (a Answer) Right() bool { return len(a.Do) == 0 }

// FindingAnswer is what is said of one setting as it stands on the table.
func FindingAnswer(scale measure.Scale, f attable.Finding) Answer {
	a := Answer{What: f.What, Says: fmt.Sprintf("%s %s", measured(scale, f.Measured), f.As)}
	if f.Measured != f.Wants {
		a.Says += ", where the sheet says " + measured(scale, f.Wants)
	}
	if f.Right() && !slices.ContainsFunc(f.Makes, func(m attable.Made) bool { return m.Words != "correct" }) {
		a.Says += ": correct"
		return a
	}
	if f.Move != "" {
		a.Do = []string{orElse(f.Ask, f.Move)}
	}
	for _, m := range f.Makes {
		a.Makes = append(a.Makes, fmt.Sprintf("%s %s from %s: %s", m.What, measured(scale, m.Would), m.From, m.Words))
	}
	return a
}

// CorrectionAnswer is what is said of one thing that a test cut taught.
func CorrectionAnswer(scale measure.Scale, c attable.Correction) Answer {
	a := Answer{What: c.What, Says: fmt.Sprintf("measured %s, should be %s", measured(scale, c.Measured), measured(scale, c.Wants))}
	if c.What == "bit" { // a bit's measure is written as it is
		a.Says = fmt.Sprintf("measured %s, should be %s", scale.Spell(c.Measured), scale.Spell(c.Wants))
	}
	if c.Move == "" {
		a.Says += ": correct"
		if c.Assumes != "" {
			a.Says += ", " + c.Assumes
		}
		return a
	}
	a.Do = []string{orElse(c.Ask, c.Move)}
	switch {
	case c.Stands == nil:
	case c.What == "height":
		a.Do = append(a.Do, "at full height the bit then stands at "+measured(scale, *c.Stands))
	default:
		a.Do = append(a.Do, "the fence then stands at "+measured(scale, *c.Stands)+" to the near edge")
	}
	if c.Assumes != "" {
		a.Do = append(a.Do, c.Assumes)
	}
	return a
}

// orElse asks first, where there is something to ask.
func orElse(ask, move string) string {
	if ask == "" {
		return move
	}
	return ask + " If not, " + move
}

// measured is a length on a card, or finer where the rule would round it.
func measured(scale measure.Scale, l measure.Length) string {
	if scale.On(l) {
		return scale.Format(l)
	}
	return scale.Fine(l) + " " + scale.Unit.String()
}

// WithUnit is a length with its unit, as it may be typed: exactly or, where that would
// take another unit than the scale's, as near as makes no difference at the table.
func WithUnit(scale measure.Scale, l measure.Length) string {
	unit := " " + scale.Unit.String()
	if exact := scale.Spell(l); strings.HasSuffix(exact, unit) {
		return exact
	}
	return scale.Fine(l) + unit
}
