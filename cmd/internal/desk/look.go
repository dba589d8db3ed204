package desk

import (
	"errors"
	"net/http"
	"unicode/utf16"

	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"
	"fencecard/setup"
)

type planText struct {
	Text string `json:"text"`
}

// remarkAt is something said at a place of the plan.
type remarkAt struct {
	// Line is that of the plan, from 1; 0 for what stands elsewhere.
	Line int `json:"line"`
	// From is where in the line, from 0, in the units in which a browser counts.
	From  int    `json:"from"`
	Words string `json:"words"`
}

type seen struct {
	Faults []remarkAt `json:"faults"`
}

// look says what is wrong with a text: as much as is known without a deck, so that
// it is there between two keys.
func (w Work) look(_ *http.Request, q planText) (seen, error) {
	plan, err := planfile.Read(w.name(), []byte(q.Text), w.Open)
	if err == nil {
		_, err = setup.Jobs(plan)
	}
	faults, err := w.faults(err)
	return seen{faults}, err
}

// faults gives an error that holds faults as such, and any other back.
func (w Work) faults(err error) ([]remarkAt, error) {
	all := []remarkAt{}
	var faults plantext.Faults
	if !errors.As(err, &faults) {
		return all, err
	}
	for _, f := range faults {
		words := f.Words()
		if f.Other.Known() {
			words += " (" + f.Other.String() + ": " + f.Clash + ")"
		}
		all = append(all, w.at(f.Place, plantext.Printable(words)))
	}
	return all, nil
}

func (w Work) at(p plantext.Place, words string) remarkAt {
	switch {
	case p.Known() && p.File == w.name():
		return remarkAt{p.Line, units(p.Source, p.Column-1), words}
	case p.Known():
		return remarkAt{Words: p.String() + ": " + words}
	}
	return remarkAt{Words: words}
}

// units counts the first characters of a line as a browser does.
func units(line string, characters int) int {
	n := 0
	for _, r := range line {
		if characters <= 0 {
			break
		}
		n += max(utf16.RuneLen(r), 1)
		characters--
	}
	return n
}
