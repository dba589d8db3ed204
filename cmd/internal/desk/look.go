package desk

import (
	"errors"
	"net/http"
	"slices"
	"strings"
	"unicode/utf16"

	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"
	"fencecard/output/page"
	"fencecard/setup"
)

type planText struct {
	Text string `json:"text"`
}

// remarkAt is something said at a place of the plan, whose line is 0 for what stands
// elsewhere.
type remarkAt struct {
	page.Spot
	Words string `json:"words"`
	// Plain are the words for one who has the forms before them and not the text; ""
	// where they were said before.
	Plain string `json:"plain"`
	// Also are other forms in which it may be mended.
	Also []page.Spot `json:"also,omitempty"`
}

type seen struct {
	Faults []remarkAt `json:"faults"`
	// Begins tells that the plan has no piece yet, which is no fault of one just begun.
	Begins bool `json:"begins"`
}

// look says what is wrong with a text: as much as is known without a deck, so that
// it is there between two keys.
func (w Work) look(_ *http.Request, q planText) (seen, error) {
	text, begins := []byte(q.Text), false
	if !w.isShop {
		text, begins = withAPiece(text)
	}
	plan, err := w.plan(text)
	if err == nil && !w.isShop {
		_, err = setup.Jobs(plan)
	}
	faults, err := w.faults(string(text), err)
	if begins {
		lines := strings.Count(q.Text, "\n") + 1
		faults = slices.DeleteFunc(faults, func(f remarkAt) bool { return f.Line > lines })
	}
	return seen{faults, begins}, err
}

// withAPiece puts a piece into a plan that has none, so that whatever else is wrong
// with it shows.
func withAPiece(text []byte) (with []byte, begins bool) {
	forms, err := planform.Read("", text)
	if err != nil || slices.ContainsFunc(forms, func(f planform.Form) bool {
		return f.Kind != planform.Plan && f.Under == planform.Top && f.Kind != planform.Shop
	}) {
		return text, false
	}
	with = text
	if plan := forms[0]; len(forms) == 1 && len(plan.Filled()) == 0 {
		plan.Set("unit", "in")
		if with, _, err = planform.Put(text, plan); err != nil {
			return text, false
		}
	}
	piece := planform.Blank(planform.Piece, "", with)
	for _, field := range piece.Fields {
		if field.Needed {
			piece.Set(field.Key, "10")
		}
	}
	with, _, err = planform.Put(with, piece)
	if err != nil {
		return text, false
	}
	return with, true
}

// faults gives an error that holds faults of a text as such, and any other back.
func (w Work) faults(text string, err error) ([]remarkAt, error) {
	all := []remarkAt{}
	var faults plantext.Faults
	if !errors.As(err, &faults) {
		return all, err
	}
	s := w.spotsIn(text)
	told := map[string]bool{}
	for _, f := range faults {
		words := f.Words()
		if f.Other.Known() {
			words += " (" + f.Other.String() + ": " + f.Clash + ")"
		}
		if f.Known() && f.File != w.name() {
			words = f.Place.String() + ": " + words
		}
		remark := remarkAt{s.at(f.Place), plantext.Printable(words), "", nil}
		plain := s.plainly(f)
		if plain == "" {
			plain = inForms(nil, remark.Words)
		}
		plain = s.theirShop(plain)
		remark.Also = s.also(remark.Spot, plain)
		if key := remark.At + plain; !told[key] {
			told[key], remark.Plain = true, plain
		}
		all = append(all, remark)
	}
	return all, nil
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
