package desk

import (
	"strings"

	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"
	"fencecard/output/page"
	"fencecard/setup/deck"
)

// spots finds what has a form by the line that something is said of.
type spots struct {
	name  string
	lines []string
	forms []planform.Form
}

func (w Work) spotsIn(text string) spots {
	forms, err := planform.Read(w.name(), []byte(text))
	if err != nil {
		forms = nil // then there is the text alone
	}
	return spots{w.name(), strings.Split(text, "\n"), forms}
}

// form is the form of what stands at a place, nil where none does.
func (s spots) form(p plantext.Place) *planform.Form {
	if !p.Known() || p.File != s.name || p.Line > len(s.lines) {
		return nil
	}
	var found *planform.Form
	for i := range s.forms {
		if s.forms[i].Line <= p.Line {
			found = &s.forms[i]
		}
	}
	line := s.lines[p.Line-1]
	if own := strings.TrimLeft(line, " -#"); found != nil && own != "" && strings.HasPrefix(line, own) {
		return &s.forms[0] // a key of the plan's own
	}
	return found
}

// at is where something stands, as the page counts, and the form that it belongs to.
func (s spots) at(p plantext.Place) page.Spot {
	if !p.Known() || p.File != s.name {
		return page.Spot{}
	}
	spot := page.Spot{Line: p.Line, From: units(p.Source, p.Column-1)}
	if f := s.form(p); f != nil {
		spot.At, spot.Of = f.At, s.called(f)
	}
	return spot
}

// called is what a maker knows a form by: of a cut, with its piece.
func (s spots) called(f *planform.Form) string {
	switch f.Kind {
	case planform.Plan:
		return thePlan
	case planform.Shop:
		return theShop
	}
	title := f.Title
	if title == "" {
		title = f.Kind
	}
	for i := range s.forms {
		if over := &s.forms[i]; f.Kind == planform.Cut && over.At == f.Under && over.Title != "" {
			return over.Title + ", " + title
		}
	}
	return title
}

// also is the form in which something said of another may be mended too; none where it
// names none, or the plan has no such form.
func (s spots) also(at page.Spot, plain string) []page.Spot {
	var all []page.Spot
	for i := range s.forms {
		f := &s.forms[i]
		if called := s.called(f); (f.Kind == planform.Shop || f.Kind == planform.Plan) && f.At != at.At && strings.Contains(plain, "under "+called) {
			all = append(all, page.Spot{At: f.At, Of: called})
		}
	}
	if strings.Contains(plain, "under "+allShop) {
		all = append(all, page.Spot{At: "list", Of: allShop})
	}
	return all
}

// allShop heads the shop in the list of what the plan has, from where one puts in one's
// own, or goes to that in a file.
const allShop = "table, fence and bits"

// inForms is [inForms] in this plan, whose list leads to its shop where it has no form of
// it.
func (s spots) inForms(words string) string {
	return s.theirShop(inForms(nil, words))
}

func (s spots) theirShop(plain string) string {
	for i := range s.forms {
		if s.forms[i].Kind == planform.Shop {
			return plain
		}
	}
	return strings.ReplaceAll(plain, "under "+theShop, "under "+allShop)
}

// said is where a warning is mended: at what it speaks of, or first in the plan's own
// form where it names that alone.
func (s spots) said(w deck.Warning) page.Spot {
	at := s.at(w.Place)
	if also := s.also(at, s.inForms(w.Text)); len(also) == 1 && w.Cut == "" && at.At != "" {
		at.At, at.Of = also[0].At, also[0].Of
	}
	return at
}

// plainly tells a fault as the form does that it belongs to; "" where it has none.
func (s spots) plainly(fault plantext.Fault) string {
	f := s.form(fault.Place)
	if f == nil {
		return ""
	}
	key := keyAt(f, s.lines[fault.Line-1], units(fault.Source, fault.Column-1))
	lacking := missing(f)
	if !followsFrom(lacking, key) {
		if box := boxOf(key, fault); box != key {
			return rowSays(box)
		}
		return tradeWords(f, key, fault)
	}
	var all []string
	for i := range f.Fields {
		if words := lacking[f.Fields[i].Key]; words != "" {
			all = append(all, words)
		}
	}
	return strings.Join(all, " ")
}
