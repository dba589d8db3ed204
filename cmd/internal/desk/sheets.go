package desk

import (
	"bytes"
	"net/http"

	"fencecard/joinery/planfile"
	"fencecard/output"
	"fencecard/output/page"
	"fencecard/setup/deck"
	"fencecard/setup/search/budget"
	"fencecard/setup/whatif"
)

type printed struct {
	seen
	Code string `json:"code"`
	HTML string `json:"html"`
	// Best tells that no deck takes less time; else the search was ended.
	Best bool `json:"best"`
}

// sheets makes the deck of a text and sets its sheets. A page that asks anew calls
// off what it asked before.
func (w Work) sheets(r *http.Request, q planText) (printed, error) {
	d, err := w.deck(r, q)
	if err != nil {
		faults, err := w.faults(err)
		return printed{seen: seen{Faults: faults}}, err
	}
	var html bytes.Buffer
	err = output.Beside(&html, d, page.Beside{At: func(said deck.Warning) (line, from int) {
		at := w.at(said.Place, "")
		return at.Line, at.From
	}})
	return printed{seen{Faults: []remarkAt{}}, d.Code, html.String(), d.Ended == budget.Through}, err
}

func (w Work) deck(r *http.Request, q planText) (*deck.Deck, error) {
	plan, err := planfile.Read(w.name(), []byte(q.Text), w.Open)
	if err != nil {
		return nil, err
	}
	return w.Make(r.Context(), plan)
}

type reasons struct {
	Code string `json:"code"`
	// HTML says for each setup why it is there, by its number.
	HTML map[int]string `json:"html"`
}

// why says why each setup of a text's deck is there.
func (w Work) why(r *http.Request, q planText) (reasons, error) {
	d, err := w.deck(r, q)
	if err != nil {
		return reasons{}, err
	}
	all, err := whatif.Explain(r.Context(), d)
	if err != nil {
		return reasons{}, err
	}
	said := reasons{d.Code, map[int]string{}}
	for _, x := range all {
		var html bytes.Buffer
		if err := page.WriteWhy(&html, x, &d.Plan.Shop); err != nil {
			return reasons{}, err
		}
		said.HTML[x.Setup.Number] = html.String()
	}
	return said, nil
}
