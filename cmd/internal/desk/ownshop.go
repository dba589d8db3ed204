package desk

import (
	"errors"

	"fencecard/joinery/examples"
	"fencecard/joinery/planform"
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
			return formTold{}, errors.New(words)
		}
	}
	q.Text = string(text)
	if forms, err = planform.Read(w.name(), text); err != nil {
		return formTold{}, err
	}
	return w.listed(q, forms), nil
}
