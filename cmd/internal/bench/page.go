package bench

import (
	"bytes"
	"embed"
	"html/template"
	"net/http"

	"fencecard/output"
)

//go:embed pages/*.html
var pageFiles embed.FS

// The pages and parts that are the server's own.
var (
	pages       = template.Must(template.ParseFS(pageFiles, "pages/*.html"))
	letInPage   = pages.Lookup("in.html")
	faultPage   = pages.Lookup("fault.html")
	tryPage     = pages.Lookup("try.html")
	answerPart  = pages.Lookup("answer.html")
	plainLayout = pages.Lookup("plain.html")
)

// fragment is what a Try answers, for a page to show.
func fragment(told tryTold) string {
	var b bytes.Buffer
	if err := answerPart.Execute(&b, told); err != nil {
		return ""
	}
	return b.String()
}

func writeHTML(w http.ResponseWriter, status int, page *template.Template, data any) {
	var b bytes.Buffer
	if err := page.Execute(&b, data); err != nil {
		http.Error(w, "This page cannot be shown.", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(b.Bytes())
}

// document is the page of the whole deck, whichever part of it is asked for, or
// of what is wrong with a plan that never made one.
func (s *Server) document(w http.ResponseWriter, r *http.Request) {
	v := visiting(r)
	d := s.own(r)
	if d == nil {
		_, fault := s.decks.latest()
		told := struct{ Fault string }{text(fault)}
		if v.shared {
			told.Fault = faultLine(fault, true)
		}
		writeHTML(w, http.StatusServiceUnavailable, faultPage, told)
		return
	}
	page, err := d.page(v.shared)
	if err != nil {
		http.Error(w, "This deck cannot be shown.", http.StatusInternalServerError)
		return
	}
	setCookie(w, v.cookie("deck"), d.deck.Code)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(page)
}

// page is the document of a deck, made once.
func (s *shown) page(shared bool) ([]byte, error) {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.pages[shared] != nil {
		return s.pages[shared], nil
	}
	var sheets, b bytes.Buffer
	if err := output.Text(&sheets, s.deck); err != nil {
		return nil, err
	}
	type run struct {
		Number, Says, Piece, Cut string
		Table, Cuts              []Question
	}
	var runs []run
	for _, t := range s.all {
		table, cut := s.questions(t.run.Number())
		runs = append(runs, run{t.run.Number(), t.says, t.run.Piece.Name, t.cut(), table, cut})
	}
	err := plainLayout.Execute(&b, struct {
		Title, Code, Text string
		Runs              []run
	}{s.deck.Plan.Title, s.deck.Code, sheets.String(), runs})
	if err != nil {
		return nil, err
	}
	s.pages[shared] = b.Bytes()
	return b.Bytes(), nil
}

// part is a file that the document needs.
func (s *Server) part(w http.ResponseWriter, r *http.Request) { http.NotFound(w, r) }
