package bench

import (
	"bytes"
	"mime"
	"net/http"
	"strings"

	"fencecard/output"
	"fencecard/output/paper"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// printed are the files to print, and which part of a deck each is.
var printed = map[string]struct {
	only sheets.Only
	name string // behind the plan's name
}{
	"deck.pdf":   {sheets.Everything, "cards"},
	"sheets.pdf": {sheets.OnlySheets, "sheets"},
	"cards.pdf":  {sheets.OnlyCards, "cards"},
	"strips.pdf": {sheets.OnlyStrips, "strips"},
}

// print answers with pages, the same that the command writes for the deck that the
// browser has before it.
func (s *Server) print(w http.ResponseWriter, r *http.Request) {
	d := s.before(r)
	if d == nil {
		sorry(w, http.StatusNotFound, "That deck is no longer known here: load the page anew, and print what it shows then.")
		return
	}
	select {
	case s.printing <- struct{}{}:
		defer func() { <-s.printing }()
	case <-r.Context().Done():
		return
	}
	Print(w, r, d.deck)
}

// Print answers with the pages of a deck that a request asks for by the name of its file
// and its paper.
func Print(w http.ResponseWriter, r *http.Request, d *deck.Deck) {
	what, is := printed[r.PathValue("file")]
	if !is {
		http.NotFound(w, r)
		return
	}
	pages, ok := pagesAsked(r)
	if !ok {
		sorry(w, http.StatusBadRequest, "There is no such paper.")
		return
	}
	pages.Only = what.only
	var pdf bytes.Buffer
	if err := output.PDF(&pdf, d, pages); err != nil {
		sorry(w, http.StatusInternalServerError, "It cannot be printed on this paper.")
		return
	}
	name := d.Plan.Name + "-" + what.name + ".pdf"
	w.Header().Set("Content-Type", "application/pdf")
	w.Header().Set("Content-Disposition", mime.FormatMediaType("inline", map[string]string{"filename": name}))
	_, _ = w.Write(paper.Stamp(pdf.Bytes(), PrintedFor(d)))
}

// PrintedFor is what the pages of a deck are printed for, as their stamp says.
func PrintedFor(d *deck.Deck) string { return d.Plan.Name + "\n" + d.Plan.Title }

// pagesAsked reads which paper is asked for.
func pagesAsked(r *http.Request) (p sheets.Pages, ok bool) {
	q := r.URL.Query()
	ok = true
	if name := q.Get("paper"); name != "" {
		p.Paper, ok = sheets.ParsePaper(strings.ToLower(name))
	}
	if name := q.Get("units"); ok && name != "" {
		p.Units, ok = sheets.ParseUnits(name)
	}
	p.Joints, p.Strips = q.Get("joints") == "yes", q.Get("strips") == "yes"
	return p, ok
}
