package desk

import (
	"errors"
	"html/template"
	"maps"
	"regexp"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"
)

// formView is a form as it is shown.
type formView struct {
	planform.Form
	New     bool
	Whole   string // what it is part of: the plan, or a shop in a file of its own
	Word    string // its kind, of a cut or joint
	Of      string // the piece of a cut
	Line    int
	Main    []groupView
	More    []groupView
	Opened  bool // something stands among what few need
	Drawing template.HTML
	Said    []string // what is wrong with it besides what is told beside a box
	Wrong   string   // why it cannot be written
	Inside  []thingView
	Meets   []string // where a joint is made, or what a piece meets
}

// viewed makes a form to be shown of one as filled in, with the text as it would be
// with it, where it then stands at a place. Where it is told, each box says what is
// wrong with it; else, in a new form, only what is wrong with what is filled in is said.
func (w Work) viewed(f planform.Form, halves map[string]distance, text []byte, at string, told bool) formView {
	v := formView{Form: f, New: f.At == "", Word: f.Value(planform.KindKey), Said: []string{}, Whole: planform.Plan}
	if w.isShop {
		v.Whole = planform.Shop
	}
	whole := text
	if !w.isShop {
		whole, _ = withAPiece(text) // to have none yet is no fault
	}
	plan, err := w.plan(whole)
	var faults plantext.Faults
	_ = errors.As(err, &faults) // another error shows when the sheets are made
	forms, err := planform.Read(w.name(), text)
	lacking, wrong := missing(&f), map[string]string{}
	if told {
		maps.Copy(wrong, lacking)
	}
	if here := slices.IndexFunc(forms, func(f planform.Form) bool { return f.At == at }); err == nil && here >= 0 && at != "" {
		now := forms[here]
		v.Line = now.Line
		end := 0
		if here+1 < len(forms) {
			end = forms[here+1].Line
		}
		lines := strings.Split(string(text), "\n")
		for _, fault := range faults {
			if fault.File != w.name() || fault.Line < now.Line || fault.Line > len(lines) || end > 0 && fault.Line >= end {
				continue
			}
			key := keyAt(&f, lines[fault.Line-1], units(fault.Source, fault.Column-1))
			if followsFrom(lacking, key) {
				continue
			}
			words := tradeWords(&f, key, fault)
			box := boxOf(key, fault)
			if box != key {
				words = rowSays(box)
			}
			if box != "" && box != planform.NameKey && wrong[box] == "" && told {
				wrong[box] = words
				continue
			}
			v.Said = append(v.Said, words)
		}
		v.within(forms, here)
	}
	offers := planform.Offers(text, shopOf(plan))
	v.Main, v.More = groups(f, halves, offers, wrong)
	v.Opened = slices.ContainsFunc(v.More, func(g groupView) bool {
		// A shop to begin with fills in all, so that there is nothing to be missed.
		return g.filled() && f.Kind != planform.Shop || g.wrong()
	})
	v.Meets = meetings(plan, f)
	v.Drawing = w.drawn(plan, text, at, forms)
	return v
}

// within lists what stands inside a thing, and what it stands inside.
func (v *formView) within(forms []planform.Form, here int) {
	now := forms[here]
	for _, f := range forms {
		switch {
		case f.At == now.Under && f.Kind == planform.Piece:
			v.Of = f.Title
		case f.Under == now.At && now.At != planform.Top:
			v.Inside = append(v.Inside, thingView{At: f.At, Kind: f.Kind, Title: f.Title})
		}
	}
}

func shopOf(plan *joinery.Plan) *joinery.Shop {
	if plan == nil {
		return nil
	}
	return &plan.Shop
}

var aKey = regexp.MustCompile(`(?:^\s*(?:- +)?|[{,]\s*)([A-Za-z][A-Za-z -]*):`)

// keyAt is the key of a form that a place in a line belongs to, "" where none is
// found.
func keyAt(f *planform.Form, line string, from int) string {
	var keys []string
	for _, m := range aKey.FindAllStringSubmatchIndex(line, -1) {
		if m[2] <= from {
			keys = append(keys, line[m[2]:m[3]])
		}
	}
	if len(keys) == 0 {
		return ""
	}
	outer, inner := keys[0], keys[len(keys)-1]
	for _, key := range []string{outer + "." + inner, inner, outer} {
		if f.Field(key) != nil {
			return key
		}
	}
	if f.Field(planform.NameKey) != nil && outer == f.Value(planform.KindKey) {
		return planform.NameKey
	}
	return ""
}
