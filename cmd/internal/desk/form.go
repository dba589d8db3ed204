package desk

import (
	"bytes"
	"errors"
	"net/http"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"
)

// formAsked is what the page asks of the forms: the list of all that the plan has
// where nothing else is named, something that is there, or something new.
type formAsked struct {
	planText
	At    string      `json:"at"`    // where it stands in the text
	Kind  string      `json:"kind"`  // of something new
	Under string      `json:"under"` // what a new one goes into
	Word  string      `json:"word"`  // which kind of cut or joint
	Field [][2]string `json:"field"` // what is filled in; none: as the text has it
	Do    string      `json:"do"`
}

// What is done with a form.
const (
	putIt   = "put"    // write it into the text
	takeOut = "remove" // take the thing out of the text
	ownShop = "shop"   // put a shop to begin with into the plan
)

// formTold is a form as it is shown.
type formTold struct {
	HTML    string `json:"html"`
	Drawing string `json:"drawing"` // what the form says, drawn, and what is wrong with it
	At      string `json:"at"`
	Line    int    `json:"line"` // where it stands in the text
	Text    string `json:"text"` // the text as it is now
}

// form answers with a form. The text comes from the page and goes back to it: the
// file is not touched.
func (w Work) form(_ *http.Request, q formAsked) (formTold, error) {
	text := []byte(q.Text)
	forms, err := planform.Read(w.name(), text)
	if err != nil {
		faults, err := w.faults(q.Text, err)
		return formTold{HTML: part("unread", faults), Text: q.Text}, err
	}
	if w.isShop && forms[0].Kind != planform.Shop {
		return formTold{HTML: part("noshop", nil), Text: q.Text}, nil
	}
	switch q.Do {
	case takeOut:
		return w.removed(q)
	case ownShop:
		return w.withShop(q)
	}
	f, ok := q.chosen(forms)
	if !ok {
		return w.listed(q, forms), nil
	}
	if f.Kind == planform.Cut || f.Kind == planform.Joint {
		if f.Value(planform.KindKey) == "" {
			return formTold{HTML: part("kinds", kindsOf(f)), Text: q.Text}, nil
		}
	}
	wrong := ""
	written, at, err := planform.Put(text, f)
	if err != nil {
		if wrong, err = said(err); err != nil {
			return formTold{}, err
		}
		written, at = text, f.At
	}
	told := formTold{Text: q.Text}
	if q.Do == putIt && wrong == "" {
		told.Text = string(written)
		if forms, err = planform.Read(w.name(), written); err != nil {
			return formTold{}, err
		}
		if i := slices.IndexFunc(forms, func(f planform.Form) bool { return f.At == at }); i >= 0 {
			f = forms[i]
		}
	}
	v := w.viewed(f, halvesOf(q.given()), written, at, f.At != "" || q.Do == putIt)
	v.Wrong = wrong
	told.HTML, told.Drawing, told.At, told.Line = part("form", v), part("drawing", v), f.At, v.Line
	return told, nil
}

// chosen is the form that is meant, filled in; false for none.
func (q formAsked) chosen(forms []planform.Form) (planform.Form, bool) {
	text := []byte(q.Text)
	var f planform.Form
	switch at := slices.IndexFunc(forms, func(f planform.Form) bool { return f.At == q.At }); {
	case q.At != "" && at >= 0:
		f = forms[at]
	case q.At != "" || !planform.IsKind(q.Kind):
		return f, false
	case q.Kind == planform.Cut:
		f = planform.BlankCut(q.Word, q.Under, text)
	case q.Kind == planform.Joint:
		f = planform.BlankJoint(q.Word, text)
	default:
		f = planform.Blank(q.Kind, q.Under, text)
	}
	given := q.given()
	if word := strings.Join(given[planform.KindKey], ""); word != "" && word != f.Value(planform.KindKey) && f.Field(planform.KindKey) != nil {
		f = f.As(word, text)
	}
	for i := range f.Fields {
		if value, ok := filledIn(&f.Fields[i], given); ok {
			f.Fields[i].Value = value
		}
	}
	if f.Kind == planform.Joint {
		lay(&f, given)
	}
	return f, true
}

// given are the values of the page's fields by their names.
func (q formAsked) given() map[string][]string {
	given := map[string][]string{}
	for _, pair := range q.Field {
		given[pair[0]] = append(given[pair[0]], pair[1])
	}
	return given
}

// said is a fault in words; another error is given back.
func said(err error) (string, error) {
	var fault plantext.Fault
	if !errors.As(err, &fault) {
		return "", err
	}
	return fault.Words(), nil
}

// removed takes something out, and shows what it was in.
func (w Work) removed(q formAsked) (formTold, error) {
	text, err := planform.Remove([]byte(q.Text), q.At)
	if err != nil {
		words, err := said(err)
		if err != nil {
			return formTold{}, err
		}
		return formTold{}, unfit(words)
	}
	forms, err := planform.Read(w.name(), text)
	if err != nil {
		return formTold{}, err
	}
	q.Text = string(text)
	return w.listed(q, forms), nil
}

// part is a part of the page, "" where it cannot be shown.
func part(name string, data any) string {
	var b bytes.Buffer
	if err := ownPage(name).Execute(&b, data); err != nil {
		return ""
	}
	return b.String()
}

// listed is the list of all that the plan has.
func (w Work) listed(q formAsked, forms []planform.Form) formTold {
	v := listView{}
	for _, f := range forms {
		one := thingView{At: f.At, Kind: f.Kind, Title: f.Title, Count: f.Value("count")}
		if one.Title == "" {
			one.Title = "without a name"
		}
		switch f.Kind {
		case planform.Plan, planform.Shop:
			one.Title = f.Title
			if f.Kind == planform.Shop {
				v.OwnShop = true
				v.ShopAt = f.At
			} else {
				v.Plan, v.Shop = f.Title, f.Value("shop")
				v.HasPlan = true
			}
		case planform.Piece:
			one.Mirrors = f.Value("mirror.of")
			v.Pieces = append(v.Pieces, one)
		case planform.Cut:
			if n := len(v.Pieces); n > 0 {
				v.Pieces[n-1].Cuts = append(v.Pieces[n-1].Cuts, one)
			}
		case planform.Joint:
			v.Joints = append(v.Joints, one)
		case planform.Bit:
			v.Bits = append(v.Bits, one)
		case planform.Wood:
			v.Woods = append(v.Woods, one)
		}
	}
	return formTold{HTML: part("list", v), Text: q.Text}
}

// listView is all that a plan has, in its order.
type listView struct {
	HasPlan, OwnShop   bool
	Plan, Shop, ShopAt string
	Pieces, Joints     []thingView
	Bits, Woods        []thingView
}

type thingView struct {
	At, Kind, Title, Count, Mirrors string
	Cuts                            []thingView
}

// kindView is a kind of cut or joint to choose.
type kindView struct{ Word, Example string }

type kindsView struct {
	Kind, Under string
	All         []kindView
}

// kindsOf are the kinds that something new may be of.
func kindsOf(f planform.Form) kindsView {
	v := kindsView{Kind: f.Kind, Under: f.Under}
	for _, word := range f.Field(planform.KindKey).Choices {
		v.All = append(v.All, kindView{word, saysOf(f.Kind, word)})
	}
	return v
}

// saysOf is what a kind of cut or joint is, for one who does not know its word.
func saysOf(kind, word string) string {
	if kind == planform.Joint {
		return joint.KindNamed(word).Says
	}
	return joinery.KindNamed(word).Says
}
