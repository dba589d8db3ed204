package bench

import (
	"errors"
	"fmt"
	"html/template"
	"net/http"
	"strings"
	"time"

	"fencecard/cmd/internal/measured"
	"fencecard/cmd/internal/ticks"
	"fencecard/joinery/plantext"
	"fencecard/output/page"
	"fencecard/output/wording"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
)

// What is asked at the table.
const (
	marks   = "marks" // how the table stands
	testCut = "cut"   // how a test cut came out
)

// questions are those of a run: of the table as it stands and of a test cut.
func (s *shown) questions(run string) page.Questions {
	ask := func(all []attable.Measure) (qs []page.Question) {
		for _, m := range all {
			qs = append(qs, page.Question{Name: m.Name, Words: m.Words, Unit: s.deck.Plan.Unit.String()})
		}
		return qs
	}
	m := s.asked[run]
	return page.Questions{Table: ask(m.Table), Cut: ask(m.Cut)}
}

// answered is what a measure means.
type answered struct {
	HTML   string `json:"html"`
	OK     bool   `json:"ok"`
	unread bool   // it could not be answered
}

// try answers what was measured for a run, and keeps it with the run.
func (s *Server) try(w http.ResponseWriter, r *http.Request) {
	r.Body = http.MaxBytesReader(w, r.Body, mostForm)
	if err := r.ParseForm(); err != nil {
		tooLarge(w, err)
		return
	}
	d := s.decks.coded(strings.ToLower(r.PostForm.Get("deck")))
	what := r.PostForm.Get("what")
	var t *told
	if d != nil {
		t = d.find(r.PostForm.Get("run"))
	}
	if t == nil || what != marks && what != testCut {
		s.tellTry(w, r, http.StatusConflict, answered{HTML: fragment(tryTold{Wrong: "The numbers before you are no longer known here: load the page anew."})})
		return
	}
	values := map[string]string{}
	for _, m := range append(measured.Table(), measured.Cut()...) {
		if text := strings.TrimSpace(r.PostForm.Get(m.Name)); text != "" {
			values[m.Name] = text
		}
	}
	a := d.answer(t, what, values)
	if !a.unread && visiting(r).shared && !s.takenIn.more(1) {
		fail(w, http.StatusTooManyRequests, tooMany)
		return
	}
	if !a.unread {
		reading := ticks.Reading{
			Time: time.Now().UTC().Truncate(time.Millisecond), Plan: s.Ticks.Plan(), Batch: s.Ticks.Batch(),
			Run: t.run.Number(), Says: t.says, What: what, Values: values,
		}
		if err := s.Ticks.AddReading(r.Context(), reading); err != nil {
			s.unstored(w, err)
			return
		}
		s.decks.tellAll()
	}
	s.tellTry(w, r, http.StatusOK, a)
}

func (s *Server) tellTry(w http.ResponseWriter, r *http.Request, status int, a answered) {
	if strings.Contains(r.Header.Get("Accept"), "application/json") {
		writeJSON(w, status, a)
		return
	}
	writeHTML(w, status, ownPage("try.html"), struct {
		Run    string
		Answer template.HTML
	}{r.PostForm.Get("run"), template.HTML(a.HTML)}) // made by the template below
}

// tryTold is what the answer says.
type tryTold struct {
	Wrong   string // what could not be answered
	Run     string
	Right   bool
	Answers []wording.Answer
	Last    []string // what was learnt last time
}

// answer says what measures of a run mean, by the code of check and correct.
func (s *shown) answer(t *told, what string, values map[string]string) answered {
	says := tryTold{Run: t.run.Number(), Right: true}
	if k := t.setup.Kept; k != nil {
		says.Last = append(append(says.Last, k.Learnt...), k.Notes...)
	}
	asked := s.questions(says.Run).Table
	if what == testCut {
		asked = s.questions(says.Run).Cut
	}
	given := measured.Given{Values: map[string]string{}, Unit: s.deck.Plan.Unit, Called: func(name string) string {
		for _, q := range asked {
			if q.Name == name {
				return q.Words
			}
		}
		return name
	}}
	for _, q := range asked {
		if text := values[q.Name]; text != "" {
			given.Values[q.Name] = text
		}
	}
	if len(given.Values) == 0 {
		return answered{HTML: fragment(tryTold{Wrong: "Type what you measured in one of the lines, such as 25/64."}), unread: true}
	}
	scale := s.deck.Plan.Shop.Scale
	var err error
	if what == testCut {
		var lesson attable.Lesson
		if lesson, err = given.Correct(s.deck, says.Run); err == nil {
			for _, c := range lesson.Corrections {
				says.Answers = append(says.Answers, wording.CorrectionAnswer(scale, c))
			}
		}
	} else {
		var as attable.Standing
		claims := proof.Of(s.deck)
		if as, err = given.AsSet(s.deck.Plan, &claims, says.Run); err == nil {
			for _, f := range as.Found {
				says.Answers = append(says.Answers, wording.FindingAnswer(scale, f))
			}
		}
	}
	if err != nil {
		return answered{HTML: fragment(tryTold{Wrong: inWords(err)}), unread: true}
	}
	for _, a := range says.Answers {
		says.Right = says.Right && a.Right()
	}
	return answered{HTML: fragment(says), OK: says.Right}
}

// mostAnswers bounds the answers that are kept in memory.
const mostAnswers = 1000

// remembered is the answer to a reading that was stored.
func (s *shown) remembered(t *told, r ticks.Reading) answered {
	key := fmt.Sprint(r.Says, r.What, r.Values) // a map prints in the order of its keys
	s.lock.Lock()
	a, known := s.answers[key]
	s.lock.Unlock()
	if known {
		return a
	}
	a = s.answer(t, r.What, r.Values)
	s.lock.Lock()
	defer s.lock.Unlock()
	if len(s.answers) >= mostAnswers {
		clear(s.answers)
	}
	s.answers[key] = a
	return a
}

// inWords is what is wrong with a measure, without places of files.
func inWords(err error) string {
	var faults plantext.Faults
	if !errors.As(err, &faults) {
		return "That cannot be answered."
	}
	var all []string
	for _, f := range faults {
		all = append(all, f.Words())
	}
	return strings.Join(all, "\n")
}
