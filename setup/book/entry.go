package book

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/remark"
)

// Entry is one kept setup.
type Entry struct {
	Name  string
	Code  string // from the contents, see [Code]
	Date  string // when it was kept, "2006-01-02"; "" when not said
	From  string // where it came from, in words
	Notes []string
	Setup deck.Setup    // its number is 1
	Shop  *joinery.Shop // shared by entries of one shop
	Stood Stood         // corrections from test cuts
	Marks []Stood       // the same for the marks of each run

	// Edited is where the book gives another code than the contents make: they
	// were changed by hand, or spoiled.
	Edited plantext.Place
}

// Stood is where something stood after the test cut; nil where it stood as
// planned or nobody said.
type Stood struct {
	Fence, Height *measure.Length // of a setup: to the near edge, and at full height
	Start, Stop   *measure.Length // of a run: from the leading end to the edge of the bit
}

// Keeping is what a maker says of a setup when keeping it.
type Keeping struct {
	Name  string
	Notes []string
	Stood Stood
	From  string // the plan's file
	On    time.Time
}

// far faults a correction that is none.
func (s Stood) far(of *deck.Setup, scale measure.Scale) plantext.Faults {
	var faults plantext.Faults
	check := func(what string, stood *measure.Length, plan, most measure.Length) {
		if stood != nil && (*stood-plan).Abs() > most {
			faults.Add(plantext.Fault{
				Problem: fmt.Sprintf("%s stood at %s, but setup %d has it at %s", what, scale.Say(*stood), of.Number, scale.Say(plan)),
				Remedy:  "look at the papers again: is it that setup, and is the number in the plan's unit?"})
		}
	}
	check("the fence", s.Fence, of.Fence.NearEdge, deck.MostLearnt)
	if n := len(of.Heights); n > 0 {
		check("the bit", s.Height, of.Heights[n-1], deck.MostLearntHeight)
	}
	return faults
}

// Keep makes an entry of a deck's setup. A setup the deck does not have, a name
// that is no name, or a correction of more than 1/4 in, of the height 1/16 in, is a fault.
func Keep(d *deck.Deck, number int, k Keeping) (*Entry, error) {
	at := -1
	for i := range d.Setups {
		if d.Setups[i].Number == number {
			at = i
		}
	}
	if at < 0 {
		return nil, plantext.Faults{{Problem: fmt.Sprintf("the deck has no setup %d", number),
			Remedy: fmt.Sprintf("its setups are 1 to %d; fencecard cards shows them", len(d.Setups))}}
	}
	name := clean(k.Name)
	if name == "" || plainCode(name) == "" {
		return nil, plantext.Faults{{Problem: "a kept setup needs a name", Remedy: `write one, such as --name "seat rail mortises"`}}
	}
	if utf8.RuneCountInString(name) > mostName {
		return nil, plantext.Faults{{Problem: fmt.Sprintf("the name is longer than %d letters", mostName),
			Remedy: "write a shorter one, and the rest with --note"}}
	}
	if err := k.Stood.far(&d.Setups[at], d.Plan.Shop.Scale).Err(); err != nil {
		return nil, err
	}
	shop := kept(d.Plan.Shop)
	e := &Entry{
		Name: name, Date: k.On.Format(time.DateOnly),
		From:  clean(fmt.Sprintf("setup %d of %q (%s)", number, d.Plan.Title, k.From)),
		Setup: d.Setups[at], Shop: &shop, Stood: k.Stood,
		Marks: make([]Stood, len(d.Setups[at].Runs)),
	}
	e.Setup.Kept = nil
	e.Code = Code(&e.Setup)
	for _, note := range k.Notes {
		for line := range strings.Lines(note) {
			if line = clean(line); line != "" {
				e.Notes = append(e.Notes, line)
			}
		}
	}
	return e, nil
}

// kept is what of a shop is needed to print a setup again.
func kept(s joinery.Shop) joinery.Shop {
	return joinery.Shop{Name: "the setup book", Fence: s.Fence, Scale: s.Scale, Stops: s.Stops, Cross: joinery.Crossing{With: s.Cross.With}, Minutes: s.Minutes, Speed: s.Speed,
		Rules: joinery.DefaultRules(s.Scale.Unit)}
}

// clean makes a text fit for one line of the book: no control characters, no
// blanks at the ends.
func clean(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || r == '\ufeff' {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
	return strings.TrimSpace(s)
}

// Learnt says what test cuts taught, a sentence each, lengths as read off the
// scale.
func (e *Entry) Learnt(scale measure.Scale) []string {
	var learnt []string
	say := func(stood *measure.Length, what string) {
		if stood != nil {
			learnt = append(learnt, "after the test cut "+what+" stood at "+scale.Format(*stood))
		}
	}
	say(e.Stood.Fence, "the fence")
	say(e.Stood.Height, "the bit at full height")
	for i, m := range e.Marks {
		r := &e.Setup.Runs[i]
		of := fmt.Sprintf(" of %s, %s,", r.Piece.Name, r.Cut.Name)
		say(m.Start, "the start"+of)
		say(m.Stop, "the stop"+of)
	}
	return learnt
}

// Kept returns what a deck's setup carries of the entry. A number written into the
// book by hand that [Keep] would refuse is said, and never takes a computed one's place.
func (e *Entry) Kept(scale measure.Scale) *deck.Kept {
	k := &deck.Kept{Name: e.Name, Code: e.Code, Notes: e.Notes, Learnt: e.Learnt(scale)}
	if len(e.Stood.far(&e.Setup, scale)) == 0 {
		k.FenceStood, k.HeightStood = e.Stood.Fence, e.Stood.Height
	}
	return k
}

// Deck returns a deck of the kept setup alone, to be printed.
func (e *Entry) Deck() *deck.Deck {
	s := e.Setup
	s.Kept = e.Kept(e.Shop.Scale)
	shop := *e.Shop
	shop.Bits = []joinery.Bit{*s.Bit}
	plan := &joinery.Plan{Name: "setup", Title: e.Name, Unit: shop.Scale.Unit, Shop: shop}
	at := map[*joinery.Piece]int{}
	for i := range s.Runs {
		p := s.Runs[i].Piece
		if _, seen := at[p]; !seen {
			at[p] = len(plan.Pieces)
			plan.Pieces = append(plan.Pieces, *p)
		}
	}
	s.Runs = slices.Clone(s.Runs)
	for i := range s.Runs { // the runs are those of the plan's pieces
		s.Runs[i].Piece = &plan.Pieces[at[s.Runs[i].Piece]]
	}
	d := &deck.Deck{Part: true, FromBook: true, Plan: plan, Setups: []deck.Setup{s}}
	deckcode.Seal(d)
	d.Changes = deck.Count(d.Setups, &shop)
	remark.Cautions(d)
	return d
}
