package desk

import (
	"context"
	"embed"
	"encoding/json"
	"errors"
	"html/template"
	"io/fs"
	"net/http"
	"path/filepath"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/page"
	"fencecard/setup/deck"
)

//go:embed files
var files embed.FS

// mostBytes is the longest body that is read.
const mostBytes = 8 << 20

// Work is what the desk works on.
type Work struct {
	// Path is the plan's file, which need not be there yet.
	Path string
	// Open reads a shop file that the plan names, as [planfile.Read] asks for it.
	Open func(path string) ([]byte, error)
	// Make makes the deck of a plan as it will be printed. It may be called off.
	Make func(ctx context.Context, plan *joinery.Plan) (*deck.Deck, error)
	// Print answers with the pages of a deck that a request asks for; nil where nothing
	// is printed.
	Print func(w http.ResponseWriter, r *http.Request, d *deck.Deck)
	// Begin is the address where other plans are begun and gone on with; "" for none.
	Begin string
	Shelf

	shown *shownDecks
	// isShop tells that Path is a shop file; a number in it that names no unit is in
	// that of its plan.
	isShop bool
	unit   measure.Unit
}

// name is how messages call the plan: devices see no path.
func (w Work) name() string { return filepath.Base(w.Path) }

// New returns the handler of everything under /plan.
func New(work Work) http.Handler {
	work.shown = &shownDecks{}
	mux := http.NewServeMux()
	of := func(handle func(Work) http.HandlerFunc) http.HandlerFunc {
		return func(w http.ResponseWriter, r *http.Request) {
			if r.URL.Query().Get("file") != "shop" {
				handle(work)(w, r)
				return
			}
			shop, err := work.shopFile()
			if err != nil {
				say(w, http.StatusNotFound, trouble{err.Error()})
				return
			}
			handle(shop)(w, r)
		}
	}
	mux.HandleFunc("GET /plan", work.page)
	mux.HandleFunc("GET /plan/print/{file}", work.print)
	mux.Handle("GET /plan/", filesUnder())
	mux.HandleFunc("GET /plan/text", of(func(w Work) http.HandlerFunc { return w.read }))
	mux.HandleFunc("PUT /plan/text", of(func(w Work) http.HandlerFunc { return answer(w.save) }))
	mux.HandleFunc("POST /plan/look", of(func(w Work) http.HandlerFunc { return answer(w.look) }))
	mux.HandleFunc("POST /plan/sheets", answer(work.sheets))
	mux.HandleFunc("POST /plan/why", answer(work.why))
	mux.HandleFunc("POST /plan/form", of(func(w Work) http.HandlerFunc { return answer(w.form) }))
	mux.HandleFunc("POST /plan/learn", answer(work.learn))
	return mux
}

// page is the plan's screen.
func (w Work) page(to http.ResponseWriter, r *http.Request) {
	form, err := page.PrintForm("/plan/print/")
	if err != nil || w.Print == nil {
		form = ""
	}
	shop := r.URL.Query().Get("file") == "shop"
	if shop {
		form = "" // of a shop there are no sheets
	}
	writePage(to, "plan.html", struct {
		Print template.HTML
		Shop  bool
		Begin string
	}{form, shop, w.Begin})
}

// filesUnder are the files that the pages need beside them.
func filesUnder() http.Handler {
	inside, err := fs.Sub(files, "files")
	if err != nil {
		panic(err) // the files are part of the program
	}
	return http.StripPrefix("/plan", http.FileServerFS(inside))
}

// answer reads a question in JSON and writes its answer.
func answer[Q, A any](give func(r *http.Request, q Q) (A, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		var q Q
		if err := json.NewDecoder(http.MaxBytesReader(w, r.Body, mostBytes)).Decode(&q); err != nil {
			status := http.StatusBadRequest
			if errors.As(err, new(*http.MaxBytesError)) {
				status = http.StatusRequestEntityTooLarge
			}
			say(w, status, trouble{"what the page sent cannot be read"})
			return
		}
		a, err := give(r, q)
		if err != nil {
			say(w, statusOf(err), trouble{err.Error()})
			return
		}
		say(w, http.StatusOK, a)
	}
}

// trouble is an answer where there is none.
type trouble struct {
	Trouble string `json:"trouble"`
}

func say(w http.ResponseWriter, status int, a any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	_ = json.NewEncoder(w).Encode(a) // a page that has gone needs no answer
}
