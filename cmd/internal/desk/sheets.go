package desk

import (
	"bytes"
	"net/http"
	"slices"
	"sync"

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
		faults, err := w.faults(q.Text, err)
		return printed{seen: seen{Faults: faults}}, err
	}
	w.shown.keep(d)
	var html bytes.Buffer
	s := w.spotsIn(q.Text)
	err = output.Beside(&html, d, page.Beside{At: s.said, Plain: s.inForms})
	return printed{seen{Faults: []remarkAt{}}, d.Code, html.String(), d.Ended == budget.Through}, err
}

// shownDecks are those whose sheets the page has shown last: what is printed is what it
// shows.
type shownDecks struct {
	lock sync.Mutex
	last []*deck.Deck
}

// mostShown bounds them: the desk has a page or two open.
const mostShown = 4

func (s *shownDecks) keep(d *deck.Deck) {
	if s == nil {
		return
	}
	s.lock.Lock()
	defer s.lock.Unlock()
	s.last = slices.DeleteFunc(s.last, func(other *deck.Deck) bool { return other.Code == d.Code })
	s.last = append(s.last, d)
	s.last = s.last[max(0, len(s.last)-mostShown):]
}

// print answers with pages of a deck that the page shows.
func (w Work) print(to http.ResponseWriter, r *http.Request) {
	w.shown.lock.Lock()
	at := slices.IndexFunc(w.shown.last, func(d *deck.Deck) bool { return d.Code == r.URL.Query().Get("deck") })
	var d *deck.Deck
	if at >= 0 {
		d = w.shown.last[at]
	}
	w.shown.lock.Unlock()
	if d == nil || w.Print == nil {
		http.Error(to, "These sheets are no longer known here: go back to the plan, load the page anew, and print what it shows then.", http.StatusNotFound)
		return
	}
	w.Print(to, r, d)
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
