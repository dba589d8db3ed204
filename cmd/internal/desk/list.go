package desk

import (
	"bytes"
	"errors"
	"net/http"
	"path/filepath"
	"strings"

	"fencecard/joinery/piecelist"
	"fencecard/joinery/plantext"
)

// listed is a list of pieces, and what was answered about it so far.
type listed struct {
	brought
	Answers map[string]string `json:"answers"`
}

// list makes a plan of a list of pieces: it asks what the list leaves open, round
// by round, tells what is wrong, or writes the plan and serves it.
func (f First) list(_ *http.Request, q listed) (going, error) {
	base := filepath.Base(filepath.FromSlash(q.Name))
	list, questions, err := piecelist.Read(base, q.Data, piecelist.Options{Answers: q.Answers})
	var faults plantext.Faults
	if err != nil && !errors.As(err, &faults) {
		return going{}, err
	}
	if len(faults) > 0 || len(questions) > 0 {
		var b bytes.Buffer
		err := ownPage("list.html").Execute(&b, struct {
			Name      string
			Faults    plantext.Faults
			Questions []piecelist.Question
		}{base, faults, questions})
		return going{HTML: b.String()}, err
	}
	name := fileName(list.Title)
	if name == "" {
		name = fileName(strings.TrimSuffix(base, filepath.Ext(base)))
	}
	if name == "" {
		name = "plan"
	}
	return f.write(name+".yaml", list.Plan())
}
