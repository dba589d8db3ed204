package desk

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"
)

// withShop puts a shop to begin with into a plan that has none of its own, to be
// changed into the maker's.
func (w Work) withShop(q formAsked) (formTold, error) {
	starter := examples.StarterShop
	if forms, err := planform.Read(w.name(), []byte(q.Text)); err == nil && forms[0].Value("unit") == "mm" {
		starter = examples.StarterShopInMM
	}
	forms, err := planform.Read("shop.yaml", starter)
	if err != nil {
		return formTold{}, err
	}
	text := []byte(q.Text)
	before, _ := withAPiece(text)
	was, _ := w.plan(before)
	for _, f := range forms {
		f.At = ""
		if f.Kind != planform.Shop {
			f.Under = "shop"
		}
		if text, _, err = planform.Put(text, f); err != nil {
			words, err := said(err)
			if err != nil {
				return formTold{}, err
			}
			return formTold{}, unfit(words)
		}
	}
	if forms, err = planform.Read(w.name(), text); err != nil {
		return formTold{}, err
	}
	at := slices.IndexFunc(forms, func(f planform.Form) bool { return f.Kind == planform.Shop })
	if at < 0 {
		return formTold{}, unfit("the plan has no shop of its own")
	}
	v := w.viewed(forms[at], nil, text, forms[at].At, true)
	whole, _ := withAPiece(text)
	v.Note = "Your shop is in the plan now, in place of the built-in example shop" + w.instead(was, whole) + ". Change its numbers into yours, and its bits, which are listed below."
	return formTold{HTML: part("form", v), Drawing: part("drawing", v), At: v.At, Line: v.Line, Text: string(text)}, nil
}

// instead says what a shop changes that stands in place of another: how far the fence
// can be set, how high the lift goes, and how many bits there are.
func (w Work) instead(was *joinery.Plan, text []byte) string {
	now, err := w.plan(text)
	if was == nil || err != nil {
		return ""
	}
	var all []string
	scale := now.Shop.Scale
	say := func(what string, before, now measure.Length) {
		if before != now && before != 0 && now != 0 {
			all = append(all, what+" "+scale.Spell(now)+" instead of "+scale.Spell(before))
		}
	}
	say("the fence can be set", was.Shop.Fence.Reach, now.Shop.Fence.Reach)
	say("the lift raises a bit", was.Shop.Lift, now.Shop.Lift)
	if before, now := len(was.Shop.Bits), len(now.Shop.Bits); before != now {
		all = append(all, fmt.Sprintf("there are %d bits instead of %d", now, before))
	}
	if len(all) == 0 {
		return ""
	}
	return ": " + plantext.List(all, "and")
}

// shopFile is the same work on the shop file that the plan names, as it is saved: its
// forms are those of a shop in a plan, and it is saved by the same rules.
func (w Work) shopFile() (Work, error) {
	text, err := os.ReadFile(w.Path)
	if err != nil {
		return w, errors.New("save the plan first: its shop file is known by its name there")
	}
	forms, err := planform.Read(w.name(), text)
	if err != nil {
		return w, errors.New("the plan cannot be read, so its shop file is not known")
	}
	name := forms[0].Value("shop")
	if name == "" {
		return w, errors.New("the plan, as it is saved, names no shop file")
	}
	path := filepath.FromSlash(name)
	if w.Open == nil || !filepath.IsLocal(path) {
		return w, errors.New("the shop file is not in the plan's folder, and is not opened from here")
	}
	if _, err := w.Open(name); err != nil {
		return w, errors.New("the shop file " + filepath.Base(path) + " cannot be opened: " + plainly(err))
	}
	w.Path, w.isShop, w.unit = filepath.Join(filepath.Dir(w.Path), path), true, measure.Inches
	if forms[0].Value("unit") == "mm" {
		w.unit = measure.Millimetres
	}
	return w, nil
}

// plan reads a text as a plan; that of a shop file is one of its shop alone.
func (w Work) plan(text []byte) (*joinery.Plan, error) {
	if !w.isShop {
		return planfile.Read(w.name(), text, w.Open)
	}
	shop, err := shopfile.Read(w.name(), text, w.unit)
	if err != nil {
		return nil, err
	}
	return &joinery.Plan{Shop: shop, Unit: w.unit}, nil
}
