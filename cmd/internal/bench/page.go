package bench

import (
	"bytes"
	"embed"
	"html/template"
	"io/fs"
	"net/http"
	"path"
	"strings"
	"sync"
	"time"

	"fencecard/output"
	"fencecard/output/page"
)

//go:embed pages/*.html
var pageFiles embed.FS

// ownPage is a page or part that is the server's own, parsed when the first is
// shown: most starts of the program show none.
func ownPage(name string) *template.Template { return ownPages().Lookup(name) }

var ownPages = sync.OnceValue(func() *template.Template {
	return template.Must(template.ParseFS(pageFiles, "pages/*.html"))
})

// fragment is what a Try answers, for a page to show.
func fragment(told tryTold) string {
	var b bytes.Buffer
	if err := ownPage("answer.html").Execute(&b, told); err != nil {
		return ""
	}
	return b.String()
}

func writeHTML(w http.ResponseWriter, status int, layout *template.Template, data any) {
	var b bytes.Buffer
	if err := layout.Execute(&b, data); err != nil {
		http.Error(w, "This page cannot be shown.", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(b.Bytes())
}

// sorry answers with a page that says why there is nothing else, in letters that are
// read a metre away and need no style sheet.
func sorry(w http.ResponseWriter, status int, says string) {
	writeHTML(w, status, ownPage("out.html"), says)
}

// planAddress is where the plan is written, or begun where there is none.
const planAddress = "/plan"

// noPieces is in the fault of a plan just begun, which is told without its place.
const noPieces = "the plan has no pieces"

// mendTime is how long a page waits for the deck of a plan that was at fault.
const mendTime = 3 * time.Second

// document is the page of the whole deck, whichever part of it is asked for, or
// of what is wrong with a plan that never made one.
func (s *Server) document(w http.ResponseWriter, r *http.Request) {
	v := visiting(r)
	d := s.own(r)
	if d == nil && s.decks.old(s.Look()) { // it was saved just now, and may be mended
		select {
		case <-s.decks.next():
		case <-time.After(mendTime):
		case <-r.Context().Done():
		}
		d = s.own(r)
	}
	if d == nil {
		_, fault := s.decks.latest()
		told := struct {
			Fault, Plan string
			Begun       bool // it has no piece yet
		}{Fault: text(fault), Begun: strings.Contains(text(fault), noPieces)}
		switch {
		case v.shared:
			told.Fault = faultLine(fault, true)
		case s.Desk != nil:
			told.Plan = planAddress
		}
		writeHTML(w, http.StatusServiceUnavailable, ownPage("fault.html"), told)
		return
	}
	doc, err := d.document(v.shared)
	if err != nil {
		http.Error(w, "This deck cannot be shown.", http.StatusInternalServerError)
		return
	}
	setCookie(w, v.cookie("deck"), d.deck.Code)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(doc)
}

// document is the page of a deck, made once.
func (s *shown) document(shared bool) ([]byte, error) {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.pages[shared] != nil {
		return s.pages[shared], nil
	}
	about := page.About{Served: true, Shared: shared, Questions: map[string]page.Questions{}}
	if !shared {
		about.Plan, about.Begin = s.planAt, s.begins
	}
	for _, t := range s.all {
		about.Questions[t.run.Number()] = s.questions(t.run.Number())
	}
	var b bytes.Buffer
	if err := output.Page(&b, s.deck, about); err != nil {
		return nil, err
	}
	s.pages[shared] = b.Bytes()
	return b.Bytes(), nil
}

// kinds are the files that the document needs.
var kinds = map[string]string{".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8"}

// part is a file that the document needs.
func (s *Server) part(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("file")
	kind := kinds[path.Ext(name)]
	data, err := fs.ReadFile(page.Files(), name)
	if err != nil || kind == "" {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", kind)
	_, _ = w.Write(data)
}
