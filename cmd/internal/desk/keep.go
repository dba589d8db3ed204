package desk

import (
	"context"
	"errors"
	"net/http"
	"os"
	"slices"
	"strings"
	"time"

	"fencecard/cmd/internal/desk/merge"
	"fencecard/cmd/internal/measured"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/output/wording"
	"fencecard/setup/book"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
)

// Shelf is where the desk keeps what the table taught; what is nil is not kept here.
type Shelf struct {
	// Shop changes a shop file that a plan names.
	Shop func(ctx context.Context, name string, change func(old []byte) ([]byte, error)) error
	// Book puts a setup into the setup book, in the place of one of its name only
	// where that is said.
	Book func(ctx context.Context, e *book.Entry, instead bool) error
}

// learnt is what was measured after a setup was cut, and what is to be kept of it.
type learnt struct {
	planText
	Setup int    `json:"setup"`
	Width string `json:"width"` // of a groove that one run cut

	Name    string `json:"name"` // of the setup in the book
	Note    string `json:"note"`
	Fence   string `json:"fence"`  // where it stood
	Height  string `json:"height"` // where the bit stood
	Instead bool   `json:"instead"`

	Do string `json:"do"`
}

// What is kept.
const (
	theBit   = "bit"
	theSetup = "setup"
)

// lesson is what follows, and the text as it is then.
type lesson struct {
	Says []string `json:"says"`
	Text string   `json:"text"`
}

// learn says what a measured groove means, or keeps the bit or the setup.
func (w Work) learn(r *http.Request, q learnt) (lesson, error) {
	d, err := w.deck(r, q.planText)
	if err != nil {
		return lesson{}, plainFault(err)
	}
	at := slices.IndexFunc(d.Setups, func(u deck.Setup) bool { return u.Number == q.Setup })
	if at < 0 {
		return lesson{}, Conflict("the plan has no such setup any more")
	}
	if q.Do == theSetup {
		return w.keepSetup(r.Context(), d, q)
	}
	learnt, err := grooveOf(d, &d.Setups[at], q.Width)
	if err != nil {
		return lesson{}, plainFault(err)
	}
	said := lesson{Text: q.Text}
	for _, c := range learnt.Corrections {
		a := wording.CorrectionAnswer(d.Plan.Shop.Scale, c)
		said.Says = append(append(said.Says, a.Says), a.Do...)
	}
	if q.Do != theBit {
		return said, nil
	}
	return w.keepBit(r.Context(), d, learnt, q)
}

// grooveOf puts the width of a groove to the first run of a setup that shows the bit's
// diameter by it.
func grooveOf(d *deck.Deck, u *deck.Setup, width string) (attable.Lesson, error) {
	if strings.TrimSpace(width) == "" {
		return attable.Lesson{}, unfit("say how wide the groove is that one run cut, such as 0.372")
	}
	given := measured.Given{Values: map[string]string{"width": width}, Unit: d.Plan.Unit, Called: func(string) string { return "the width of the groove" }}
	claims := proof.Of(d)
	can := attable.AllMeasures(d.Plan, &claims)
	for i := range u.Runs {
		number := u.Runs[i].Number()
		if !slices.ContainsFunc(can[number].Cut, func(m attable.Measure) bool { return m.Name == "width" }) {
			continue
		}
		l, err := given.Correct(d, number)
		if err != nil && statusOf(err) == http.StatusInternalServerError {
			err = unfit(err.Error()) // of the width alone
		}
		if err != nil || l.Diameter != 0 {
			return l, err
		}
	}
	return attable.Lesson{}, unfit("no cut of this setup shows the bit's diameter: cut a groove in scrap, a wall on either side, at another setup of this bit")
}

// keepBit writes a bit's true diameter where the bit stands: into the plan's text,
// which the maker saves, or into the shop file.
func (w Work) keepBit(ctx context.Context, d *deck.Deck, l attable.Lesson, q learnt) (lesson, error) {
	shop := &d.Plan.Shop
	says := lesson{Says: []string{"the " + l.Bit.Name + " is " + shop.Scale.Spell(l.Diameter) + " from now on; print the sheets anew: their numbers may have changed"}, Text: q.Text}
	change := func(name string, old []byte) ([]byte, error) {
		return shopfile.KeepMeasured(name, old, l.Bit.Name, l.Diameter, shop.Scale)
	}
	switch shop.Name {
	case shopfile.BuiltInName:
		return lesson{}, unfit("the plan is made for the built-in example shop, in which nothing is kept: put in your own, among the forms, under table, fence and bits")
	case planfile.ShopInPlanName:
		text, err := change(w.name(), []byte(q.Text))
		says.Text = string(text)
		return says, plainFault(err)
	}
	if w.Shop == nil {
		return lesson{}, unfit("no shop file is written from here")
	}
	err := w.Shop(ctx, shop.Name, func(old []byte) ([]byte, error) {
		if old == nil {
			return nil, Conflict("the shop file " + shop.Name + " is not there any more")
		}
		return change(shop.Name, old)
	})
	return says, plainFault(err)
}

// keepSetup puts a setup of the plan, as it is saved, into the book.
func (w Work) keepSetup(ctx context.Context, d *deck.Deck, q learnt) (lesson, error) {
	if w.Book == nil {
		return lesson{}, unfit("no setup book is kept from here")
	}
	if holds, err := os.ReadFile(w.Path); err != nil || !merge.Same(string(holds), q.Text) {
		return lesson{}, Conflict("save the plan first: the book says which plan a setup is from")
	}
	keeping := book.Keeping{Name: q.Name, From: w.name(), On: time.Now()}
	if note := strings.TrimSpace(q.Note); note != "" {
		keeping.Notes = []string{note}
	}
	for _, stood := range []struct {
		text, called string
		to           **measure.Length
	}{{q.Fence, "where the fence stood", &keeping.Stood.Fence}, {q.Height, "where the bit stood", &keeping.Stood.Height}} {
		if strings.TrimSpace(stood.text) == "" {
			continue
		}
		length, err := measure.ParseSpelled(stood.text, d.Plan.Unit)
		if bad := (*measure.LengthError)(nil); errors.As(err, &bad) {
			return lesson{}, unfit(stood.called + ": " + bad.Problem + "; " + bad.Remedy)
		}
		*stood.to = &length
	}
	e, err := book.Keep(d, q.Setup, keeping)
	if err == nil {
		err = w.Book(ctx, e, q.Instead)
	}
	if err != nil {
		return lesson{}, plainFault(err)
	}
	return lesson{Says: []string{"it is in the setup book as " + e.Name + ", and stands beside the setup the next time it is needed"}, Text: q.Text}, nil
}
