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
	Note    string   // what was just done
	// Mirrors is the piece that this is the mirror image of, and Theirs are its cuts.
	Mirrors string
	Theirs  []thingView
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
	twice := calledAlready(&f, forms, at)
	if twice != "" {
		wrong["piece"] = twice
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
			if followsFrom(lacking, key) || key == "piece" && twice != "" {
				continue
			}
			words := tradeWords(&f, key, fault)
			box := boxOf(key, fault)
			if box != key {
				words = rowSays(box)
			}
			if box != "" && box != planform.NameKey && wrong[box] == "" && (told || f.Value(box) != "") {
				wrong[box] = words
				continue
			}
			v.Said = append(v.Said, words)
		}
		v.within(forms, here)
	}
	offers := planform.Offers(text, shopOf(plan))
	v.Main, v.More = groups(f, halves, offers, wrong)
	v.mirrored(forms)
	v.alsoInMirrors(forms)
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

// calledAlready says that another piece has the name; "" where none has.
func calledAlready(f *planform.Form, forms []planform.Form, at string) string {
	name := f.Value("piece")
	if f.Kind != planform.Piece || name == "" {
		return ""
	}
	for i := range forms {
		if other := &forms[i]; other.Kind == planform.Piece && other.At != at && other.Value("piece") == name {
			return twoCalled(name)
		}
	}
	return ""
}

// twoCalled is said of a name that two pieces have.
func twoCalled(name string) string {
	return "Two pieces are called “" + name + "”. Give one another name; or, if they are the same, take one out and fill in 2 at “How many like it” of the other."
}

// mirrored shows in the form of a mirror image what it has from the piece that it
// mirrors: the sizes, which are left empty, and the cuts.
func (v *formView) mirrored(forms []planform.Form) {
	of := v.original(v.Form, forms)
	if of == nil {
		return
	}
	v.Mirrors = of.Title
	for i := range forms {
		if forms[i].Kind == planform.Cut && forms[i].Under == of.At {
			v.Theirs = append(v.Theirs, thingView{At: forms[i].At, Kind: planform.Cut, Title: forms[i].Title})
		}
	}
	for i := range v.Main {
		g := &v.Main[i]
		if g.Legend != legends["size"] {
			continue
		}
		g.Legend = "Size, left empty: it is that of " + of.Title
		for k := range g.Fields {
			g.Fields[k].Default, g.Fields[k].Hint = of.Value(g.Fields[k].Key), ""
		}
	}
}

// original is the piece that a mirror image comes from, by way of others too; nil for
// none.
func (v *formView) original(f planform.Form, forms []planform.Form) *planform.Form {
	var found *planform.Form
	for range forms {
		name := f.Value("mirror.of")
		at := slices.IndexFunc(forms, func(o planform.Form) bool { return o.Kind == planform.Piece && name != "" && o.Value("piece") == name })
		if f.Kind != planform.Piece || at < 0 {
			break
		}
		f, found = forms[at], &forms[at]
	}
	return found
}

// alsoInMirrors says below the pieces of a joint which mirror images have it too.
func (v *formView) alsoInMirrors(forms []planform.Form) {
	if v.Kind != planform.Joint {
		return
	}
	for i := range v.Main {
		for k := range v.Main[i].Fields {
			field := &v.Main[i].Fields[k]
			var too []string
			for _, spot := range field.Spots {
				for j := range forms {
					name := forms[j].Value("piece")
					if spot.Piece != "" && forms[j].Kind == planform.Piece && forms[j].Value("mirror.of") == spot.Piece && !slices.Contains(too, name) {
						too = append(too, name)
					}
				}
			}
			if len(too) > 0 {
				field.Note = "Its mirror image " + plantext.List(too, "and") + " has it too, mirrored: do not name it here."
			}
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
