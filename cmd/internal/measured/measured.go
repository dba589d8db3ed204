// Package measured puts what a maker measured at the table to a deck: by flags
// of a command, or typed on the bench page.
package measured

import (
	"errors"
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
)

// Measure is a length that can be measured.
type Measure struct{ Name, Says string }

// Table are the measures of the table as it stands.
func Table() []Measure {
	return []Measure{
		{"near", "as measured: fence face to the near edge of the bit; --fence is the same"},
		{"centre", "as measured: fence face to the centre of the bit"},
		{"far", "as measured: fence face to the far edge of the bit"},
		{"back-stop", "as measured: trailing (left) edge of the bit to the back stop"},
		{"start", "as measured: the start, from where to where the sheet says"},
		{"stop", "as measured: the stop, from where to where the sheet says"},
		{"height", "as measured: height of the bit above the table"},
	}
}

// Cut are the measures of a test cut.
func Cut() []Measure {
	return []Measure{
		{"setback", "as measured: from the side at the fence to the near wall"},
		{"width", "as measured: from wall to wall, of one run; at an end of the work, from the end to the shoulder"},
		{"begins", "as measured: from the leading end of the work to where the cut begins"},
		{"length", "as measured: along the work, round ends included"},
		{"depth", "as measured: at the last height"},
	}
}

// Given are the lengths that were measured, as typed, by the names of their
// measures.
type Given struct {
	Values map[string]string
	Unit   measure.Unit             // of a bare number
	Called func(name string) string // what a measure is called to whoever typed it: "--near"
}

// lengths reads what was given of some measures.
func (g Given) lengths(of []Measure) (map[string]*measure.Length, error) {
	read := map[string]*measure.Length{}
	var faults plantext.Faults
	for _, m := range of {
		text := g.Values[m.Name]
		if text == "" {
			continue
		}
		l, err := measure.ParseSpelled(text, g.Unit)
		var bad *measure.LengthError
		if errors.As(err, &bad) {
			faults.Add(plantext.Fault{Problem: fmt.Sprintf("%s: %q %s", g.Called(m.Name), bad.Text, bad.Problem), Remedy: bad.Remedy})
		}
		read[m.Name] = &l
	}
	return read, faults.Err()
}

// Settings reads what was measured on the table. The error is [plantext.Faults].
func (g Given) Settings() (attable.Settings, error) {
	l, err := g.lengths(Table())
	return attable.Settings{
		Near: l["near"], Centre: l["centre"], Far: l["far"],
		Start: l["start"], Stop: l["stop"], BackStop: l["back-stop"], Height: l["height"],
	}, err
}

// TestCut reads what was measured on a test cut. The error is [plantext.Faults].
func (g Given) TestCut() (attable.TestCut, error) {
	l, err := g.lengths(Cut())
	if err != nil {
		return attable.TestCut{}, err
	}
	var cut attable.TestCut
	var faults plantext.Faults
	for _, m := range []struct {
		name string
		to   *measure.Length
	}{{"setback", &cut.Setback}, {"width", &cut.Width}, {"begins", &cut.Begins}, {"length", &cut.Length}, {"depth", &cut.Depth}} {
		l := l[m.name]
		if l == nil {
			continue
		}
		*m.to = *l
		if *l <= 0 {
			called := g.Called(m.name)
			faults.Add(plantext.Fault{Problem: called + ": a test cut measures more than 0", Remedy: "leave " + called + " out where there is nothing to measure"})
		}
	}
	return cut, faults.Err()
}

// AsSet says what the table would cut as it was measured, in a run of a deck that
// proves.
func (g Given) AsSet(plan *joinery.Plan, claims *proof.Claims, run string) (attable.Standing, error) {
	s, err := g.Settings()
	if err != nil {
		return attable.Standing{}, err
	}
	return attable.AsSet(plan, claims, run, s)
}

// Correct says what a test cut of a run teaches.
func (g Given) Correct(d *deck.Deck, run string) (attable.Lesson, error) {
	cut, err := g.TestCut()
	if err != nil {
		return attable.Lesson{}, err
	}
	claims := proof.Of(d)
	return attable.Correct(d.Plan, &claims, run, cut)
}
